import { coveRise, type RiseIntegrals, riseIntegrals, riseMeets } from './cove-profile.ts'
import { mark } from './pattern-integral.ts'
import { NEARLY } from './tolerance.ts'
import {
  addArea,
  areaOf,
  BY_WALL,
  FLOOR_MOMENTS,
  LEAN,
  LEVEL,
  PATCH_MOMENTS,
  pushZero,
  type Sheaf,
  UNSCALED,
} from './wall-gradient-span.ts'
import type { RaySpan } from './wall-kind.ts'

const breaks: number[] = []
const rise: RiseIntegrals = { zeroth: 0, first: 0 }

/**
 * What a cove changes of the derivatives along a stretch of a ray; returns a number for the pattern of its pieces.
 * Equation: d = min(feature, max(f − rise, min(f, 0))); on the curve ∂d/∂n = −rise′, ∂d/∂r = −∂rise/∂r, ∂d/∂f = 1; on its
 *   level top at the datum all are 0. By parts ∫ −rise′ w dn = −[rise w] + ∫ rise w′ dn, w = h0 + h1 n.
 * Accuracy: rounding.
 */
export function addCoveSpan(r: number, sheaf: Sheaf, span: RaySpan, levelM: number, sums: Float64Array): number {
  const { f0, f1, k0, k1, isFeature } = span
  const to = Math.min(span.to, r)
  breaks.length = 0
  pushZero(f0, f1, breaks)
  pushZero(f0 + levelM, f1, breaks)
  riseMeets(f0, f1, r, breaks)
  riseMeets(f0 + levelM, f1, r, breaks)
  if (isFeature) {
    pushZero(k0, k1, breaks)
    pushZero(k0 + levelM, k1, breaks)
    riseMeets(f0 - k0, f1 - k1, r, breaks)
  }
  if (breaks.length > 1) breaks.sort((a, b) => a - b)
  let name = 0
  let code = -1
  let a = span.from
  for (let i = 0; i <= breaks.length; i++) {
    const b = i === breaks.length ? to : Math.min(breaks[i]!, to)
    if (!(b > a)) continue
    const middle = (a + b) / 2
    const f = f0 + f1 * middle
    const k = k0 + k1 * middle
    const lifted = f - coveRise(middle, r)
    const coved = f > 0 ? Math.max(lifted, 0) : f
    // 0: as it was, 1: on the cove's curve, 2: on its level top at the datum.
    const kind = (isFeature && k <= coved) || f <= 0 ? 0 : lifted > 0 ? 1 : 2
    const wetBefore = k + levelM > 0
    const wetAfter = (kind === 0 ? k : coved) + levelM > 0
    const next = kind === 0 ? 0 : 4 * kind + (wetBefore ? 2 : 0) + (wetAfter ? 1 : 0)
    // As in the sums: what nothing is summed over, and what rounding may leave out, makes no pattern.
    if (next !== code && b - a > NEARLY * r) {
      name = mark(name, next)
      code = next
    }
    if (kind > 0) {
      if (wetBefore) {
        addArea(sheaf, a, b, -1, sums, isFeature ? PATCH_MOMENTS : FLOOR_MOMENTS)
        sums[LEVEL]! -= areaOf(sheaf, a, b)
      }
      if (wetAfter) sums[LEVEL]! += areaOf(sheaf, a, b)
      if (wetAfter && kind === 1) {
        addArea(sheaf, a, b, 1, sums, FLOOR_MOMENTS)
        addCurve(r, sheaf, a, b, sums)
      }
    }
    a = b
    if (a >= to) break
  }
  return name
}

/** ∫ −rise′ w, ∫ −n rise′ w and ∫ −∂rise/∂r w between two distances, w = h0 + h1 n. */
function addCurve(r: number, { h0, h1 }: Sheaf, a: number, b: number, sums: Float64Array): void {
  const atA = coveRise(a, r)
  const atB = coveRise(b, r)
  riseIntegrals(a, b, r, rise)
  sums[LEAN]! += atA * (h0 + h1 * a) - atB * (h0 + h1 * b) + h1 * rise.zeroth
  sums[UNSCALED]! += atA * a * (h0 + h1 * a) - atB * b * (h0 + h1 * b) + h0 * rise.zeroth + 2 * h1 * rise.first
  // ∂rise/∂r = 1 − n/√(r² − u²), u = r − n; ∫ n/√ and ∫ n²/√ in closed form.
  const ua = r - a
  const ub = r - b
  const wa = Math.sqrt(Math.max(0, (r - ua) * (r + ua)))
  const wb = Math.sqrt(Math.max(0, (r - ub) * (r + ub)))
  const angle = Math.asin(Math.min(1, ua / r)) - Math.asin(Math.min(1, ub / r))
  const first = r * angle + wa - wb
  const second = r * r * angle + 2 * r * (wa - wb) + (r * r * angle - (ua * wa - ub * wb)) / 2
  sums[BY_WALL]! -= areaOf({ h0, h1 }, a, b) - (h0 * first + h1 * second)
}
