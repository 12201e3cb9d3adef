import { fail, ok, type Result } from '../base/index.ts'
import { limitsFor, NO_STABILISER_MG_PER_L, type OwnChlorineLimits } from './chlorine-limits.ts'
import { MOLAR_MASSES_G_PER_MOL } from './masses.ts'
import { chlorineReadingBad, stabiliserTooHighForBreakpoint } from './problems-chlorine.ts'
import type { SourceStatus } from './sourcing.ts'

/** g N held in combined chlorine of 1 g as Cl2, all of it monochloramine: one Cl2 to one N. */
const NITROGEN_PER_COMBINED = MOLAR_MASSES_G_PER_MOL.nitrogen / MOLAR_MASSES_G_PER_MOL.chlorineAsCl2
/** 2 NH2Cl + HOCl → N2 + 3 HCl + H2O: half a mole of chlorine to each mole already combined. */
const THEORY_PER_COMBINED = 0.5
/** g Cl2 per g N in practice. */
const PRACTICE_LOW = 10
const PRACTICE_HIGH = 15
/** Free chlorine the trade's rule raises to, per combined chlorine. */
const TRADE_RULE = 10

export interface SuperchlorinationWater {
  readonly freeMgPerL: number
  readonly combinedMgPerL: number
  /** Unknown counts as present. */
  readonly stabiliserMgPerL: number | undefined
  readonly isIndoor?: boolean | undefined
  readonly rules?: (OwnChlorineLimits & { readonly profile?: string | undefined }) | undefined
}

/** One way of reckoning the dose. */
export interface BreakpointDose {
  readonly id: 'theory' | 'practice' | 'trade-rule'
  readonly label: string
  /** Chlorine to add [mg/L as Cl2]. */
  readonly lowMgPerL: number
  readonly highMgPerL: number
  readonly source: string
  readonly status: SourceStatus
}

export interface Superchlorination {
  /** False where combined chlorine is inside the limit. */
  readonly isNeeded: boolean
  readonly limitMgPerL: number
  readonly doses: readonly BreakpointDose[]
  /** The dose to begin with [mg/L as Cl2]: the upper end of practice; then measure, and repeat if it is still there. */
  readonly doseMgPerL: number
  /** Nobody bathes until free chlorine is back to this [mg/L]. */
  readonly bathingAgainAtMgPerL: number
  readonly notes: readonly string[]
}

/**
 * Chlorine that breaks combined chlorine down [mg/L as Cl2], three ways side by side.
 * Equation: theory ½ CC; practice (10 to 15) N − CC with N = 0.1975 CC; trade rule 10 CC − FC.
 * Symbols: CC combined, FC free chlorine; N its nitrogen, all of it taken as monochloramine.
 * Valid for: monochloramine, in water with little or no stabiliser. Dichloramine needs less; chlorine on urea, creatinine
 *   and other organic nitrogen is burnt off slowly or not at all.
 * Source: 3 mol Cl2 to 2 mol N, and 10 to 15 g per g in practice: environmental engineering handbook (seen); the trade rule
 *   is common practice, no source. It counts combined chlorine as if it were nitrogen, so it overdoses by five or more.
 * Accuracy: a factor of two.
 */
export function superchlorination(water: SuperchlorinationWater): Result<Superchlorination> {
  const { freeMgPerL: free, combinedMgPerL: combined, stabiliserMgPerL: stabiliser, isIndoor = false } = water
  if (!(combined >= 0 && Number.isFinite(combined)))
    return fail(chlorineReadingBad('cc_mg_per_L_as_Cl2', 'Combined chlorine', combined))
  if (!(free >= 0 && Number.isFinite(free)))
    return fail(chlorineReadingBad('fc_mg_per_L_as_Cl2', 'Free chlorine', free))
  const limits = limitsFor(water.rules?.profile, stabiliser, water.rules, isIndoor)
  if (stabiliser !== undefined && stabiliser > limits.stabiliserHighMgPerL)
    return fail(stabiliserTooHighForBreakpoint(stabiliser, limits.stabiliserHighMgPerL))
  const nitrogen = NITROGEN_PER_COMBINED * combined
  const practiceHigh = PRACTICE_HIGH * nitrogen - combined
  const doses: BreakpointDose[] = [
    {
      id: 'theory',
      label: 'By theory',
      lowMgPerL: THEORY_PER_COMBINED * combined,
      highMgPerL: THEORY_PER_COMBINED * combined,
      source: '3 mol of chlorine to 2 mol of nitrogen; two thirds are already there',
      status: 'derived',
    },
    {
      id: 'practice',
      label: 'In practice',
      lowMgPerL: PRACTICE_LOW * nitrogen - combined,
      highMgPerL: practiceHigh,
      source: '10 to 15 g of chlorine to 1 g of nitrogen, environmental engineering handbook',
      status: 'seen',
    },
    {
      id: 'trade-rule',
      label: 'Ten times the combined chlorine',
      lowMgPerL: Math.max(0, TRADE_RULE * combined - free),
      highMgPerL: Math.max(0, TRADE_RULE * combined - free),
      source: 'free chlorine raised to ten times the combined',
      status: 'common practice, no source',
    },
  ]
  const mayHaveStabiliser = stabiliser === undefined || stabiliser >= NO_STABILISER_MG_PER_L
  const notes = [
    'It breaks down monochloramine. Chlorine bound to urea and other organic matter stays, or goes slowly; fresh water takes that away.',
    isIndoor
      ? 'Indoors run the ventilation at full and keep people out: volatile chloramines leave by the air, and nowhere else.'
      : 'Outdoors take the cover off: sun and wind carry off part of what forms.',
    ...(mayHaveStabiliser
      ? [
          `${stabiliser === undefined ? 'Stabiliser is unknown and counts as present: it' : 'Stabiliser'} slows this down by holding chlorine back. Use a chlorine without stabiliser, and allow a day.`,
        ]
      : []),
    `Nobody bathes until free chlorine is back to ${limits.ceilingMgPerL} mg/L and combined to ${limits.combinedHighMgPerL} or less.`,
    ...limits.notes,
  ]
  return ok({
    isNeeded: combined > limits.combinedHighMgPerL,
    limitMgPerL: limits.combinedHighMgPerL,
    doses,
    doseMgPerL: practiceHigh,
    bathingAgainAtMgPerL: limits.ceilingMgPerL,
    notes,
  })
}
