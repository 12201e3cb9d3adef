import { deltaOf, type Product } from '../chemicals/index.ts'
import { aerated } from './aeration.ts'
import { readingChange } from './effect.ts'
import { afterDose, type Move, permittedPart, type Rules } from './moves.ts'
import { doseToPH } from './single.ts'
import type { SolvedWater } from './solved.ts'
import { isInside } from './targets.ts'
import type { Band } from './types.ts'
import type { Want } from './wants.ts'

/** More rounds than this take more than a fortnight, which is not worth it (ours): other water, or leave it. */
const MOST_ROUNDS = 6
/** A last round for less than this is left out where alkalinity is inside its band already [mg/L as CaCO3]. */
const SMALL_REST_MG_PER_L = 15
/** Acid takes pH down to here, never to the very edge; air brings it back up to there. */
const DOWN_TO_PH = 7.1
const UP_TO_PH = 8.0
const LAST_UP_TO_PH = 7.8
const NOTHING_G_PER_M3 = 1e-6

/**
 * Lowers alkalinity by rounds: acid down to a safe pH, then CO2 out by moving the surface until pH has come back, as
 * often as the acid needs. Acid in one go would take pH far below 7. No moves where it would take too many rounds.
 */
export function lowerAlkalinity(
  start: SolvedWater,
  acid: Product,
  acidGPerM3: number,
  hasBegun: boolean,
  band: Band | undefined,
  rules: Rules,
): Move[] {
  const moves: Move[] = []
  let water = start
  let left = acidGPerM3
  const isEnough = (): boolean => {
    const rest = -readingChange(deltaOf(acid, left), 'ta_mg_per_L_as_CaCO3')
    const isIn = band !== undefined && isInside(water.reading.ta_mg_per_L_as_CaCO3, band)
    return left <= NOTHING_G_PER_M3 || ((hasBegun || moves.length > 0) && isIn && rest < SMALL_REST_MG_PER_L)
  }
  for (let round = 0; round < MOST_ROUNDS && !isEnough(); round++) {
    const toTurn =
      water.equilibrium.pH > DOWN_TO_PH ? doseToPH(water.totals, deltaOf(acid, 1), DOWN_TO_PH, rules.constants) : 0
    const want: Want = { purpose: 'acid', product: acid, gPerM3: Math.min(left, toTurn ?? 0) }
    const part = want.gPerM3 > 0 ? permittedPart(water, want, rules) : 0
    if (part > NOTHING_G_PER_M3) {
      const after = afterDose(water.totals, deltaOf(acid, part), rules.constants)
      if (!after) break
      moves.push({ kind: 'dose', want: { ...want, gPerM3: part }, before: water, after, exception: 'lowering' })
      water = after
      left -= part
    }
    const aired = aerated(water, isEnough() ? LAST_UP_TO_PH : UP_TO_PH, rules)
    if (!aired) break
    moves.push({ kind: 'aerate', before: water, after: aired })
    water = aired
  }
  return isEnough() ? moves : []
}
