import { deltaOf, type Product } from '../chemicals/index.ts'
import { addTotals, type Constants, equilibrate, MG_CACO3_PER_EQ, type Totals } from '../water/index.ts'
import { effectPerGPerM3 } from './effect.ts'
import { LIMITS } from './limits.ts'

const MOST_POURS = 80

/** How far one pour may take pH from here: further where it comes back toward the range from outside. */
function mostStep(from: number, to: number): number {
  const outside = to < from ? from - LIMITS.highestPH : LIMITS.lowestPH - from
  return LIMITS.pourPH + Math.min(LIMITS.pourPHOutside, Math.max(0, outside))
}

/** Whether equal pours of this size each stay within the steps of `LIMITS`. */
function isGentle(start: Totals, product: Product, gPerM3: number, count: number, constants: Constants): boolean {
  const delta = deltaOf(product, gPerM3 / count)
  if (Math.abs(delta.alkalinityEq ?? 0) * MG_CACO3_PER_EQ > LIMITS.pourAlkalinityMgPerL * (1 + 1e-9)) return false
  let totals = start
  let before = equilibrate(totals, constants)
  for (let i = 0; i < count; i++) {
    totals = addTotals(totals, delta)
    const after = equilibrate(totals, constants)
    if (!before.ok || !after.ok) return false
    const step = Math.abs(after.value.pH - before.value.pH)
    if (step > mostStep(before.value.pH, after.value.pH) * (1 + 1e-9)) return false
    before = after
  }
  return true
}

/** The least number of equal pours of which none moves pH or alkalinity by more than a step. */
export function pourCount(start: Totals, product: Product, gPerM3: number, constants: Constants): number {
  const alkalinity = Math.abs(deltaOf(product, gPerM3).alkalinityEq ?? 0) * MG_CACO3_PER_EQ
  let count = Math.max(1, Math.ceil(alkalinity / LIMITS.pourAlkalinityMgPerL - 1e-9))
  while (count < MOST_POURS && !isGentle(start, product, gPerM3, count, constants)) count++
  return count
}

/** Where metals read high, one pour of chlorine raises it by no more than this [mg/L] (ours). */
export const METAL_POUR_MG_PER_L = 1

/** The least number of pours that raise chlorine slowly, so that metal left in the water doesn't fall out all at once. */
export function slowPourCount(product: Product, gPerM3: number): number {
  return Math.max(1, Math.ceil((gPerM3 * effectPerGPerM3(product, 'fc_mg_per_L_as_Cl2')) / METAL_POUR_MG_PER_L - 1e-9))
}

/**
 * Hours between pours of one product, so that one is mixed in before the next: half a turnover, two hours at the least
 * (common practice, no source).
 */
export function pourSpacingHours(turnoverHours: number): number {
  return Math.max(2, turnoverHours / 2)
}
