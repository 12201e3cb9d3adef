import { ok, type Result } from '../base/index.ts'
import { withWahman } from './constants.ts'
import { equilibrate, equilibrateAtPH } from './equilibrate.ts'
import { halfLifeInSunMin } from './sunlight.ts'
import type { Constants, Totals } from './types.ts'

export interface ActiveChlorineSpread {
  /** HOCl under the set that was passed in [mg/L as Cl2]. */
  readonly mgPerL: number
  /** HOCl under Wahman's constants at the same pH [mg/L as Cl2]. */
  readonly wahmanMgPerL: number
  readonly lowMgPerL: number
  readonly highMgPerL: number
  /** high / low; 1 without stabiliser or without chlorine. */
  readonly ratio: number
  /** Share of free chlorine that is active, under both sets. */
  readonly shareLow: number
  readonly shareHigh: number
}

/**
 * Active chlorine under both published sets of chlorine–cyanurate constants [mg/L as Cl2].
 * Equation: the water solved twice at one pH, with the rows K6, K7a and K9a of each set.
 * Symbols: see MODEL.md, "Constants".
 * Valid for: what `equilibrate` holds for.
 * Source: O'Brien, Morris & Butler 1974 (from memory); Wahman 2018, Wahman & Alexander 2019 (abstracts).
 * Accuracy: neither set is known to be right; the truth may lie outside by some tenths.
 */
export function activeChlorineSpread(totals: Totals, constants: Constants): Result<ActiveChlorineSpread> {
  const here = equilibrate(totals, constants)
  if (!here.ok) return here
  const there = equilibrateAtPH(totals, here.value.pH, withWahman(constants))
  if (!there.ok) return there
  const mgPerL = here.value.activeChlorineMgPerL
  const wahmanMgPerL = there.value.equilibrium.activeChlorineMgPerL
  const lowMgPerL = Math.min(mgPerL, wahmanMgPerL)
  const highMgPerL = Math.max(mgPerL, wahmanMgPerL)
  const free = mgPerL + here.value.hypochloriteMgPerL + here.value.boundChlorineMgPerL
  return ok({
    mgPerL,
    wahmanMgPerL,
    lowMgPerL,
    highMgPerL,
    ratio: lowMgPerL > 0 ? highMgPerL / lowMgPerL : 1,
    shareLow: free > 0 ? lowMgPerL / free : 0,
    shareHigh: free > 0 ? highMgPerL / free : 0,
  })
}

export interface SunHalfLives {
  /** At the surface, clear summer noon, in this water [min]. */
  readonly hereMin: number
  /** The same water at the same pH without its stabiliser [min]. */
  readonly withoutStabiliserMin: number
}

/** Half-life of chlorine in noon sun with and without this water's stabiliser [min]; both infinite without chlorine. */
export function sunHalfLives(totals: Totals, constants: Constants): Result<SunHalfLives> {
  const here = equilibrate(totals, constants)
  if (!here.ok) return here
  const bare = equilibrateAtPH({ ...totals, cyanurateMol: 0 }, here.value.pH, constants)
  if (!bare.ok) return bare
  return ok({
    hereMin: halfLifeInSunMin(here.value),
    withoutStabiliserMin: halfLifeInSunMin(bare.value.equilibrium),
  })
}
