import { fail, ok, type Result } from '../base/index.ts'
import { badAgeing } from './problems.ts'

const GAS_CONSTANT = 8.314
const ZERO_C_IN_K = 273.15
const SECONDS_PER_DAY = 86_400
const CL2_G_PER_MOL = 70.906
const G_PER_L_PER_TRADE_PERCENT = 10
/** Lye left over from making it, 4 g/L; from memory. */
const LYE_MOL_PER_L = 0.1
/** The rate may be this many times faster or slower: metals and light speed it up, pH and salt differ; own estimate. */
const RATE_FACTOR = 2

export interface StoredLiquid {
  /** Trade %: grams of chlorine in 100 mL, when it was made or bought. */
  readonly percent: number
  readonly days: number
  readonly storedC: number
}

export interface StrengthLeft {
  /** Trade % that is left. */
  readonly percent: number
  /** The same if it decays twice as fast, and half as fast. */
  readonly low: number
  readonly high: number
  /** Days in which it would lose half of `percent` as it was at first. */
  readonly halfLifeDays: number
  readonly source: string
}

const SOURCE =
  'Adam & Gordon 1999, Inorg. Chem. 38, 1299 (abstract seen): clean liquid in the dark; metals, light and heat take more'

/**
 * Rate constant of the loss of hypochlorite in alkaline liquid chlorine [L mol⁻¹ day⁻¹].
 * Equation: log10 k = 0.149 µ + log10(2.083e10 T exp(−1.018e5 / RT) exp(−56.5 / R)), in L mol⁻¹ s⁻¹.
 * Symbols: µ ionic strength [mol/L]; T [K]; R gas constant [J mol⁻¹ K⁻¹].
 * Valid for: µ 1 to 6 mol/L, 15 to 55 °C, pH above 11, no metals; used a little beyond.
 * Source: Adam & Gordon 1999, Inorg. Chem. 38(6), 1299–1304, abstract (seen).
 * Accuracy: taken as a factor of two either way for what stands in a shed. That k counts all hypochlorite lost is
 * our reading; it agrees with half-lives of a water-works handbook recalled from memory within a third.
 */
export function decayPerMolarDay(ionicStrengthMolPerL: number, temperatureC: number): number {
  const kelvin = temperatureC + ZERO_C_IN_K
  const eyring = 2.083e10 * kelvin * Math.exp(-1.018e5 / (GAS_CONSTANT * kelvin)) * Math.exp(-56.5 / GAS_CONSTANT)
  return 10 ** (0.149 * ionicStrengthMolPerL) * eyring * SECONDS_PER_DAY
}

/**
 * Strength that stored liquid chlorine still has [trade %].
 * Equation: 1/c = 1/c₀ + k t; three OCl⁻ become one ClO3⁻ and two Cl⁻, so ionic strength and k stay as they are.
 * Symbols: c hypochlorite [mol/L]; k as in `decayPerMolarDay`; t days.
 * Valid for: above 0 to 22 trade %, −10 to 55 °C, up to ten years, closed and dark.
 * Source: second-order decay after Gordon and Adam; see `decayPerMolarDay`.
 * Accuracy: `low` and `high` are the same at twice and half the rate.
 */
export function strengthAfter(stored: StoredLiquid): Result<StrengthLeft> {
  const { percent, days, storedC } = stored
  if (!(percent > 0 && percent <= 22)) return fail(badAgeing('percent', percent, 'liquid chlorine up to 22 trade %'))
  if (!(days >= 0 && days <= 3653)) return fail(badAgeing('days', days, '0 days to ten years'))
  if (!(storedC >= -10 && storedC <= 55)) return fail(badAgeing('storedC', storedC, 'storage between −10 and 55 °C'))
  const molPerL = (percent * G_PER_L_PER_TRADE_PERCENT) / CL2_G_PER_MOL
  // as much salt as hypochlorite
  const rate = decayPerMolarDay(2 * molPerL + LYE_MOL_PER_L, storedC) * molPerL
  const left = (factor: number) => percent / (1 + factor * rate * days)
  return ok({
    percent: left(1),
    low: left(RATE_FACTOR),
    high: left(1 / RATE_FACTOR),
    halfLifeDays: 1 / rate,
    source: SOURCE,
  })
}
