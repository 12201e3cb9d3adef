import type { Vec } from './fit-run.ts'
import { cubicAt } from './polynomial.ts'

/** A smooth curve by its points and its directions of travel, for t that rises or falls. */
export interface Tracing {
  readonly pointAt: (t: number) => Vec
  readonly headingAt: (t: number) => Vec
}

export interface CurveFit {
  /** Cubics that follow each other; the first starts at the point of t0. */
  readonly pieces: readonly { readonly to: Vec; readonly c1: Vec; readonly c2: Vec }[]
  /** How far they are found to be off [m]. */
  readonly offM: number
}

const SAMPLES = 9
const MOST_HALVINGS = 7

/**
 * Cubics along a smooth curve from t0 to t1 that share its points and tangents at their ends, halved until they are near.
 * Method: Gauss–Newton on the two handles' lengths, the residuals being the fit's distances from the curve along the
 *   normals of 9 places; the distance falls with the sixth power of a piece's length.
 * Accuracy: `offM`, the greatest of those distances and half as much again; at most the tolerance unless seven halvings
 *   don't reach it.
 */
export function fitCurve(curve: Tracing, t0: number, t1: number, toleranceM: number, depth = 0): CurveFit {
  const from = curve.pointAt(t0)
  const to = curve.pointAt(t1)
  const { c1, c2, offM } = fitOne(curve, t0, t1, from, to)
  if (offM <= toleranceM || depth >= MOST_HALVINGS) return { pieces: [{ to, c1, c2 }], offM }
  const middle = (t0 + t1) / 2
  const first = fitCurve(curve, t0, middle, toleranceM, depth + 1)
  const second = fitCurve(curve, middle, t1, toleranceM, depth + 1)
  return { pieces: [...first.pieces, ...second.pieces], offM: Math.max(first.offM, second.offM) }
}

function fitOne(curve: Tracing, t0: number, t1: number, from: Vec, to: Vec): { c1: Vec; c2: Vec; offM: number } {
  const first = curve.headingAt(t0)
  const last = curve.headingAt(t1)
  const places = Array.from({ length: SAMPLES }, (_, i) => {
    const t = t0 + ((t1 - t0) * (i + 1)) / (SAMPLES + 1)
    return { point: curve.pointAt(t), heading: curve.headingAt(t), u: (i + 1) / (SAMPLES + 1) }
  })
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1])
  let a = chord / 3
  let b = chord / 3
  let best = { a, b, off: Infinity }
  for (let round = 0; round < 8; round++) {
    const c1: Vec = [from[0] + a * first[0], from[1] + a * first[1]]
    const c2: Vec = [to[0] - b * last[0], to[1] - b * last[1]]
    let off = 0
    let [saa, sab, sbb, ra, rb] = [0, 0, 0, 0, 0]
    for (const place of places) {
      const { point, heading } = place
      place.u = footOf(from, c1, c2, to, point, heading, place.u)
      const u = place.u
      const [x, y] = bezierAt(from, c1, c2, to, u)
      const r = (y - point[1]) * heading[0] - (x - point[0]) * heading[1]
      off = Math.max(off, Math.abs(r), missOf(x, y, point, heading))
      const ja = 3 * (1 - u) * (1 - u) * u * (first[1] * heading[0] - first[0] * heading[1])
      const jb = -3 * (1 - u) * u * u * (last[1] * heading[0] - last[0] * heading[1])
      saa += ja * ja
      sab += ja * jb
      sbb += jb * jb
      ra += ja * r
      rb += jb * r
    }
    if (off < best.off) best = { a, b, off }
    const det = saa * sbb - sab * sab
    if (!(det > 0)) break
    a -= (ra * sbb - rb * sab) / det
    b -= (rb * saa - ra * sab) / det
    // Handles that vanish or run away belong to no near fit.
    if (!(a > chord / 64 && a < 4 * chord && b > chord / 64 && b < 4 * chord)) break
    if (round > 2 && off > best.off * 0.9) break
  }
  return {
    c1: [from[0] + best.a * first[0], from[1] + best.a * first[1]],
    c2: [to[0] - best.b * last[0], to[1] - best.b * last[1]],
    offM: 1.5 * best.off,
  }
}

/** How far a point lies from a place's normal. */
function missOf(x: number, y: number, point: Vec, heading: Vec): number {
  return Math.abs((x - point[0]) * heading[0] + (y - point[1]) * heading[1])
}

/** Parameter at which the cubic crosses the normal of a place, by Newton from near it. */
function footOf(p: Vec, q: Vec, r: Vec, s: Vec, point: Vec, heading: Vec, near: number): number {
  // Along the heading the cubic is a polynomial of one variable.
  const along = (v: Vec): number => (v[0] - point[0]) * heading[0] + (v[1] - point[1]) * heading[1]
  const b0 = along(p)
  const b1 = along(q)
  const b2 = along(r)
  const b3 = along(s)
  let u = near
  for (let i = 0; i < 12; i++) {
    const v = 1 - u
    const value = v * v * (v * b0 + 3 * u * b1) + u * u * (3 * v * b2 + u * b3)
    const slope = 3 * (v * v * (b1 - b0) + 2 * u * v * (b2 - b1) + u * u * (b3 - b2))
    const next = Math.min(1, Math.max(0, u - value / slope))
    if (!Number.isFinite(next) || Math.abs(next - u) < 1e-15) break
    u = next
  }
  return u
}

function bezierAt(p: Vec, q: Vec, r: Vec, s: Vec, u: number): Vec {
  return [cubicAt(p[0], q[0], r[0], s[0], u), cubicAt(p[1], q[1], r[1], s[1], u)]
}
