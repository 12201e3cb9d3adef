import type { Problem, Result } from '../base/index.ts'
import { type CombinedChlorine, combinedChlorine } from './combined-chlorine.ts'
import { PEOPLE_READING_NAMES, type PeopleReading } from './people-reading.ts'
import { READING_KEYS } from './reading.ts'
import { calciumFromTotal, conductivityFromSolids, type Likely } from './readings-people-have.ts'
import { saltFromConductivity } from './salt-from-conductivity.ts'
import type { Constants, WaterReading } from './types.ts'

type PartialReading = { readonly [key in keyof WaterReading]?: number | undefined }

/** A reading that nobody took but others tell. */
export interface ToldReading {
  readonly key: 'ch_mg_per_L_as_CaCO3' | 'salt_mg_per_L_as_NaCl'
  readonly likely: Likely
  /** For a person: from what, and how far it may be off. */
  readonly words: string
}

export interface TakenReading {
  /** What a water can be solved from: the readings taken, and what others tell where one is missing. */
  readonly reading: PartialReading
  readonly told: readonly ToldReading[]
  /** Undefined where neither total nor combined chlorine was read, or they clash. */
  readonly combined: CombinedChlorine | undefined
  /** Clashes; the reading that clashes tells nothing. */
  readonly problems: readonly Problem[]
}

/**
 * Readings as people have them → readings that a water is solved from. A reading that was taken is never replaced; total
 * hardness tells calcium, conductivity (or a meter's dissolved solids) tells salt, total chlorine tells combined.
 */
export function readingFromPeople(people: PeopleReading, methodId: string, constants: Constants): TakenReading {
  const problems: Problem[] = []
  const told: ToldReading[] = []
  const noted = <T>(result: Result<T>): T | undefined => {
    if (result.ok) return result.value
    problems.push(result.problem)
    return undefined
  }
  const tell = (key: ToldReading['key'], likely: Likely, from: string) => {
    const range = `${likely.low.toFixed(0)} to ${likely.high.toFixed(0)} mg/L`
    told.push({ key, likely, words: `${first(PEOPLE_READING_NAMES[key])} is reckoned from ${from}: ${range}.` })
  }
  let reading = solvable(people)

  const { th_mg_per_L_as_CaCO3: hardness, fc_mg_per_L_as_Cl2: free } = people
  if (hardness !== undefined) {
    const calcium = noted(calciumFromTotal({ ...people, th_mg_per_L_as_CaCO3: hardness }, methodId))
    if (calcium && reading.ch_mg_per_L_as_CaCO3 === undefined) {
      reading = { ...reading, ch_mg_per_L_as_CaCO3: calcium.best }
      tell('ch_mg_per_L_as_CaCO3', calcium, 'total hardness')
    }
  }

  const salt = saltTold(people, reading, constants, noted)
  if (salt) {
    reading = { ...reading, salt_mg_per_L_as_NaCl: salt.likely.best }
    tell('salt_mg_per_L_as_NaCl', salt.likely, salt.from)
  }

  const combined =
    free === undefined ? undefined : noted(combinedChlorine({ ...people, fc_mg_per_L_as_Cl2: free }, methodId))
  return { reading, told, combined, problems }
}

/** Salt from conductivity, where the meter's reading is there, salt is not, and the water can be solved at all. */
function saltTold(
  people: PeopleReading,
  reading: PartialReading,
  constants: Constants,
  noted: <T>(result: Result<T>) => T | undefined,
): { readonly likely: Likely; readonly from: string } | undefined {
  const { conductivity_uS_per_cm: read, tds_mg_per_L: solids } = people
  const { pH, ta_mg_per_L_as_CaCO3, salt_mg_per_L_as_NaCl } = reading
  if (salt_mg_per_L_as_NaCl !== undefined || pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return undefined
  const water: WaterReading = { ...reading, pH, ta_mg_per_L_as_CaCO3 }
  if (read !== undefined) {
    const likely = noted(saltFromConductivity(water, read, constants))
    return likely && { likely, from: 'conductivity' }
  }
  if (solids === undefined) return undefined
  const conductivity = noted(conductivityFromSolids(solids))
  if (!conductivity) return undefined
  const best = noted(saltFromConductivity(water, conductivity.best, constants))
  if (!best) return undefined
  // a meter of another factor: each end on its own, and one that no water has counts as no salt
  const low = saltFromConductivity(water, conductivity.low, constants)
  const high = saltFromConductivity(water, conductivity.high, constants)
  return {
    likely: {
      low: low.ok ? low.value.low : 0,
      best: best.best,
      high: high.ok ? high.value.high : best.high,
      status: 'common practice, no source',
    },
    from: 'dissolved solids',
  }
}

function solvable(people: PeopleReading): PartialReading {
  return Object.fromEntries(READING_KEYS.flatMap((key) => (people[key] === undefined ? [] : [[key, people[key]]])))
}

const first = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
