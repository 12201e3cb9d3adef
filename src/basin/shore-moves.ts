import { type ArcCurve, type Curve, evaluate, newJet } from './curve.ts'
import { Memory } from './memory.ts'
import type { Partition } from './partition-types.ts'
import { NEARLY, ROUND_RAD } from './tolerance.ts'

/** Numbers that a curve hangs on: its first point, its handles, its last point, its bulge. */
export const SLOTS = 9
export const [FIRST, HANDLE_1, HANDLE_2, LAST, BULGE] = [0, 2, 4, 6, 8] as const

/** Numbers of the curves of outline and islands, in the order of their rings. */
export interface ShoreCurves {
  readonly of: ReadonlyMap<Curve, number>
  /** First number of each ring, and the count of all at the end. */
  readonly first: readonly number[]
}

const known = new Memory<Partition, ShoreCurves>()

/** The curves that shores lie on, numbered. Remembered for each partition. */
export function shoreCurvesOf(p: Partition): ShoreCurves {
  let curves = known.get(p)
  if (!curves) {
    const of = new Map<Curve, number>()
    const first = [0]
    for (let ring = 0; ring <= p.shape.islands.length; ring++) {
      for (const curve of p.rings[ring]!.curves) of.set(curve, of.size)
      first.push(of.size)
    }
    curves = { of, first }
    known.set(p, curves)
  }
  return curves
}

const jet = newJet()

/**
 * Adds what a force on the point at t does by each of the curve's numbers: (fx, fy)·∂P/∂number.
 * Equation: a line's point moves by (1 − t) and t of its ends' moves, a cubic's by the Bernstein weights of its four; an
 *   arc keeps its bulge, so as complex numbers P = P₀ + z (P₁ − P₀) and z stays; by the bulge it moves as `bulgeMove` tells.
 */
export function addForce(curve: Curve, t: number, fx: number, fy: number, out: Float64Array, at: number): void {
  if (curve.kind === 'line') {
    out[at + FIRST]! += (1 - t) * fx
    out[at + FIRST + 1]! += (1 - t) * fy
    out[at + LAST]! += t * fx
    out[at + LAST + 1]! += t * fy
    return
  }
  if (curve.kind === 'cubic') {
    const u = 1 - t
    const b0 = u * u * u
    const b1 = 3 * u * u * t
    const b2 = 3 * u * t * t
    const b3 = t * t * t
    out[at]! += b0 * fx
    out[at + 1]! += b0 * fy
    out[at + HANDLE_1]! += b1 * fx
    out[at + HANDLE_1 + 1]! += b1 * fy
    out[at + HANDLE_2]! += b2 * fx
    out[at + HANDLE_2 + 1]! += b2 * fy
    out[at + LAST]! += b3 * fx
    out[at + LAST + 1]! += b3 * fy
    return
  }
  evaluate(curve, t, jet)
  const cx = curve.x1 - curve.x0
  const cy = curve.y1 - curve.y0
  const px = jet.x - curve.x0
  const py = jet.y - curve.y0
  const square = cx * cx + cy * cy
  const re = (px * cx + py * cy) / square
  const im = (py * cx - px * cy) / square
  out[at + LAST]! += fx * re + fy * im
  out[at + LAST + 1]! += fy * re - fx * im
  out[at + FIRST]! += fx * (1 - re) - fy * im
  out[at + FIRST + 1]! += fy * (1 - re) + fx * im
  const [mx, my] = bulgeMove(curve, t)
  out[at + BULGE]! += fx * mx + fy * my
}

const heading = { x: 0, y: 0 }

/**
 * Adds what a moment about the point at t does by each of the curve's numbers, turning its direction there: m ∂τ/∂number.
 * Returns that direction, of length 1.
 * Equation: δτ = J P′·δP′ / |P′|²; an arc's is that of its chord and (2t − 1) θ/2. Where a handle lies on its end P′ is none
 *   there, and the next point tells.
 */
