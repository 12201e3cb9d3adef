import { coveLean, coveRise, type RiseIntegrals, riseIntegrals, riseMeets } from './cove-profile.ts'
import { ellipticE } from './elliptic.ts'
import { gaussRule } from './gauss.ts'
import { mark } from './pattern-integral.ts'
import { footSlack, NEARLY, ROUNDING } from './tolerance.ts'
import { AREA, AREA_X, AREA_Y, FEATURE, FLOOR, type RayFrame, type RaySpan, SHORE, VOLUME } from './wall-kind.ts'

const START = 3
const ALL_AS_WAS = mark(START, 0)
const ALL_ON_CURVE = mark(START, 7)
const breaks: number[] = []
const rise: RiseIntegrals = { zeroth: 0, first: 0 }
const steep: RiseIntegrals = { zeroth: 0, first: 0 }

/**
 * What the cove changes along one stretch of a ray.
 * Equation: depth before d₀ = ruling, after d = min(feature, max(f − rise, min(f, 0))), both linear but for rise;
 *   each term times h0 + h1 n. Wetted: √(1 + |g|² − 2 rise′ g·N + rise′²) (h0 + h1 n) dn with n = r(1 − cos p).
 * Accuracy: volume and surface rounding (closed form between exact break points); wetted 2e-9 (Gauss in p), rounding where steep.
 */
export function addCoveSpan(
  r: number,
  ray: RayFrame,
  span: RaySpan,
  levelM: number,
  sums: Float64Array | undefined,
): number {
  const { from, to, f0, f1, k0, k1, isFeature } = span
  if (!(to > from)) return 0
  // Most stretches lie wholly on the cove or wholly off it, and wet.
  const high = coveRise(from, r)
  const low = Math.min(f0 + f1 * from, f0 + f1 * to)
  if (isFeature) {
    if (Math.max(k0 + k1 * from - f0 - f1 * from, k0 + k1 * to - f0 - f1 * to) + high <= 0) return ALL_AS_WAS
  } else if (low - high > 0 && low - high + levelM > 0) {
    if (sums) {
      addWet(r, ray, from, to, levelM, 1, span, sums)
      addWetted(r, ray, span, from, to, 1, true, true, sums)
    }
    return ALL_ON_CURVE
  }
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
  sortFew(breaks)
  const isAtFoot = f0 - r + levelM >= -footSlack(r)
  let name = START
  let code = -1
  let a = from
  let wasWet = -1
  for (let i = 0; i <= breaks.length; i++) {
    const b = i === breaks.length ? to : Math.min(breaks[i]!, to)
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
    // Stretches are told apart only by what is summed over them, and where rounding doesn't decide whether they are there.
    const next = kind === 0 ? 0 : 4 * kind + (wetBefore ? 2 : 0) + (wetAfter ? 1 : 0)
    if (next !== code && b - a > NEARLY * r) {
      name = mark(name, next)
      code = next
    }
    if (sums && kind > 0) {
      if (wetAfter) addWet(r, ray, a, b, levelM, kind, span, sums)
      else if (wetBefore) addDry(ray, a, b, k0 + levelM, k1, sums)
      addWetted(r, ray, span, a, b, kind, wetBefore, wetAfter, sums)
    }
    // A shore on the cove: the water ends between two pieces, one of which the cove makes. At its foot the shore counts (footSlack).
    if (sums && wasWet >= 0 && (wasWet === 1) !== wetAfter && a > 0 && !(a <= NEARLY * r && isAtFoot))
      addShore(r, ray, a, span, levelM, sums)
    wasWet = wetAfter ? 1 : 0
    a = b
    if (a >= to) break
  }
  return name
}

/** Puts a few numbers in order, in place. */
function sortFew(list: number[]): void {
  for (let i = 1; i < list.length; i++) {
    const value = list[i]!
    let k = i
    for (; k > 0 && list[k - 1]! > value; k--) list[k] = list[k - 1]!
    list[k] = value
  }
}

