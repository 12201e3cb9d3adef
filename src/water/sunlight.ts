import type { Equilibrium } from './types.ts'

/** Surface photolysis under clear summer noon sun at 47° N [1/s]: Nowell & Hoigné 1992, Water Res. 26:593, abstract. */
export const HOCL_PHOTOLYSIS_PER_S = 2e-4
export const OCL_PHOTOLYSIS_PER_S = 1.2e-3

/** Global irradiance that those rates stand for [W/m²]: from memory of clear noon in June at 47° N, ±15 %. */
const NOON_W_PER_M2 = 900

/** Attenuation of light near 330 nm in clear pool water [1/m]: from memory, uncertain by a factor of two. */
export const NEAR_UV_ATTENUATION_PER_M = 0.5

/** Mean path of diffuse and refracted light per metre of depth: from memory, 1.1 to 1.3. */
const PATH_PER_DEPTH = 1.2

/**
 * First-order photolysis of all oxidising chlorine at the surface under clear noon sun [1/s].
 * Equation: (k1 [HOCl] + k2 [OCl-]) / total chlorine.
 * Symbols: k1 2e-4, k2 1.2e-3 per second; chlorine on cyanurate absorbs hardly any light beyond 300 nm and counts as zero
 *   (from memory; it makes the loss a lower bound).
 * Valid for: clear summer noon, about 47° latitude.
 * Source: Nowell & Hoigné 1992, Water Research 26:593.
 * Accuracy: 20 % without stabiliser; with it see `photolysisPerDay`.
 */
function noonPhotolysisPerS(equilibrium: Equilibrium): number {
  const { activeChlorineMgPerL, hypochloriteMgPerL, boundChlorineMgPerL } = equilibrium
  const total = activeChlorineMgPerL + hypochloriteMgPerL + boundChlorineMgPerL
  if (total === 0) return 0
  return (HOCL_PHOTOLYSIS_PER_S * activeChlorineMgPerL + OCL_PHOTOLYSIS_PER_S * hypochloriteMgPerL) / total
}

/** Half-life of all oxidising chlorine at the surface under clear summer noon sun [min]; infinite without chlorine. */
export function halfLifeInSunMin(equilibrium: Equilibrium): number {
  return Math.LN2 / noonPhotolysisPerS(equilibrium) / 60
}

export interface SunlitBody {
  /** Solar radiation on the water [MJ/m² day]. */
  readonly solarMJPerM2Day: number
  readonly meanDepthM: number
  /** Attenuation of near-ultraviolet light [1/m]; 0.5 where it isn't known. */
  readonly attenuationPerM?: number | undefined
}

/**
 * First-order loss of all oxidising chlorine to sunlight, averaged over the day and the depth of mixed water [1/day].
 * Equation: k_noon × (H / E_noon) × (1 − e^(−1.2 a d)) / (1.2 a d).
 * Symbols: k_noon surface rate at noon [1/s]; H solar radiation [J/m² day]; E_noon 900 W/m²; a attenuation near 330 nm
 *   [1/m]; d mean depth [m].
 * Valid for: water mixed faster than it is bleached (stabilised water always; clear unstabilised water within a half-life).
 * Source: rate Nowell & Hoigné 1992; the rest is optics with the stated values from memory.
 * Accuracy: a factor of 1.5 without stabiliser. With 138 mg/L of stabiliser in a clear desert summer it gives 7–10 % a day
 *   (by constant set), where Wojtowicz (J. Swimming Pool Spa Ind. 5(1), abstract) measured 1–2 %: an upper estimate there.
 */
export function photolysisPerDay(equilibrium: Equilibrium, body: SunlitBody): number {
  const attenuation = body.attenuationPerM ?? NEAR_UV_ATTENUATION_PER_M
  const opticalDepth = PATH_PER_DEPTH * attenuation * body.meanDepthM
  const lit = opticalDepth > 1e-6 ? -Math.expm1(-opticalDepth) / opticalDepth : 1
  const noonSecondsPerDay = (body.solarMJPerM2Day * 1e6) / NOON_W_PER_M2
  return noonPhotolysisPerS(equilibrium) * noonSecondsPerDay * lit
}

/** How far off the loss may be, at both ends, without stabiliser: rate, light and depth together. */
const PLAIN_FACTOR = 1.5
/** The upper end overstates by this where all chlorine is bound: 7–10 % a day here, 1–2 % measured at 138 mg/L. */
const BOUND_FACTOR = 6

/**
 * The loss to sunlight as a range [1/day].
 * Equation: high = 1.5 k; low = k / (1.5^(1−b) × 6^b).
 * Symbols: k `photolysisPerDay`; b share of chlorine bound to stabiliser.
 * Valid for: as `photolysisPerDay`.
 * Source: one measurement, Wojtowicz, J. Swimming Pool Spa Ind. 5(1), abstract: 1–2 % a day at 138 mg/L; no measured curve
 *   against stabiliser is at hand, so the way between is this program's own.
 * Accuracy: it holds that measurement and the unstabilised laboratory rates; nothing between is checked.
 */
export function photolysisRangePerDay(
  equilibrium: Equilibrium,
  body: SunlitBody,
): { readonly low: number; readonly high: number } {
  const { activeChlorineMgPerL, hypochloriteMgPerL, boundChlorineMgPerL } = equilibrium
  const total = activeChlorineMgPerL + hypochloriteMgPerL + boundChlorineMgPerL
  const bound = total > 0 ? boundChlorineMgPerL / total : 0
  const perDay = photolysisPerDay(equilibrium, body)
  return { low: perDay / (PLAIN_FACTOR ** (1 - bound) * BOUND_FACTOR ** bound), high: PLAIN_FACTOR * perDay }
}
