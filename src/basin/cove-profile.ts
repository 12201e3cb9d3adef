import { NEARLY } from './tolerance.ts'

/**
 * The cove's rise over a floor, and integrals of it across the strip. u = r − n.
 * Equation: rise(n) = r − √(r² − u²); ∫rise dn = [r n + S(u)], S = ½(u √(r² − u²) + r² asin(u/r));
 *   ∫n rise dn = r ∫rise dn − [½ r u² + ⅓ (r² − u²)^{3/2}] over falling u.
 * Accuracy: rounding of r² and r³.
 */
export interface RiseIntegrals {
  zeroth: number
  first: number
}

/** ∫rise dn and ∫n rise dn between two distances from the wall, both at most r. */
export function riseIntegrals(from: number, to: number, r: number, out: RiseIntegrals): RiseIntegrals {
  const ua = r - from
  const ub = r - to
  const zeroth = r * (to - from) - (sector(ua, r) - sector(ub, r))
  const moment = (r * (ua * ua - ub * ub)) / 2 + (cubed(ua, r) - cubed(ub, r)) / 3
  out.zeroth = zeroth
  out.first = r * zeroth - moment
  return out
}

function sector(u: number, r: number): number {
  return 0.5 * (u * Math.sqrt(Math.max(0, (r - u) * (r + u))) + r * r * Math.asin(Math.min(1, u / r)))
}

function cubed(u: number, r: number): number {
  const w = Math.max(0, (r - u) * (r + u))
  return w * Math.sqrt(w)
}

/** Distances within (0, r) where rise(n) = a + b n, ascending; they are the roots of a quadratic in u. */
export function riseMeets(a: number, b: number, r: number, out: number[]): void {
  // √(r² − u²) = A + b u with A = r − a − b r.
  const A = r - a - b * r
  const q = 1 + b * b
  const disc = r * r * q - A * A
  if (!(disc >= 0)) return
  const root = Math.sqrt(disc)
  for (let s = 1; s >= -1; s -= 2) {
    const u = (-A * b + s * root) / q
    if (u > 0 && u < r && A + b * u >= -NEARLY * r) out.push(r - u)
    if (root === 0) return
  }
}

/** Rise of a cove of radius r at distance n from the wall [m]; a place that lies behind it by rounding is at it. */
export function coveRise(n: number, r: number): number {
  if (n >= r) return 0
  if (n <= 0) return r
  // r − √(r² − (r − n)²) without the loss of digits near n = r.
  const q = (r - n) / r
  return (r * q * q) / (1 + Math.sqrt((1 - q) * (1 + q)))
}

/** Fall of a cove's surface along n, −rise′. */
export function coveLean(n: number, r: number): number {
  if (n >= r) return 0
  if (n <= 0) return Infinity
  // By n itself: r − n is r where n is less than its rounding, and the lean is not yet endless there.
  const q = (r - n) / r
  return q / Math.sqrt((n / r) * (1 + q))
}

/** ∂rise/∂r = 1 − n/√(r² − (r − n)²), a place being so far from the wall. */
export function riseByRadius(n: number, r: number): number {
  if (n >= r) return 0
  return 1 - Math.sqrt(Math.max(0, n) / (2 * r - n))
}
