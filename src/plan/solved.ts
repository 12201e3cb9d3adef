import { ok, type Result } from '../base/index.ts'
import { CONSTANT_SETS, type Constants, equilibrate, readingOf, type Totals } from '../water/index.ts'
import type { ExpectedWater } from './types.ts'

/** A water with the totals it was solved from. */
export interface SolvedWater extends ExpectedWater {
  readonly totals: Totals
}

export function constantsOf(id: 'default' | 'oracle' | 'wahman'): Constants {
  return CONSTANT_SETS[id]
}

export function solvedWater(totals: Totals, constants: Constants): Result<SolvedWater> {
  const equilibrium = equilibrate(totals, constants)
  if (!equilibrium.ok) return equilibrium
  return ok({ totals, equilibrium: equilibrium.value, reading: readingOf(totals, equilibrium.value) })
}

/** What a plan's reader needs of it. */
export function expectedOf(water: SolvedWater): ExpectedWater {
  return { reading: water.reading, equilibrium: water.equilibrium }
}
