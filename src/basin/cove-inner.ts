import { coveRise } from './cove-depth.ts'
import type { Ray } from './cove-fan.ts'
import { type RiseIntegrals, riseIntegrals, riseMeets } from './cove-profile.ts'
import { gaussRule } from './gauss.ts'
import { mark } from './pattern-integral.ts'
import { NEARLY, ROUNDING } from './tolerance.ts'
import type { Plane } from './types.ts'

/**
 * What the cove changes: volume and water surface that it takes and the surface's moments; wetted areas of floor and of
 * feature as counted without the cove and as they are with it; shore that lies on the cove.
 */
export const COVE_SUMS = [
  'volume',
  'area',
  'areaX',
  'areaY',
  'floorBefore',
  'floorAfter',
  'featureBefore',
  'shore',
] as const

const [VOLUME, AREA, AREA_X, AREA_Y, FLOOR_BEFORE, FLOOR_AFTER, FEATURE_BEFORE, SHORE] = [
  0, 1, 2, 3, 4, 5, 6, 7,
] as const

/** One stretch of a ray: floor below, what rules before the cove, and whether that is a feature. */
export interface RayPiece {
  from: number
  to: number
  floor: Plane
  ruling: Plane
  isFeature: boolean
}

const breaks: number[] = []
const GAUSS_P = gaussRule(16)
const rise: RiseIntegrals = { zeroth: 0, first: 0 }

/**
 * Adds what the cove changes along one stretch of a ray, and returns a number for the pattern of its pieces: where the
 * pattern stays the same along the shore, the sums are smooth there.
 * Equation: depth before d₀ = ruling, after d = min(feature, max(f − rise, min(f, 0))), both linear but for rise;
 *   each term times h0 + h1 n. Wetted: √(1 + |g|² − 2 rise′ g·N + rise′²) (h0 + h1 n) dn with n = r(1 − cos p).
 * Accuracy: volume and surface rounding (closed form between exact break points); wetted 1e-12 (16-point Gauss in p).
 */
export function addCovePiece(
  ray: Ray,
  piece: RayPiece,
  r: number,
  levelM: number,
  wetted: boolean,
  sums: Float64Array | undefined,
): number {
  const { floor, ruling, isFeature } = piece
  const f0 = floor.atOrigin + floor.dx * ray.x + floor.dy * ray.y
  const f1 = floor.dx * ray.nx + floor.dy * ray.ny
  const k0 = isFeature ? ruling.atOrigin + ruling.dx * ray.x + ruling.dy * ray.y : f0
  const k1 = isFeature ? ruling.dx * ray.nx + ruling.dy * ray.ny : f1
  breaks.length = 0
  zero(f0, f1, breaks)
  zero(f0 + levelM, f1, breaks)
  riseMeets(f0, f1, r, breaks)
  riseMeets(f0 + levelM, f1, r, breaks)
  if (isFeature) {
    zero(k0, k1, breaks)
    zero(k0 + levelM, k1, breaks)
    riseMeets(f0 - k0, f1 - k1, r, breaks)
  }
  if (breaks.length > 1) breaks.sort(ascending)
  let name = 0
  let a = piece.from
  let wasWet = -1
  for (let i = 0; i <= breaks.length; i++) {
    const b = i === breaks.length ? piece.to : Math.min(breaks[i]!, piece.to)
    if (!(b > a)) continue
    const middle = (a + b) / 2
    const f = f0 + f1 * middle
    const k = k0 + k1 * middle
    const lifted = f - coveRise(middle, r)
    const coved = f > 0 ? Math.max(lifted, 0) : f
    // 0: as it was, 1: on the cove's curve, 2: on its level top at the datum.
    const kind = isFeature && k <= coved ? 0 : f <= 0 ? 0 : lifted > 0 ? 1 : 2
    const depth = kind === 0 ? k : coved
    const wetBefore = k + levelM > 0
    const wetAfter = depth + levelM > 0
    name = mark(name, 4 * kind + (wetBefore ? 2 : 0) + (wetAfter ? 1 : 0))
    if (sums && kind > 0) {
      addDeficit(ray, a, b, k0 + levelM, k1, f0 + levelM, f1, r, levelM, kind, wetBefore, wetAfter, sums)
      if (wetted) addWetted(ray, a, b, floor, ruling, isFeature, r, kind, wetBefore, wetAfter, sums)
    }
    // A shore on the cove: the water ends between two pieces, one of which the cove makes.
    if (sums && wetted && wasWet >= 0 && (wasWet === 1) !== wetAfter && a > 0)
      addShore(ray, a, floor, r, levelM, f0, f1, sums)
    wasWet = wetAfter ? 1 : 0
    a = b
    if (a >= piece.to) break
  }
  return name
}

