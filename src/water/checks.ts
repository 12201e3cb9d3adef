import { fail, ok, type Result } from '../base/index.ts'
import { negativeTotal, notANumber, readingOutOfRange, tooSalty } from './problems.ts'
import { TOTAL_KEYS } from './totals.ts'
import type { Totals } from './types.ts'

export const LOWEST_C = -2
export const HIGHEST_C = 60
/** Beyond this ionic strength no answer is given; beyond 0.5 answers are an extrapolation [mol/kg]. */
const MOST_IONIC_STRENGTH = 4
/** What rounding may leave below zero after something was taken out exactly [mol/kg]. */
const DUST = 1e-12

/** The totals as they are, if a water can have them. */
export function checkedTotals(totals: Totals): Result<Totals> {
  for (const key of TOTAL_KEYS) {
    const amount = totals[key] ?? 0
    if (!Number.isFinite(amount)) return fail(notANumber(key, amount))
    if (key !== 'alkalinityEq' && amount < -DUST) return fail(negativeTotal(key, amount))
  }
  const { temperatureC } = totals
  if (!(temperatureC >= LOWEST_C && temperatureC <= HIGHEST_C)) {
    return fail(readingOutOfRange('temperatureC', temperatureC, LOWEST_C, HIGHEST_C, ' °C'))
  }
  const doubly = totals.calciumMol + totals.magnesiumMol + totals.sulfateMol
  const singly = totals.sodiumMol + totals.potassiumMol + totals.chlorideMol + Math.abs(totals.alkalinityEq)
  const ionicStrength = 0.5 * singly + 2 * doubly
  if (ionicStrength > MOST_IONIC_STRENGTH) return fail(tooSalty(ionicStrength, MOST_IONIC_STRENGTH))
  return ok(totals)
}