function zero(c: number, slope: number, out: number[]): void {
  if (slope === 0) return
  const n = -c / slope
  if (n > 0) out.push(n)
}

/** Water less deep than before: by the rise and what stood above the floor, or down to the datum. */
function addWet(
  r: number,
  ray: RayFrame,
  a: number,
  b: number,
  levelM: number,
  kind: number,
  span: RaySpan,
  sums: Float64Array,
): void {
  const { h0, h1 } = ray
  if (kind === 1) {
    riseIntegrals(a, b, r, rise)
    sums[VOLUME]! -= h0 * rise.zeroth + h1 * rise.first
    if (!span.isFeature) return
  }
  const d1 = b - a
  const d2 = (b * b - a * a) / 2
  const d3 = (b * b * b - a * a * a) / 3
  const area = h0 * d1 + h1 * d2
  const lever = h0 * d2 + h1 * d3
  if (kind === 1) sums[VOLUME]! += (span.f0 - span.k0) * area + (span.f1 - span.k1) * lever
  else sums[VOLUME]! += levelM * area - ((span.k0 + levelM) * area + span.k1 * lever)
}

/** Water that there is no longer. */
function addDry(ray: RayFrame, a: number, b: number, k0: number, k1: number, sums: Float64Array): void {
  const { h0, h1 } = ray
  const d1 = b - a
  const d2 = (b * b - a * a) / 2
  const d3 = (b * b * b - a * a * a) / 3
  const area = h0 * d1 + h1 * d2
  const lever = h0 * d2 + h1 * d3
  sums[VOLUME]! -= k0 * area + k1 * lever
  sums[AREA]! -= area
  sums[AREA_X]! -= ray.x * area + ray.nx * lever
  sums[AREA_Y]! -= ray.y * area + ray.ny * lever
}

function addWetted(
  r: number,
  ray: RayFrame,
  span: RaySpan,
  a: number,
  b: number,
  kind: number,
  wetBefore: boolean,
  wetAfter: boolean,
  sums: Float64Array,
): void {
  const plan = ray.h0 * (b - a) + (ray.h1 * (b * b - a * a)) / 2
  if (wetBefore) {
    const before = plan * Math.sqrt(1 + span.k1 * span.k1 + span.kAcross * span.kAcross)
    sums[span.isFeature ? FEATURE : FLOOR]! -= before
  }
  if (!wetAfter) return
  if (kind === 2) {
    sums[FLOOR]! += plan
    return
  }
  const { zeroth, first } = steepness(r, a, b, span.f1, span.fAcross)
  sums[FLOOR]! += ray.h0 * zeroth + ray.h1 * first
}

/** Gauss's points for floors up to a slope, given as 1 + slope², with sines and cosines for all of a quarter circle. */
function ruleBelow(below: number, points: number) {
  const { at, weight } = gaussRule(points)
  const angles = at.map((q) => (q * Math.PI) / 2)
  return { below, at, weight, sin: angles.map(Math.sin), cos: angles.map(Math.cos) }
}

/** The integrand's own singularities keep away from gentle floors: fewer points do. */
const GENTLEST = ruleBelow(1.03, 7)
const GENTLE = ruleBelow(1.2, 10)
const STEEP = 2
const SLOPING = ruleBelow(STEEP, 16)
const last = { r: 0, a: 0, b: 0, along: 0, across: 0 }