export function addTurn(curve: Curve, t: number, m: number, out: Float64Array, at: number): { x: number; y: number } {
  const cx = curve.x1 - curve.x0
  const cy = curve.y1 - curve.y0
  if (curve.kind === 'arc') {
    turnBy(cx, cy, m, out, at + FIRST, at + LAST)
    const bulge = Math.tan(curve.turn / 4)
    out[at + BULGE]! += (m * (2 * t - 1) * 2) / (1 + bulge * bulge)
    heading.x = Math.cos(curve.heading + curve.turn * t)
    heading.y = Math.sin(curve.heading + curve.turn * t)
    return heading
  }
  if (curve.kind === 'line') {
    turnBy(cx, cy, m, out, at + FIRST, at + LAST)
    return heading
  }
  // A foot at an end but for rounding is there.
  if (t > NEARLY && t < 1 - NEARLY) {
    evaluate(curve, t, jet)
    const { dx, dy } = jet
    const square = dx * dx + dy * dy
    const u = 1 - t
    const weights = [-3 * u * u, 3 * u * (u - 2 * t), 3 * t * (2 * u - t), 3 * t * t]
    for (let k = 0; k < 4; k++) {
      out[at + 2 * k]! -= (weights[k]! * m * dy) / square
      out[at + 2 * k + 1]! += (weights[k]! * m * dx) / square
    }
    heading.x = dx / Math.sqrt(square)
    heading.y = dy / Math.sqrt(square)
    return heading
  }
  const xs = [curve.x0, curve.ax, curve.bx, curve.x1]
  const ys = [curve.y0, curve.ay, curve.by, curve.y1]
  const isFirst = t < 0.5
  const end = isFirst ? 0 : 3
  const step = isFirst ? 1 : -1
  let k = end + step
  while (k !== 3 - end && xs[k] === xs[end] && ys[k] === ys[end]) k += step
  const [a, b] = step > 0 ? [end, k] : [k, end]
  turnBy(xs[b]! - xs[a]!, ys[b]! - ys[a]!, m, out, at + 2 * a, at + 2 * b)
  return heading
}

/** The direction of a chord from one place to another, and what turning it does by both. */
function turnBy(cx: number, cy: number, m: number, out: Float64Array, from: number, to: number): void {
  const square = cx * cx + cy * cy
  const fx = (-m * cy) / square
  const fy = (m * cx) / square
  out[from]! -= fx
  out[from + 1]! -= fy
  out[to]! += fx
  out[to + 1]! += fy
  heading.x = cx / Math.sqrt(square)
  heading.y = cy / Math.sqrt(square)
}

/**
 * Move of an arc's point at t for each unit of its bulge b = tan(θ/4) [m].
 * Equation: P = P₀ + c e^{i(χ − (1 − t)B)} sin(tB)/sin B, B = θ/2, c and χ length and direction of the chord; so
 *   ∂P/∂B = c e^{i(χ − (1 − t)B)} [½ (1 − t²) B (S((1 − t)B) − S((1 + t)B)) / sin²B + i (t − 1) sin(tB)/sin B], S(x) = sin x / x,
 *   and dB/db = 2/(1 + b²).
 * Accuracy: rounding; the difference of two S by its series where the arc is flat.
 */
function bulgeMove(curve: ArcCurve, t: number): [number, number] {
  const B = curve.turn / 2
  const bulge = Math.tan(B / 2)
  const sin = Math.sin(B)
  const chord = Math.hypot(curve.x1 - curve.x0, curve.y1 - curve.y0)
  const a = (1 - t) * B
  const b = (1 + t) * B
  const difference =
    Math.abs(B) < ROUND_RAD
      ? (b * b - a * a) / 6 - (b ** 4 - a ** 4) / 120 + (b ** 6 - a ** 6) / 5040
      : sinc(a) - sinc(b)
  const along = (0.5 * (1 - t * t) * B * difference) / (sin * sin)
  const across = ((t - 1) * Math.sin(t * B)) / sin
  const turn = curve.heading + B - (1 - t) * B
  const scale = (chord * 2) / (1 + bulge * bulge)
  const cos = Math.cos(turn)
  const sine = Math.sin(turn)
  return [scale * (along * cos - across * sine), scale * (along * sine + across * cos)]
}

function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(x) / x
}
