import { equilibrateAtPH } from '../water/index.ts'
import { isPermitted, type Rules } from './moves.ts'
import { type SolvedWater, solvedWater } from './solved.ts'

const HALVINGS = 30
/** A smaller rise is not worth days of waiting. */
const LEAST_RISE_PH = 0.08

/**
 * The water after its surface was kept moving until pH has come up to `highestPH`, or as far as scale allows; undefined
 * where that is not worth it. Alkalinity stays.
 */
export function aerated(water: SolvedWater, highestPH: number, rules: Rules): SolvedWater | undefined {
  const at = (pH: number): SolvedWater | undefined => {
    const open = equilibrateAtPH(water.totals, pH, rules.constants)
    if (!open.ok || open.value.totals.carbonMol >= water.totals.carbonMol) return undefined
    const after = solvedWater(open.value.totals, rules.constants)
    return after.ok && isPermitted(water, after.value, rules) ? after.value : undefined
  }
  const from = water.equilibrium.pH
  if (highestPH < from + LEAST_RISE_PH) return undefined
  const whole = at(highestPH)
  if (whole) return whole
  let lo = from
  let hi = highestPH
  let best: SolvedWater | undefined
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (lo + hi)
    const there = at(middle)
    if (there) {
      best = there
      lo = middle
    } else hi = middle
  }
  return best && best.equilibrium.pH >= from + LEAST_RISE_PH ? best : undefined
}