/** ∫ of the cove's steepness dn and n dn; straight walls ask for the same again and again. */
function steepness(r: number, a: number, b: number, along: number, across: number): RiseIntegrals {
  if (last.r === r && last.a === a && last.b === b && last.along === along && last.across === across) return steep
  last.r = r
  last.a = a
  last.b = b
  last.along = along
  last.across = across
  const pa = a === 0 ? 0 : Math.acos(Math.min(1, Math.max(-1, 1 - a / r)))
  const pb = b >= r ? Math.PI / 2 : Math.acos(Math.min(1, Math.max(-1, 1 - b / r)))
  if (along === 0 && across === 0) {
    // A level floor: the quarter circle itself.
    steep.zeroth = r * (pb - pa)
    steep.first = r * r * (pb - pa - (Math.sin(pb) - Math.sin(pa)))
    return steep
  }
  const g2 = 1 + along * along + across * across
  if (g2 >= STEEP) return onSteepFloor(r, pa, pb, along, across, g2)
  const { at, weight, sin: sines, cos: cosines } = g2 < GENTLEST.below ? GENTLEST : g2 < GENTLE.below ? GENTLE : SLOPING
  const isWhole = a === 0 && b >= r
  let zeroth = 0
  let first = 0
  for (let i = 0; i < at.length; i++) {
    const p = pa + (pb - pa) * at[i]!
    const sin = isWhole ? sines[i]! : Math.sin(p)
    const cos = isWhole ? cosines[i]! : Math.cos(p)
    const w = weight[i]! * Math.sqrt(Math.max(0, g2 * sin * sin + 2 * along * sin * cos + cos * cos))
    zeroth += w
    first += w * (1 - cos)
  }
  steep.zeroth = zeroth * r * (pb - pa)
  steep.first = first * r * r * (pb - pa)
  return steep
}

/**
 * The same where the floor slopes by more than 1, in closed form.
 * Equation: √(g² sin² p + 2 along sin p cos p + cos² p) = √(λ₂ + (λ₁ − λ₂) sin² q), q = p − p₀ from where it is least; over q an
 *   elliptic integral of the second kind; times cos p = cos q cos p₀ − sin q sin p₀ elementary.
 */
function onSteepFloor(r: number, pa: number, pb: number, along: number, across: number, g2: number): RiseIntegrals {
  const most = (g2 + 1 + Math.hypot(g2 - 1, 2 * along)) / 2
  const least = (1 + across * across) / most
  const apart = most - least
  const p0 = Math.atan2(-2 * along, g2 - 1) / 2
  const qa = pa - p0
  const qb = pb - p0
  const m = apart / most
  const quarter = Math.PI / 2
  const whole = Math.sqrt(most) * (ellipticE(qb + quarter, m) - ellipticE(qa + quarter, m))
  const withCosine = rising(least, apart, Math.sin(qb)) - rising(least, apart, Math.sin(qa))
  const withSine = falling(most, apart, Math.cos(qa)) - falling(most, apart, Math.cos(qb))
  steep.zeroth = r * whole
  steep.first = r * r * (whole - Math.cos(p0) * withCosine + Math.sin(p0) * withSine)
  return steep
}

/** ∫ √(a + b s²) ds. */
function rising(a: number, b: number, s: number): number {
  return (s * Math.sqrt(a + b * s * s) + (a / Math.sqrt(b)) * Math.asinh(s * Math.sqrt(b / a))) / 2
}

/** ∫ √(a − b c²) dc, b c² at most a but for rounding. */
function falling(a: number, b: number, c: number): number {
  const sine = Math.min(1, Math.max(-1, c * Math.sqrt(b / a)))
  return (c * Math.sqrt(Math.max(0, a - b * c * c)) + (a / Math.sqrt(b)) * Math.asin(sine)) / 2
}

/** Length of shore for each unit of t where f + level = rise(n): the line's own slope against the rays. */
function addShore(r: number, ray: RayFrame, n: number, span: RaySpan, levelM: number, sums: Float64Array): void {
  const off = Math.abs(span.f0 + span.f1 * n + levelM - coveRise(n, r))
  const lean = coveLean(Math.max(n, 1e-290), r)
  // The water ends here for another reason (the cove's level top, a feature's edge): the edges count that. The rise is as good as n.
  if (off > NEARLY * r + 4 * ROUNDING * r * lean || n <= 2 * ROUNDING * r) return
  const across = span.f1 + lean
  if (across === 0) return
  sums[SHORE]! += (ray.h0 + ray.h1 * n) * Math.hypot(1, span.fAcross / across)
}
