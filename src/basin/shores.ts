import { type Curve, evaluate, type Jet, newJet, secondX, secondY } from './curve.ts'
import { Memory } from './memory.ts'
import { norm } from './norm.ts'
import type { Partition } from './partition-types.ts'
import { HAIR, NEARLY, ROUNDING } from './tolerance.ts'

/** A stretch of outline or island with water on one side. */
export interface Shore {
  readonly edge: number
  readonly curve: Curve
  readonly t0: number
  readonly t1: number
  /** 1 where the water lies on the left, −1 where on the right. */
  readonly side: 1 | -1
  readonly cell: number
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
  /** A box along the chord: its middle, direction, half its length and half its width [m]. */
  readonly boxX: number
  readonly boxY: number
  readonly boxUx: number
  readonly boxUy: number
  readonly boxHalfLengthM: number
  readonly boxHalfWidthM: number
  /** Control points of the cubic that it is (x0, y0 … x3, y3) [m]; none of another kind. */
  readonly control: Float64Array | undefined
  /** A circle smaller than this clearly touches it in one place at most: half the radius of its bend, about [m]. */
  readonly clearM: number
}

const known = new Memory<Partition, readonly Shore[]>()

/** All stretches of shore, with their boxes. Remembered for each partition. */
export function shoresOf(p: Partition): readonly Shore[] {
  let shores = known.get(p)
  if (!shores) {
    shores = find(p)
    known.set(p, shores)
  }
  return shores
}

function find(p: Partition): Shore[] {
  const shores: Shore[] = []
  p.edges.forEach((edge, i) => {
    if (edge.left >= 0 && edge.right >= 0) return
    const xs = [p.nodeX[edge.from]!, p.nodeX[edge.to]!] as const
    const ys = [p.nodeY[edge.from]!, p.nodeY[edge.to]!] as const
    shores.push({
      edge: i,
      curve: edge.curve,
      t0: edge.t0,
      t1: edge.t1,
      side: edge.left >= 0 ? 1 : -1,
      cell: Math.max(edge.left, edge.right),
      minX: Math.min(...xs),
      minY: Math.min(...ys),
      maxX: Math.max(...xs),
      maxY: Math.max(...ys),
      ...boxAlong(edge.curve, edge.t0, edge.t1),
      control: edge.curve.kind === 'cubic' ? layControl(edge.curve, edge.t0, edge.t1, new Float64Array(8)) : undefined,
      clearM: clearOf(edge.curve, edge.t0, edge.t1),
    })
  })
  return shores
}

const a = newJet()
const b = newJet()

/** Control points of a stretch by Hermite's form: its handles are its ends' derivatives, a third of its share of t long. */
function layControl(curve: Curve, t0: number, t1: number, out: Float64Array): Float64Array {
  evaluate(curve, t0, a)
  evaluate(curve, t1, b)
  const third = (t1 - t0) / 3
  out[0] = a.x
  out[1] = a.y
  out[2] = a.x + third * a.dx
  out[3] = a.y + third * a.dy
  out[4] = b.x - third * b.dx
  out[5] = b.y - third * b.dy
  out[6] = b.x
  out[7] = b.y
  return out
}

const control = new Float64Array(8)

