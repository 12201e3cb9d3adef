import type { ReadingMethod, ReadingValues } from '../document/index.ts'
import { startWater } from '../plan/index.ts'
import {
  type Constants,
  type Equilibrium,
  methodSigma,
  type PeopleReadingKey,
  READING_KEYS,
  readingFromPeople,
} from '../water/index.ts'

/** A range that others tell counts as four standard deviations wide. */
const TOLD_RANGE_SIGMAS = 4

/**
 * One standard deviation of something solved from readings, in its own unit: how far the tests' scatter moves it.
 * Equation: σ² = Σ (∂f/∂x σ(x))², each slope taken between x − σ and x + σ.
 * Symbols: x each reading that the water is solved from; σ(x) by its method, or by the range that another reading tells.
 * Valid for: readings that scatter each on their own; a reading without a known scatter counts as exact, and so
 *   does a plain none, which mostly means that none was ever added.
 * Source: definition.
 * Accuracy: first order; one slope is left out where neither side of it is a water that exists.
 */
export function sigmaFromTests(
  values: ReadingValues,
  method: ReadingMethod,
  constants: Constants,
  f: (water: Equilibrium) => number,
): number | undefined {
  const { reading, told } = readingFromPeople(values, method, constants)
  const at = (key: PeopleReadingKey, value: number): number | undefined => {
    const { pH, ta_mg_per_L_as_CaCO3, ...rest } = { ...reading, [key]: value }
    if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return undefined
    const start = startWater({ ...rest, pH, ta_mg_per_L_as_CaCO3 }, constants)
    const result = start.ok ? f(start.value.water.equilibrium) : Number.NaN
    return Number.isFinite(result) ? result : undefined
  }
  let variance = 0
  for (const key of READING_KEYS) {
    const value = reading[key]
    if (value === undefined || value === 0) continue
    const range = told.find((each) => each.key === key)?.likely
    const sigma = range ? (range.high - range.low) / TOLD_RANGE_SIGMAS : methodSigma(method, key, value)?.sigma
    if (!sigma) continue
    const least = key === 'pH' || key === 'temperature_C' ? Number.NEGATIVE_INFINITY : 0
    const points = [Math.max(least, value - sigma), value, value + sigma].flatMap((x) => {
      const y = at(key, x)
      return y === undefined ? [] : [{ x, y }]
    })
    const [first, last] = [points[0], points.at(-1)]
    if (!first || !last || first.x === last.x) continue
    variance += (((last.y - first.y) / (last.x - first.x)) * sigma) ** 2
  }
  return variance > 0 ? Math.sqrt(variance) : undefined
}