function ascending(a: number, b: number): number {
  return a - b
}

function zero(c: number, slope: number, out: number[]): void {
  if (slope === 0) return
  const n = -c / slope
  if (n > 0) out.push(n)
}

/** ∫(c0 + c1 n)(h0 + h1 n) dn and its use as area; exact. */
function addDeficit(
  ray: Ray,
  a: number,
  b: number,
  k0: number,
  k1: number,
  s0: number,
  s1: number,
  r: number,
  levelM: number,
  kind: number,
  wetBefore: boolean,
  wetAfter: boolean,
  sums: Float64Array,
): void {
  if (!wetBefore) return
  const { h0, h1 } = ray
  const d1 = b - a
  const d2 = (b * b - a * a) / 2
  const d3 = (b * b * b - a * a * a) / 3
  const linear = (c0: number, c1: number): number => c0 * (h0 * d1 + h1 * d2) + c1 * (h0 * d2 + h1 * d3)
  sums[VOLUME]! += linear(k0, k1)
  if (!wetAfter) {
    const area = h0 * d1 + h1 * d2
    const lever = h0 * d2 + h1 * d3
    sums[AREA]! += area
    sums[AREA_X]! += ray.x * area + ray.nx * lever
    sums[AREA_Y]! += ray.y * area + ray.ny * lever
    return
  }
  if (kind === 2) sums[VOLUME]! -= levelM * (h0 * d1 + h1 * d2)
  else {
    riseIntegrals(a, b, r, rise)
    sums[VOLUME]! -= linear(s0, s1) - (h0 * rise.zeroth + h1 * rise.first)
  }
}

function addWetted(
  ray: Ray,
  a: number,
  b: number,
  floor: Plane,
  ruling: Plane,
  isFeature: boolean,
  r: number,
  kind: number,
  wetBefore: boolean,
  wetAfter: boolean,
  sums: Float64Array,
): void {
  const plan = ray.h0 * (b - a) + (ray.h1 * (b * b - a * a)) / 2
  if (wetBefore) {
    const before = plan * Math.hypot(1, ruling.dx, ruling.dy)
    if (isFeature) sums[FEATURE_BEFORE]! += before
    else sums[FLOOR_BEFORE]! += before
  }
  if (!wetAfter) return
  if (kind === 2) {
    sums[FLOOR_AFTER]! += plan
    return
  }
  const pa = Math.acos(Math.min(1, Math.max(-1, 1 - a / r)))
  const pb = Math.acos(Math.min(1, Math.max(-1, 1 - b / r)))
  const g2 = 1 + floor.dx * floor.dx + floor.dy * floor.dy
  const gn = floor.dx * ray.nx + floor.dy * ray.ny
  let sum = 0
  for (let i = 0; i < GAUSS_P.at.length; i++) {
    const p = pa + (pb - pa) * GAUSS_P.at[i]!
    const sin = Math.sin(p)
    const cos = Math.cos(p)
    const steep = Math.sqrt(Math.max(0, g2 * sin * sin + 2 * gn * sin * cos + cos * cos))
    sum += GAUSS_P.weight[i]! * steep * (ray.h0 + ray.h1 * r * (1 - cos))
  }
  sums[FLOOR_AFTER]! += sum * r * (pb - pa)
}

/** Length of shore for each unit of t where f + level = rise(n): the line's own slope against the rays. */
function addShore(
  ray: Ray,
  n: number,
  floor: Plane,
  r: number,
  levelM: number,
  f0: number,
  f1: number,
  sums: Float64Array,
): void {
  const width = ray.h0 + ray.h1 * n
  const off = Math.abs(f0 + f1 * n + levelM - coveRise(n, r))
  // The water ends here for another reason (the cove's level top, a feature's edge): the edges count that.
  if (off > NEARLY * r || n <= 2 * ROUNDING * r) return
  const q = (r - n) / r
  const rising = q / Math.sqrt(Math.max(1e-300, (1 - q) * (1 + q)))
  const across = f1 + rising
  const along = floor.dy * ray.nx - floor.dx * ray.ny
  if (across === 0) return
  sums[SHORE]! += width * Math.hypot(1, along / across)
}