/** The box of a stretch along its chord, around its control points; an arc of a quarter turn at most fits under the same. */
function boxAlong(
  curve: Curve,
  t0: number,
  t1: number,
): Pick<Shore, 'boxX' | 'boxY' | 'boxUx' | 'boxUy' | 'boxHalfLengthM' | 'boxHalfWidthM'> {
  layControl(curve, t0, t1, control)
  const x = control[0]!
  const y = control[1]!
  const chordX = control[6]! - x
  const chordY = control[7]! - y
  const chordM = Math.hypot(chordX, chordY)
  const ux = chordM > 0 ? chordX / chordM : 1
  const uy = chordM > 0 ? chordY / chordM : 0
  const along1 = (control[2]! - x) * ux + (control[3]! - y) * uy
  const along2 = (control[4]! - x) * ux + (control[5]! - y) * uy
  const across1 = (control[3]! - y) * ux - (control[2]! - x) * uy
  const across2 = (control[5]! - y) * ux - (control[4]! - x) * uy
  const from = Math.min(0, along1, along2)
  const to = Math.max(chordM, along1, along2)
  const low = Math.min(0, across1, across2)
  const high = Math.max(0, across1, across2)
  const along = (from + to) / 2
  const across = (low + high) / 2
  return {
    boxX: x + along * ux - across * uy,
    boxY: y + along * uy + across * ux,
    boxUx: ux,
    boxUy: uy,
    boxHalfLengthM: (to - from) / 2,
    boxHalfWidthM: (high - low) / 2,
  }
}

/**
 * True where a stretch of a cubic clearly stays out of a circle; of other kinds it isn't told.
 * Equation: |Q − C|² ≥ R² where all seven of its coefficients in Bernstein's form are, for the curve of them stays above the least.
 * Symbols: Q a place of the stretch; C, R the circle's centre and radius.
 * Source: convex hull property of Bernstein's form; own derivation.
 */
export function staysOut({ control: q }: Shore, x: number, y: number, radiusM: number): boolean {
  if (!q) return false
  const ax = q[0]! - x
  const ay = q[1]! - y
  const bx = q[2]! - x
  const by = q[3]! - y
  const cx = q[4]! - x
  const cy = q[5]! - y
  const dx = q[6]! - x
  const dy = q[7]! - y
  const aa = ax * ax + ay * ay
  const bb = bx * bx + by * by
  const cc = cx * cx + cy * cy
  const dd = dx * dx + dy * dy
  // Rounding of the squares, and of the places that they are of.
  const least =
    radiusM * radiusM * (1 + NEARLY) +
    16 * ROUNDING * (Math.max(aa, bb, cc, dd) + radiusM * (Math.abs(x) + Math.abs(y) + radiusM))
  return (
    aa >= least &&
    dd >= least &&
    ax * bx + ay * by >= least &&
    cx * dx + cy * dy >= least &&
    3 * bb + 2 * (ax * cx + ay * cy) >= 5 * least &&
    3 * cc + 2 * (bx * dx + by * dy) >= 5 * least &&
    9 * (bx * cx + by * cy) + ax * dx + ay * dy >= 10 * least
  )
}

/** Places along a cubic at which its speed is looked at. */
const LOOKS = 8

/** Half the least speed squared over the greatest second derivative, which is linear along a cubic. */
function clearOf(curve: Curve, t0: number, t1: number): number {
  if (curve.kind === 'line') return Infinity
  if (curve.kind === 'arc') return Math.abs(curve.radius) / 2
  const bendAt = (t: number): number => norm(secondX(curve, t), secondY(curve, t))
  const most = Math.max(bendAt(t0), bendAt(t1))
  let least = Infinity
  for (let i = 0; i <= LOOKS; i++) {
    evaluate(curve, t0 + ((t1 - t0) * i) / LOOKS, a)
    least = Math.min(least, a.dx * a.dx + a.dy * a.dy)
  }
  return most > 0 ? least / (2 * most) : Infinity
}

/**
 * Moves a place of a shore a hair into the water. Where a floor comes up to the level right at the shore, what lies there
 * tells whether water stands at it.
 */
export function stepOff(jet: Jet, side: number, extentM: number): void {
  const hair = (side * HAIR * extentM) / norm(jet.dx, jet.dy)
  jet.x -= hair * jet.dy
  jet.y += hair * jet.dx
}

/** Squared distance from a place to a stretch's box, 0 within. */
export function boxDistance2(shore: Shore, x: number, y: number): number {
  const dx = Math.max(shore.minX - x, 0, x - shore.maxX)
  const dy = Math.max(shore.minY - y, 0, y - shore.maxY)
  return dx * dx + dy * dy
}
