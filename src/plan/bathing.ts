import { DEFAULT_RULES, limitsFor } from '../water/index.ts'
import { outlastedWords } from './bathing-lasting.ts'
import { unmixedWords, waitWords } from './bathing-waits.ts'
import { chlorineCeiling, chlorineFloor } from './floor.ts'
import { LIMITS } from './limits.ts'
import { hoursBetween, spanWords } from './spans.ts'
import type { OpeningInput, OpeningPlan } from './types.ts'

const FILL = 'These are the fill water’s readings; measure the pool itself.'

/** Hours since the readings; infinite where there are none. */
export function readingAgeHours(measuredAtMs: number | undefined, nowMs: number): number {
  return measuredAtMs === undefined ? Number.POSITIVE_INFINITY : hoursBetween(measuredAtMs, nowMs)
}

/**
 * Only fresh readings of the pool itself, inside the limits, clear anyone; doses since then take that back. What was read
 * too high and not read again since stands, however old: nobody is cleared by forgetting it.
 */
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
  const waits = waitWords(input)
  if (waits !== undefined) return no(waits)
  if (input.given.some((dose) => dose.atMs >= (input.measuredAtMs ?? 0)))
    return no('Something was dosed since the readings. Measure again before anyone bathes.')
  const unmixed = unmixedWords(input)
  if (unmixed !== undefined) return no(`${unmixed} Measure again before anyone bathes.`)
  if (input.closedBecause !== undefined) return no(input.closedBecause)
  if (input.startedAtMs !== undefined && !((input.measuredAtMs ?? 0) >= input.startedAtMs))
    return no('The readings are from before this start began. Measure again before anyone bathes.')
  const { pH, fc_mg_per_L_as_Cl2: chlorine, cya_mg_per_L: stabiliser } = start
  if (pH === undefined || chlorine === undefined) return no('Bathing needs a measured pH and free chlorine.')
  // the stricter of the chosen rules and what holds everywhere here; combined chlorine by the chosen rules alone, since some
  // places allow more of it under a roof; where none are chosen, or they are silent, the default's
  const rules = limitsFor(input.rulesId, stabiliser, input, input.isIndoor)
  const floor = chlorineFloor(stabiliser, input).mgPerL
  const ceiling = chlorineCeiling(stabiliser, input)
  const pHLow = Math.max(DEFAULT_RULES.pHLow, rules.pHLow)
  const pHHigh = Math.min(DEFAULT_RULES.pHHigh, rules.pHHigh)
  if (!(floor <= ceiling))
    return no(
      `The least free chlorine, ${floor} mg/L, is above the most, ${ceiling} mg/L: nobody may bathe. Check the rules and your own limits.`,
    )
  const unknown = stabiliser === undefined ? ' Stabiliser is unknown and counts as present.' : ''
  if (!(chlorine >= floor)) return no(`Free chlorine is below the ${floor} mg/L that bathing needs.${unknown}`)
  if (!(chlorine <= ceiling)) return no(`Free chlorine is above ${ceiling} mg/L.`)
  if (!(pH >= pHLow && pH <= pHHigh)) return no(`pH is outside ${pHLow.toFixed(1)} to ${pHHigh.toFixed(1)}.`)
  const stabilised = stabiliserWords(input, rules.stabiliserHighMgPerL)
  if (stabilised !== undefined) return no(stabilised)
  if (input.chlorineClash !== undefined) return no(`${input.chlorineClash} Read them again before anyone bathes.`)
  const combined = combinedWords(input, rules.combinedHighMgPerL)
  if (combined !== undefined) return no(combined)
  const outlasted = outlastedWords(input, floor, age)
  if (outlasted !== undefined) return no(outlasted)
  return {
    cleared: true,
    reason: `The last measured pH and free chlorine are inside the limits.${unknown} The water must also be clear to the drain, and local rules and the labels come first.`,
  }
}

/** Why stabiliser keeps the pool closed, as read now or as it was read last, or undefined. */
function stabiliserWords({ start, lastStabiliser, nowMs }: OpeningInput, ruledHigh: number): string | undefined {
  const high = Math.min(DEFAULT_RULES.stabiliserHighMgPerL, ruledHigh)
  const now = start.cya_mg_per_L
  if (now !== undefined && !(now <= high)) return `Stabiliser is above ${high} mg/L; chlorine works too slowly.`
  if (!lastStabiliser || lastStabiliser.mgPerL <= high) return undefined
  const { mgPerL, atMs, isExchanged } = lastStabiliser
  const was = `Stabiliser came to ${Math.round(mgPerL)} mg/L ${spanWords(hoursBetween(atMs, nowMs))} ago, above ${high}, and was not read since`
  return isExchanged
    ? `${was}, though water was exchanged. Read it again before anyone bathes.`
    : `${was}: it stays in the water, and chlorine works too slowly. Read it again before anyone bathes.`
}

/** Why combined chlorine keeps the pool closed, as it was read last, or undefined. */
function combinedWords(input: OpeningInput, high: number): string | undefined {
  const { combinedMgPerL, combinedAtMs, measuredAtMs = input.nowMs } = input
  if (combinedMgPerL === undefined || combinedMgPerL <= high) return undefined
  const value = Number(combinedMgPerL.toPrecision(2))
  return combinedAtMs === undefined || combinedAtMs >= measuredAtMs
    ? `Combined chlorine is ${value} mg/L, above ${high}: it has to be broken down first.`
    : `Combined chlorine read ${value} mg/L ${spanWords(hoursBetween(combinedAtMs, input.nowMs))} ago, above ${high}, and was not read since: it has to be broken down first, and free and total chlorine read again.`
}
