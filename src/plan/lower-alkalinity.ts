import { deltaOf, type Product } from '../chemicals/index.ts'
import { type Constants, equilibrateAtPH } from '../water/index.ts'
import { afterDose, isPermitted, type Move, permittedPart } from './moves.ts'
import { doseToPH } from './single.ts'
import { type SolvedWater, solvedWater } from './solved.ts'
import type { Want } from './wants.ts'

const MOST_ROUNDS = 16
/** Acid takes pH down to here, never near 7.0; air brings it back up to there. */
const DOWN_TO_PH = 7.1
const UP_TO_PH = [8.0, 7.8, 7.7, 7.6, 7.5, 7.4, 7.3] as const
const LAST_UP_TO_PH = 7.8

/**
 * Lowers alkalinity by rounds: acid down to a safe pH, then CO2 out by moving the surface until pH has come back, as
 * often as the acid needs. Acid in one go would take pH far below 7.
 */
export function lowerAlkalinity(
  start: SolvedWater,
  rules: { readonly products: { readonly acid: Product }; readonly boundSI: number; readonly constants: Constants },
  acidGPerM3: number,
): Move[] {
  const { constants, boundSI } = rules
  const acid = rules.products.acid
  const moves: Move[] = []
  let water = start
  let left = acidGPerM3
  for (let round = 0; round < MOST_ROUNDS && left > 1e-6; round++) {
    const toTurn = doseToPH(water.totals, deltaOf(acid, 1), DOWN_TO_PH, constants) ?? 0
    const want: Want = { purpose: 'acid', product: acid, gPerM3: Math.min(left, toTurn) }
    const part = water.equilibrium.pH > DOWN_TO_PH ? permittedPart(water, want, boundSI, constants) : 0
    if (part > 0) {
      const after = afterDose(water.totals, deltaOf(acid, part), constants)
      if (!after) break
      moves.push({ kind: 'dose', want: { ...want, gPerM3: part }, before: water, after, exception: 'lowering' })
      water = after
      left -= part
    }
    const aired = aerated(water, left > 1e-6 ? UP_TO_PH[0] : LAST_UP_TO_PH, boundSI, constants)
    if (!aired) break
    moves.push({ kind: 'aerate', before: water, after: aired })
    water = aired
  }
  return moves
}

/** The water after its surface was kept moving until pH is back, as high as scale allows. */
function aerated(
  water: SolvedWater,
  highestPH: number,
  boundSI: number,
  constants: Constants,
): SolvedWater | undefined {
  for (const pH of UP_TO_PH.filter((each) => each <= highestPH)) {
    if (pH <= water.equilibrium.pH) return undefined
    const open = equilibrateAtPH(water.totals, pH, constants)
    if (!open.ok || open.value.totals.carbonMol >= water.totals.carbonMol) continue
    const after = solvedWater(open.value.totals, constants)
    if (after.ok && isPermitted(water, after.value, boundSI)) return after.value
  }
  return undefined
}
