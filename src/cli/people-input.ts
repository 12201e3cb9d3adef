import { fail, ok, type Result, under } from '../base/index.ts'
import {
  type CombinedChlorine,
  type Constants,
  type ExtraReading,
  readingFromPeople,
  type ToldReading,
  type WaterReading,
} from '../water/index.ts'
import { asNumber, asObject } from './verb.ts'

/** Readings that people's tests report besides those of the contract. */
export const PEOPLE_KEYS = [
  'tc_mg_per_L_as_Cl2',
  'cc_mg_per_L_as_Cl2',
  'th_mg_per_L_as_CaCO3',
  'copper_mg_per_L',
  'iron_mg_per_L',
  'manganese_mg_per_L',
  'conductivity_uS_per_cm',
  'tds_mg_per_L',
] as const satisfies readonly (keyof ExtraReading)[]

export interface PeopleWater {
  readonly reading: WaterReading
  /** Readings that others tell, with their ranges; the water is computed with the best of each. */
  readonly told: readonly ToldReading[]
  readonly combined: CombinedChlorine | undefined
}

/**
 * A water with what people's tests report besides; undefined where there is nothing of that kind, and the water is as it is.
 * Keys that the water itself holds are never replaced. Readings that can't be true together are a problem.
 */
export function peopleWater(
  value: unknown,
  reading: WaterReading,
  method: unknown,
  path: string,
  constants: Constants,
): Result<PeopleWater | undefined> {
  const object = asObject(value, path)
  if (!object.ok) return object
  const extra: Partial<Record<(typeof PEOPLE_KEYS)[number], number>> = {}
  for (const key of PEOPLE_KEYS) {
    const given = object.value[key]
    if (given === undefined || given === null) continue
    const number = asNumber(given, `${path}.${key}`)
    if (!number.ok) return number
    extra[key] = number.value
  }
  if (Object.keys(extra).length === 0) return ok(undefined)
  const methodId = typeof method === 'string' ? method : 'unknown'
  const { told, combined, problems, reading: taken } = readingFromPeople({ ...reading, ...extra }, methodId, constants)
  const [clash] = problems
  if (clash) return fail(under(path, clash))
  return ok({ reading: { ...taken, ...reading, ...best(told) }, told, combined })
}

function best(told: readonly ToldReading[]): Partial<WaterReading> {
  return Object.fromEntries(told.map(({ key, likely }) => [key, likely.best]))
}
