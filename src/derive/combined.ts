import { momentMs, type ReadingSet, type System } from '../document/index.ts'
import type { OpeningInput } from '../plan/index.ts'
import { combinedChlorine } from '../water/index.ts'
import { isPools } from './latest.ts'

type Combined = Pick<OpeningInput, 'combinedMgPerL' | 'combinedAtMs' | 'chlorineClash'>

/** Combined chlorine by one set of readings, or how they contradict each other; undefined where they tell neither. */
function combinedOf({ at, values, method }: ReadingSet): Combined | undefined {
  const { fc_mg_per_L_as_Cl2: free, cc_mg_per_L_as_Cl2: read } = values
  const combinedAtMs = momentMs(at)
  if (free === undefined) return read === undefined ? undefined : { combinedMgPerL: read, combinedAtMs }
  const told = combinedChlorine({ ...values, fc_mg_per_L_as_Cl2: free }, method)
  if (!told.ok) return { chlorineClash: told.problem.what, combinedAtMs }
  return told.value && { combinedMgPerL: told.value.combinedMgPerL, combinedAtMs }
}

/** Combined chlorine as it was read last in this pool: neither time nor a dose tells that it is gone. */
export function lastCombined(system: System, newest: ReadingSet | undefined): Combined {
  const sets = system.water.readings
    .filter((set) => set === newest || isPools(set, system))
    .toSorted((a, b) => momentMs(b.at) - momentMs(a.at))
  for (const set of newest ? [newest, ...sets] : sets) {
    const told = combinedOf(set)
    if (told) return told
  }
  return {}
}
