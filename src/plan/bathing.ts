import { DEFAULT_RULES, limitsFor } from '../water/index.ts'
import { chlorineCeiling, chlorineFloor } from './floor.ts'
import { LIMITS } from './limits.ts'
import type { OpeningInput, OpeningPlan } from './types.ts'

const MS_PER_HOUR = 3_600_000
const FILL = 'These are the fill water’s readings; measure the pool itself.'

/** Hours since the readings; infinite where there are none. */
export function readingAgeHours(measuredAtMs: number | undefined, nowMs: number): number {
  return measuredAtMs === undefined ? Number.POSITIVE_INFINITY : (nowMs - measuredAtMs) / MS_PER_HOUR
}

/** Only fresh readings of the pool itself, inside the limits, clear anyone; doses since then take that back. */
export function bathingVerdict(input: OpeningInput): OpeningPlan['bathing'] {
  const { start } = input
  const no = (reason: string) => ({ cleared: false, reason })
  const age = readingAgeHours(input.measuredAtMs, input.nowMs)
  if (!Number.isFinite(age) || input.startIs === undefined)
    return no('There is no measured reading. Expected readings never clear anyone to bathe.')
  // a supplier's report tells of the water in the main, whatever list it was put on
  if (input.startIs === 'fill' || input.method === 'supplier') return no(FILL)
  if (age > LIMITS.bathingHours || age < 0)
    return no(`The readings are not from the last ${LIMITS.bathingHours} hours. Measure again before anyone bathes.`)
  // "unknown" is what a document gets where nobody said: it may be a copied figure as well as a measured one
  if (input.method === undefined || input.method === 'unknown')
    return no('How these readings were measured is not said. Say it, or measure again, before anyone bathes.')
  if (input.given.some((dose) => dose.atMs >= (input.measuredAtMs ?? 0)))
    return no('Something was dosed since the readings. Measure again before anyone bathes.')
  if (input.closedBecause !== undefined) return no(input.closedBecause)
  if (input.startedAtMs !== undefined && !((input.measuredAtMs ?? 0) >= input.startedAtMs))
    return no('The readings are from before this start began. Measure again before anyone bathes.')
  const { pH, fc_mg_per_L_as_Cl2: chlorine, cya_mg_per_L: stabiliser } = start
  if (pH === undefined || chlorine === undefined) return no('Bathing needs a measured pH and free chlorine.')
  // the stricter of the chosen rules and what holds everywhere here
  const rules = limitsFor(input.rulesId, stabiliser, input, input.isIndoor)
  const floor = chlorineFloor(stabiliser, input).mgPerL
  const ceiling = chlorineCeiling(stabiliser, input)
  const pHLow = Math.max(DEFAULT_RULES.pHLow, rules.pHLow)
  const pHHigh = Math.min(DEFAULT_RULES.pHHigh, rules.pHHigh)
  const stabiliserHigh = Math.min(DEFAULT_RULES.stabiliserHighMgPerL, rules.stabiliserHighMgPerL)
  if (!(floor <= ceiling))
    return no(
      `The least free chlorine, ${floor} mg/L, is above the most, ${ceiling} mg/L: nobody may bathe. Check the rules and your own limits.`,
    )
  const unknown = stabiliser === undefined ? ' Stabiliser is unknown and counts as present.' : ''
  if (!(chlorine >= floor)) return no(`Free chlorine is below the ${floor} mg/L that bathing needs.${unknown}`)
  if (!(chlorine <= ceiling)) return no(`Free chlorine is above ${ceiling} mg/L.`)
  if (!(pH >= pHLow && pH <= pHHigh)) return no(`pH is outside ${pHLow.toFixed(1)} to ${pHHigh.toFixed(1)}.`)
  if (stabiliser !== undefined && !(stabiliser <= stabiliserHigh))
    return no(`Stabiliser is above ${stabiliserHigh} mg/L; chlorine works too slowly.`)
  if (input.chlorineClash !== undefined) return no(`${input.chlorineClash} Read them again before anyone bathes.`)
  const { combinedMgPerL } = input
  if (combinedMgPerL !== undefined && combinedMgPerL > rules.combinedHighMgPerL)
    return no(
      `Combined chlorine is ${Number(combinedMgPerL.toPrecision(2))} mg/L, above ${rules.combinedHighMgPerL}: it has to be broken down first.`,
    )
  return {
    cleared: true,
    reason: `The last measured pH and free chlorine are inside the limits.${unknown} The water must also be clear to the drain, and local rules and the labels come first.`,
  }
}
