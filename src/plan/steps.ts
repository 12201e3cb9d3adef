import { deltaOf } from '../chemicals/index.ts'
import { type Constants, MG_CACO3_PER_EQ } from '../water/index.ts'
import { LIMITS } from './limits.ts'
import { afterDose, type Move } from './moves.ts'

/** Doses that move alkalinity by more than a line may, as even steps. */
export function inSteps(moves: readonly Move[], constants: Constants): readonly Move[] {
  return moves.flatMap((move): readonly Move[] => {
    if (move.kind !== 'dose') return [move]
    const { product, gPerM3 } = move.want
    const alkalinity = Math.abs(deltaOf(product, gPerM3).alkalinityEq ?? 0) * MG_CACO3_PER_EQ
    const count = Math.ceil(alkalinity / LIMITS.lineAlkalinityMgPerL - 1e-9)
    if (count <= 1) return [move]
    const want = { ...move.want, gPerM3: gPerM3 / count }
    const steps: Move[] = []
    let before = move.before
    for (let step = 1; step <= count; step++) {
      const after = step === count ? move.after : afterDose(before.totals, deltaOf(product, want.gPerM3), constants)
      if (!after) return [move]
      steps.push({ ...move, want, before, after, exception: move.exception ?? 'step' })
      before = after
    }
    return steps
  })
}
