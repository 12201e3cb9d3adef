import { fail, ok, type Result } from '../base/index.ts'
import { measure } from './measure.ts'
import { isOutOfRange } from './number-range.ts'
import type { Partition } from './partition-types.ts'
import { noWater, problem } from './problems.ts'
import { deepestUnderWall } from './strip-deepest.ts'
import type { Measures } from './types.ts'
import { wallTakesAll } from './wall-takes-all.ts'

/**
 * All figures of the water that stands in a basin at its level [m above the datum]. Where it is dry there, or holds no
 * more than the computation's own error, that is a problem: nothing may be dosed or divided by a volume of zero. So is a
 * figure that came out as no number, which must not pass for an empty basin.
 */
export function waterAt(p: Partition, levelM: number): Result<Measures> {
  if (!Number.isFinite(levelM)) return fail(problem('not-a-number', 'levelM'))
  if (isOutOfRange(levelM)) return fail(problem('out-of-range', 'levelM'))
  // A wall that leaves no place wet needs no sums, which take long where it reaches through all of the water.
  if (deepestUnderWall(p) + levelM <= 0) return fail(wallTakesAll(p, levelM) ?? noWater('level', 'levelM'))
  const measures = measure(p, levelM)
  if (!isSound(measures)) return fail(problem('arithmetic', 'outline'))
  if (measures.volumeM3 > measures.errorBoundM3) return ok(measures)
  return fail(wallTakesAll(p, levelM) ?? noWater('level', 'levelM'))
}

function isSound({
  volumeM3,
  waterSurfaceM2,
  wetted,
  perimeterM,
  maxDepthM,
  errorBoundM3,
  sigmaM3,
}: Measures): boolean {
  return [volumeM3, waterSurfaceM2, wetted.totalM2, perimeterM, maxDepthM, errorBoundM3, sigmaM3].every(Number.isFinite)
}
