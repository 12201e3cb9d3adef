import { fail, ok, type Result, under } from '../base/index.ts'
import { type Equilibrium, equilibrate, type Totals, totalsOf, type WaterReading } from '../water/index.ts'
import { type Notice, unknownKeys } from './unknown-keys.ts'
import { asNumber, asObject, type Options } from './verb.ts'

const OPTIONAL_KEYS = [
  'ch_mg_per_L_as_CaCO3',
  'mg_hardness_mg_per_L_as_CaCO3',
  'sulfate_mg_per_L',
  'cya_mg_per_L',
  'borate_mg_per_L_as_B',
  'fc_mg_per_L_as_Cl2',
  'salt_mg_per_L_as_NaCl',
  'temperature_C',
] as const

/** A water object of the contract: pH and total alkalinity are required, absent others are zero (25 °C). */
export function readWater(value: unknown, path: string): Result<WaterReading> {
  const object = asObject(value, path)
  if (!object.ok) return object
  const pH = asNumber(object.value['pH'], `${path}.pH`)
  if (!pH.ok) return pH
  const ta = asNumber(object.value['ta_mg_per_L_as_CaCO3'], `${path}.ta_mg_per_L_as_CaCO3`)
  if (!ta.ok) return ta
  const rest: Partial<Record<(typeof OPTIONAL_KEYS)[number], number>> = {}
  for (const key of OPTIONAL_KEYS) {
    const given = object.value[key]
    if (given === undefined || given === null) continue
    const number = asNumber(given, `${path}.${key}`)
    if (!number.ok) return number
    rest[key] = number.value
  }
  return ok({ ...rest, pH: pH.value, ta_mg_per_L_as_CaCO3: ta.value })
}

/** What to say of keys of a water that nothing reads; spread into an answer, it adds a key only where there are any. */
export function waterNotices(
  value: unknown,
  path: string,
  also: readonly string[] = [],
): { readonly notices?: readonly Notice[] } {
  const known = ['pH', 'ta_mg_per_L_as_CaCO3', ...OPTIONAL_KEYS, ...also]
  const notices = unknownKeys(value, path, known)
  return notices.length > 0 ? { notices } : {}
}

export interface SolvedWater {
  readonly totals: Totals
  readonly equilibrium: Equilibrium
}

/** A water of the contract, solved. */
export function solveWater(value: unknown, path: string, options: Options): Result<SolvedWater> {
  const reading = readWater(value, path)
  if (!reading.ok) return reading
  const totals = totalsOf(reading.value, options.constants)
  if (!totals.ok) return fail(under(path, totals.problem))
  return solveTotals(totals.value, options)
}

/** Conserved totals, solved as a closed water. */
export function solveTotals(totals: Totals, options: Options): Result<SolvedWater> {
  const equilibrium = equilibrate(totals, options.constants)
  return equilibrium.ok ? ok({ totals, equilibrium: equilibrium.value }) : equilibrium
}
