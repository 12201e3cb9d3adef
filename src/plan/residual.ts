import type { DemandTerm } from './upkeep-types.ts'

/** How a pool uses chlorine: a share of the residual, and an amount that comes whatever the residual is. */
export interface Losses {
  /** First-order loss to sun and warmth [1/day]. */
  readonly perDay: number
  /** Loss to bathers, dust and walls [mg/L day]. */
  readonly steadyMgPerLDay: number
  /** The steady loss over the first-order one [mg/L]. */
  readonly ratioMgPerL: number
}

/** Terms that grow with the residual; the others don't shrink as it falls. */
const WITH_RESIDUAL: readonly string[] = ['sun', 'warmth']

/** The demand's terms, reckoned at a residual, as a rate and a steady loss. */
export function lossesAt(terms: readonly DemandTerm[], residualMgPerL: number): Losses {
  const sum = (isRate: boolean) =>
    terms.reduce((total, term) => total + (WITH_RESIDUAL.includes(term.id) === isRate ? term.value : 0), 0)
  const perDay = sum(true) / residualMgPerL
  return { perDay, steadyMgPerLDay: sum(false), ratioMgPerL: sum(false) / perDay }
}

/**
 * The lowest residual that a steady habit of dosing leads to [mg/L as Cl2], never below zero.
 * Equation: dR/dt = −k R − d; doses S T every T days leave S T / (e^(kT) − 1) − d/k before each; as T → 0, (S − d)/k.
 * Symbols: R residual; k first-order loss [1/day]; d steady loss [mg/L day]; S supply [mg/L day]; T days between doses.
 * Valid for: the same day over and over; light and bathers spread over all of it.
 * Source: derived; the periodic solution of that equation.
 * Accuracy: that of the demand, a factor of two without a log.
 */
export function lowestResidual(supplyMgPerLDay: number, everyDays: number, losses: Losses): number {
  const { perDay, ratioMgPerL } = losses
  const carried =
    everyDays > 0 ? (supplyMgPerLDay * everyDays) / Math.expm1(perDay * everyDays) : supplyMgPerLDay / perDay
  return Math.max(0, carried - ratioMgPerL)
}
