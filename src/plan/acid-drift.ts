import { fail, ok, type Result } from '../base/index.ts'
import {
  addTotals,
  alkalinityAtPH,
  type Constants,
  co2FluxMolPerM2Day,
  type Delta,
  equilibrate,
  scaleDelta,
  type Totals,
} from '../water/index.ts'
import type { Band } from './types.ts'

/** log10 of the CO2 pressure of air, 420 µatm (from memory of NOAA's record, 2023–25) [atm]. */
const AIR_LOG10_PCO2 = -3.377
const STEP_DAYS = 0.125
const L_PER_M3 = 1000

export interface DriftInput {
  /** The water at the pH it is brought back to. */
  readonly start: Totals
  readonly aimPH: number
  /** pH at either end of which it is brought back; absent, it is brought back once, at the end. */
  readonly band: Band | undefined
  /** Change of totals a day by products and make-up water. */
  readonly perDay: Delta
  /** Transfer velocity of CO2 through the whole surface [m/day]. */
  readonly velocityMPerDay: number
  readonly meanDepthM: number
  readonly days: number
  readonly constants: Constants
  readonly stepDays?: number | undefined
}

export interface Drift {
  /** Alkalinity taken out, a day [eq/kg]; below zero where it has to be put in. */
  readonly acidEqPerDay: number
  /** Days until pH first reached an end of the band; absent where it never did. */
  readonly daysToEnd?: number | undefined
}

/**
 * Acid that keeps pH in its band while CO2 leaves and products come in [eq/kg day].
 * Equation: dC/dt = −k ([CO2] − [CO2]air) / d + sources; at an end of the band, and at the last day, A is titrated back to
 *   the aim.
 * Symbols: C carbon [mol/kg]; k transfer velocity [m/day]; d mean depth [m]; A alkalinity [eq/kg].
 * Valid for: mixed water; the days of one season's stretch with steady weather.
 * Source: the water kernel; two-film exchange with k of the caller.
 * Accuracy: midpoint steps of an eighth of a day: 1e-3 of the result; the physics is as good as k.
 */
export function acidDrift(input: DriftInput): Result<Drift> {
  const { aimPH, band, constants, meanDepthM, velocityMPerDay } = input
  const step = input.stepDays ?? STEP_DAYS
  const steps = Math.round(input.days / step)
  let totals = input.start
  let acidEq = 0
  let daysToEnd: number | undefined
  const rate = (at: Totals): Result<{ readonly carbon: number; readonly pH: number }> => {
    const solved = equilibrate(at, constants)
    if (!solved.ok) return solved
    const flux = co2FluxMolPerM2Day(solved.value, AIR_LOG10_PCO2, velocityMPerDay)
    return ok({ carbon: -flux / (meanDepthM * L_PER_M3), pH: solved.value.pH })
  }
  const change = (carbon: number, days: number): Delta => {
    const sources = scaleDelta(input.perDay, days)
    return { ...sources, carbonMol: (sources.carbonMol ?? 0) + carbon * days }
  }
  const bringBack = (): Result<true> => {
    const left = alkalinityAtPH(totals, aimPH, constants)
    if (!left.ok) return left
    const taken = totals.alkalinityEq - left.value
    acidEq += taken
    // as hydrochloric acid, or as lye where alkalinity is put in
    const salt = taken > 0 ? { chlorideMol: taken } : { sodiumMol: -taken }
    totals = addTotals(totals, { alkalinityEq: -taken, ...salt })
    return ok(true)
  }
  for (let i = 0; i < steps; i++) {
    const here = rate(totals)
    if (!here.ok) return here
    const middle = rate(addTotals(totals, change(here.value.carbon, step / 2)))
    if (!middle.ok) return middle
    totals = addTotals(totals, change(middle.value.carbon, step))
    const there = rate(totals)
    if (!there.ok) return there
    const { pH } = there.value
    if (!band || (pH < band.high && pH > band.low)) continue
    daysToEnd ??= (i + 1) * step
    const back = bringBack()
    if (!back.ok) return fail(back.problem)
  }
  const back = bringBack()
  if (!back.ok) return fail(back.problem)
  return ok({ acidEqPerDay: acidEq / input.days, ...(daysToEnd === undefined ? {} : { daysToEnd }) })
}
