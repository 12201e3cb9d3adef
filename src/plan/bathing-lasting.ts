import { NO_STABILISER_MG_PER_L } from '../water/index.ts'
import { LIMITS } from './limits.ts'
import { spanWords } from './spans.ts'
import type { Holding, OpeningInput } from './types.ts'

const HOURS_PER_DAY = 24

/**
 * How long a reading of free chlorine stays at the floor with nothing fed [h].
 * Equation: dR/dt = −k R − d, so t = ln((R + d/k)/(floor + d/k))/k; (R − floor)/d where k is none.
 * Symbols: R the reading, floor [mg/L]; k first-order loss [1/day], d steady loss [mg/L day], both the upkeep's own.
 * Valid for: light and bathers spread over the whole day.
 * Source: derived.
 * Accuracy: that of the demand, a factor of two without a log.
 */
export function lastingHours(
  readMgPerL: number,
  floorMgPerL: number,
  { perDay: k, steadyMgPerLDay: d }: Holding,
): number {
  if (!(readMgPerL > floorMgPerL)) return 0
  const days =
    k > 0
      ? Math.log((readMgPerL + d / k) / (floorMgPerL + d / k)) / k
      : d > 0
        ? (readMgPerL - floorMgPerL) / d
        : Infinity
  return days * HOURS_PER_DAY
}

/** Why a reading inside its day no longer tells that the floor is held, or undefined. */
export function outlastedWords(input: OpeningInput, floorMgPerL: number, ageHours: number): string | undefined {
  const { holding } = input
  const { fc_mg_per_L_as_Cl2: read, cya_mg_per_L: stabiliser } = input.start
  if (!holding || holding.isHeld || read === undefined) return undefined
  const hours = Math.min(LIMITS.bathingHours, lastingHours(read, floorMgPerL, holding))
  if (ageHours <= hours) return undefined
  const sun = input.isIndoor
    ? 'What is in the water'
    : stabiliser === undefined
      ? 'Stabiliser is unknown; without it the sun'
      : stabiliser < NO_STABILISER_MG_PER_L
        ? 'Without stabiliser the sun'
        : 'Sun and water'
  return `Free chlorine was read ${spanWords(ageHours)} ago. ${sun} may have taken it below the ${floorMgPerL} mg/L that bathing needs: by the upkeep’s sums ${read} mg/L lasts ${hours > 0 ? spanWords(hours) : 'no time'}, and nothing is known to hold it. Read it again before anyone bathes.`
}
