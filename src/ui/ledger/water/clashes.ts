import type { Problem } from '../../../base/index.ts'
import type { ReadingMethod, ReadingValues } from '../../../document/index.ts'
import { startWater } from '../../../plan/index.ts'
import { CONSTANT_SETS, readingFromPeople } from '../../../water/index.ts'

/** Readings that no water can have together, each with the readings that clash; none while too few are there to tell. */
export function clashesOf(values: ReadingValues, method: ReadingMethod): readonly Problem[] {
  const { reading, problems } = readingFromPeople(values, method, CONSTANT_SETS.default)
  const { pH, ta_mg_per_L_as_CaCO3 } = reading
  if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return problems
  const water = startWater({ ...reading, pH, ta_mg_per_L_as_CaCO3 }, CONSTANT_SETS.default)
  return water.ok ? problems : [...problems, water.problem]
}
