import { chlorineFloor } from './floor.ts'
import { CHLORINE_FLOOR, LIMITS } from './limits.ts'
import type { OpeningInput, OpeningPlan } from './types.ts'

const MS_PER_HOUR = 3_600_000
const PH_LOW = 7.0
const PH_HIGH = 7.8

/** Hours since the readings; infinite where there are none. */
export function readingAgeHours(measuredAtMs: number | undefined, nowMs: number): number {
  return measuredAtMs === undefined ? Number.POSITIVE_INFINITY : (nowMs - measuredAtMs) / MS_PER_HOUR
}

/** Only fresh measured readings inside the limits clear anyone; doses since then take that back. */
export function bathingVerdict(input: OpeningInput): OpeningPlan['bathing'] {
  const { start } = input
  const no = (reason: string) => ({ cleared: false, reason })
  const age = readingAgeHours(input.measuredAtMs, input.nowMs)
  if (!Number.isFinite(age)) return no('There is no measured reading. Expected readings never clear anyone to bathe.')
  if (age > LIMITS.bathingHours || age < 0)
    return no(`The readings are not from the last ${LIMITS.bathingHours} hours. Measure again before anyone bathes.`)
  if (input.given.some((dose) => dose.atMs >= (input.measuredAtMs ?? 0)))
    return no('Something was dosed since the readings. Measure again before anyone bathes.')
  const { pH, fc_mg_per_L_as_Cl2: chlorine, cya_mg_per_L: stabiliser } = start
  if (pH === undefined || chlorine === undefined) return no('Bathing needs a measured pH and free chlorine.')
  const floor = chlorineFloor(stabiliser, input.chlorineFloorMgPerL).mgPerL
  const ceiling = Math.min(CHLORINE_FLOOR.bathingCeilingMgPerL, input.chlorineCeilingMgPerL ?? Number.POSITIVE_INFINITY)
  if (chlorine < floor) return no(`Free chlorine is below the ${floor} mg/L that bathing needs.`)
  if (chlorine > ceiling) return no(`Free chlorine is above ${ceiling} mg/L.`)
  if (pH < PH_LOW || pH > PH_HIGH) return no(`pH is outside ${PH_LOW.toFixed(1)} to ${PH_HIGH}.`)
  if (stabiliser !== undefined && stabiliser > 100)
    return no('Stabiliser is above 100 mg/L; chlorine works too slowly.')
  return {
    cleared: true,
    reason:
      'The last measured pH and free chlorine are inside the limits. The water must also be clear to the drain, and local rules and the labels come first.',
  }
}
