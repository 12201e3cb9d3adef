import { bracketedRoot, fail, invariant, ok, type Result } from '../base/index.ts'
import { equilibrate } from './equilibrate.ts'
import { conductivityTooHigh, conductivityTooLow, peopleReadingBad } from './problems-readings.ts'
import { leastSaltMgPerL, totalsOf } from './reading.ts'
import type { Likely } from './readings-people-have.ts'
import { atTemperature } from './totals.ts'
import type { Constants, Totals, WaterReading } from './types.ts'

/** Meters are set to show conductivity as it would be at this temperature. */
const METER_C = 25
/** Salt that the search goes up to [mg/L]; about sea water. */
const MOST_SALT_MG_PER_L = 35_000
const SALT_TOLERANCE_MG_PER_L = 1e-6
/** How well the conductance model and a meter agree: 3 % of the golden tables, room for ions nobody read, 2 % of a meter. */
const MODEL_SHARE = 0.055

/** Conductivity of a water brought to 25 °C, as meters show it [µS/cm]. */
export function conductivityAt25(totals: Totals, constants: Constants): Result<number> {
  const solved = equilibrate(atTemperature(totals, METER_C), constants)
  return solved.ok ? ok(solved.value.conductanceMicroSPerCm) : solved
}

/**
 * The salt that explains a conductivity, given the other readings [mg/L as NaCl].
 * Equation: κ25(salt, other readings) = κ read; Brent's method, κ25 rising with salt.
 * Symbols: κ25 `conductivityAt25` [µS/cm].
 * Valid for: up to 35 g/L. Sulfate, magnesium or potassium that nobody read count as salt; the reading's own salt is ignored.
 * Source: this program's conductance model (`conductance.ts`), turned around.
 * Accuracy: low and high are 5.5 % of the conductivity away, which in thin water is a large part of the salt.
 */
export function saltFromConductivity(reading: WaterReading, microSPerCm: number, constants: Constants): Result<Likely> {
  if (!(microSPerCm >= 0 && Number.isFinite(microSPerCm)))
    return fail(peopleReadingBad('conductivity_uS_per_cm', 'Conductivity', microSPerCm))
  const conductivity = (salt: number): Result<number> => {
    const totals = totalsOf({ ...reading, salt_mg_per_L_as_NaCl: salt }, constants)
    return totals.ok ? conductivityAt25(totals.value, constants) : totals
  }
  const leastSalt = leastSaltMgPerL(reading)
  const least = conductivity(leastSalt)
  if (!least.ok) return least
  const most = conductivity(MOST_SALT_MG_PER_L)
  if (!most.ok) return most
  if (microSPerCm * (1 + MODEL_SHARE) < least.value) return fail(conductivityTooLow(microSPerCm, least.value))
  if (microSPerCm > most.value) return fail(conductivityTooHigh(microSPerCm, most.value))
  const ends: number[] = []
  for (const share of [1 - MODEL_SHARE, 1, 1 + MODEL_SHARE]) {
    const salt = saltFor(microSPerCm * share, [leastSalt, least.value], [MOST_SALT_MG_PER_L, most.value], conductivity)
    if (!salt.ok) return salt
    ends.push(salt.value)
  }
  const [low = leastSalt, best = leastSalt, high = leastSalt] = ends
  return ok({ low, best, high, status: 'derived' })
}

type End = readonly [saltMgPerL: number, microSPerCm: number]

/** The salt at which the water conducts so much, inside the two ends [mg/L]. */
function saltFor(
  target: number,
  [leastSalt, least]: End,
  [mostSalt, most]: End,
  conductivity: (saltMgPerL: number) => Result<number>,
): Result<number> {
  if (target <= least) return ok(leastSalt)
  if (target >= most) return ok(mostSalt)
  let trouble: Result<number> | undefined
  const root = bracketedRoot(
    (salt) => {
      const found = conductivity(salt)
      if (!found.ok) trouble ??= found
      return found.ok ? found.value - target : Number.NaN
    },
    leastSalt,
    mostSalt,
    SALT_TOLERANCE_MG_PER_L,
  )
  if (trouble) return trouble
  invariant(root.ok, 'conductivity rises with salt, so the bracket holds its root')
  return ok(root.value.x)
}
