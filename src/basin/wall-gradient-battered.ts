import { mark } from './pattern-integral.ts'
import {
  addArea,
  areaOf,
  BY_WALL,
  FLOOR_MOMENTS,
  LEAN,
  LEVEL,
  leverOf,
  PATCH_MOMENTS,
  pushZero,
  type Sheaf,
  UNSCALED,
} from './wall-gradient-span.ts'
import type { RaySpan } from './wall-kind.ts'

const breaks: number[] = []

/**
 * What a batter changes of the derivatives along a stretch of a ray; returns a number for the pattern of its pieces.
 * Equation: d = min(feature, f, n/run) where f > 0: ∂d/∂n = 1/run and ∂d/∂run = −n/run² where n/run is least.
 * Accuracy: rounding.
 */
export function addBatteredSpan(run: number, sheaf: Sheaf, span: RaySpan, levelM: number, sums: Float64Array): number {
  const { f0, f1, k0, k1, isFeature } = span
  breaks.length = 0
  pushZero(f0, f1, breaks)
  pushZero(f0, f1 - 1 / run, breaks)
  pushZero(f0 + levelM, f1, breaks)
  pushZero(levelM, 1 / run, breaks)
  if (isFeature) {
    pushZero(k0, k1 - 1 / run, breaks)
    pushZero(k0 + levelM, k1, breaks)
  }
  breaks.sort((a, b) => a - b)
  let name = 0
  let code = -1
  let a = span.from
  for (let i = 0; i <= breaks.length; i++) {
    const b = i === breaks.length ? span.to : Math.min(breaks[i]!, span.to)
    if (!(b > a)) continue
    const middle = (a + b) / 2
    const f = f0 + f1 * middle
    const k = k0 + k1 * middle
    const allowed = middle / run
    const rules = f > 0 && allowed < f && allowed < k
    const wetBefore = k + levelM > 0
    const wetAfter = rules ? allowed + levelM > 0 : wetBefore
    const next = rules ? 4 + (wetBefore ? 2 : 0) + (wetAfter ? 1 : 0) : 0
    // What nothing is summed over makes no pattern.
    if (next !== code) name = mark(name, next)
    code = next
    if (rules) {
      if (wetBefore) {
        addArea(sheaf, a, b, -1, sums, isFeature ? PATCH_MOMENTS : FLOOR_MOMENTS)
        sums[LEVEL]! -= areaOf(sheaf, a, b)
      }
      if (wetAfter) {
        const area = areaOf(sheaf, a, b)
        const lever = leverOf(sheaf, a, b)
        sums[LEVEL]! += area
        sums[LEAN]! += area / run
        sums[UNSCALED]! += lever / run
        sums[BY_WALL]! -= lever / (run * run)
      }
    }
    a = b
    if (a >= span.to) break
  }
  return name
}
