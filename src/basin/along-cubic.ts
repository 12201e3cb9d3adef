import { type CubicCurve, evaluate, newJet, secondX, secondY } from './curve.ts'
import type { Vec } from './fit-run.ts'
import { HAIR } from './tolerance.ts'

const jet = newJet()

/** The point of t, from the start's frame. */
export function pointAt(curve: CubicCurve, t: number): Vec {
  evaluate(curve, t, jet)
  return [jet.x, jet.y]
}

/** Direction of travel. */
export function headingAt(curve: CubicCurve, t: number): Vec {
  evaluate(curve, t, jet)
  let length = Math.hypot(jet.dx, jet.dy)
  if (length === 0) {
    evaluate(curve, t < 0.5 ? HAIR : 1 - HAIR, jet)
    length = Math.hypot(jet.dx, jet.dy) || 1
  }
  return [jet.dx / length, jet.dy / length]
}

/** Angle from one direction to another, −π to π. */
export function turnBetween(a: Readonly<Vec>, b: Readonly<Vec>): number {
  return Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])
}

/** The point at an offset from the curve, positive to the left. */
export function parallelAt(curve: CubicCurve, t: number, offset: number): Vec {
  const [hx, hy] = headingAt(curve, t)
  const [x, y] = pointAt(curve, t)
  return [x - offset * hy, y + offset * hx]
}

/** Curvature, positive where the curve bends to the left [1/m]. */
export function curvatureAt(c: CubicCurve, t: number): number {
  evaluate(c, t, jet)
  return (jet.dx * secondY(c, t) - jet.dy * secondX(c, t)) / Math.hypot(jet.dx, jet.dy) ** 3
}

/** A number of the sign with which the curvature's size changes. */
export function curvatureRise(c: CubicCurve, t: number): number {
  evaluate(c, t, jet)
  const { dx, dy } = jet
  const [sx, sy] = [secondX(c, t), secondY(c, t)]
  const thirdX = 6 * (c.x1 - 3 * c.bx + 3 * c.ax - c.x0)
  const thirdY = 6 * (c.y1 - 3 * c.by + 3 * c.ay - c.y0)
  const bend = dx * sy - dy * sx
  return Math.sign(bend) * ((dx * thirdY - dy * thirdX) * (dx * dx + dy * dy) - 3 * bend * (dx * sx + dy * sy))
}
