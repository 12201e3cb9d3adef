import { fail, ok, type Result } from '../base/index.ts'
import { measure } from './measure.ts'
import { isOutOfRange } from './number-range.ts'
import type { Partition } from './partition-types.ts'
import { noWater, problem } from './problems.ts'
import type { Measures } from './types.ts'
import { wallTakesAll } from './wall-takes-all.ts'

/**
 * All figures of the water that stands in a basin at its level [m above the datum]. Where it is dry there, or holds no
 * more than the computation's own error, that is a problem: nothing may be dosed or divided by a volume of zero.
 */
export function waterAt(p: Partition, levelM: number): Result<Measures> {
  if (!Number.isFinite(levelM)) return fail(problem('not-a-number', 'levelM'))
  if (isOutOfRange(levelM)) return fail(problem('out-of-range', 'levelM'))
  const measures = measure(p, levelM)
  if (measures.volumeM3 > measures.errorBoundM3) return ok(measures)
  return fail(wallTakesAll(p, levelM) ?? noWater('level', 'levelM'))
}
