import type { Fan, Fans } from './cove-fan.ts'
import { arcCentre, evaluate, newJet } from './curve.ts'
import { norm } from './norm.ts'
import { quadraticRoots } from './polynomial.ts'
import { type Foot, footOn } from './span.ts'
import type { NearEdge } from './strip-plan.ts'
import { TIE } from './tolerance.ts'

const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }
const jet = newJet()
const HALF = [0.5]
const QUARTERS = [0.25, 0.5, 0.75]

/** The t of a fan whose ray leads to a place, where it is at most so far away [m]; nothing where there is none inside the fan. */
export function footOf(fans: Fans, fan: Fan, x: number, y: number, mostM: number): number | undefined {
  if (fan.shore < 0) {
    const dx = x - fan.x
    const dy = y - fan.y
    if (dx * dx + dy * dy > mostM * mostM || (dx === 0 && dy === 0)) return undefined
    const turn = fan.direction - Math.atan2(dy, dx)
    const t = turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI))
    return t < fan.t1 ? t : undefined
  }
  const { curve, t0, t1, minX, minY, maxX, maxY } = fans.shores[fan.shore]!
  if (x < minX - mostM || x > maxX + mostM || y < minY - mostM || y > maxY + mostM) return undefined
  footOn(curve, t0, t1, x, y, foot)
  const inside = TIE * (t1 - t0)
  return foot.distance <= mostM && foot.t > t0 + inside && foot.t < t1 - inside ? foot.t : undefined
}

/** The t at which the fan's shore comes nearest to an edge's line, or runs beside it: ray and edge square to each other. */
export function squareTo(fans: Fans, fan: Fan, { x0, y0, x1, y1 }: NearEdge, out: number[]): void {
  const ex = x1 - x0
  const ey = y1 - y0
  if (fan.shore < 0) {
    const turn = fan.direction - Math.atan2(ex, -ey)
    out.push(turn - Math.PI * Math.floor(turn / Math.PI))
    return
  }
  const { curve } = fans.shores[fan.shore]!
  if (curve.kind === 'line') return
  if (curve.kind === 'arc') {
    const turn = Math.atan2(ey, ex) - curve.heading
    const lo = Math.min(0, curve.turn)
    for (let a = turn - Math.PI * Math.floor((turn - lo) / Math.PI); a <= Math.max(0, curve.turn); a += Math.PI)
      out.push(a / curve.turn)
    return
  }
  const d = (x: number, y: number): number => x * ey - y * ex
  out.push(
    ...quadraticRoots(
      d(curve.ax - curve.x0, curve.ay - curve.y0),
      d(curve.bx - curve.ax, curve.by - curve.ay),
      d(curve.x1 - curve.bx, curve.y1 - curve.by),
    ),
  )
}

/** The t of a fan about a corner at which edges leave the corner itself; none along a shore. */
export function leavingFrom(fan: Fan, near: readonly NearEdge[]): number[] {
  const found: number[] = []
  if (fan.shore >= 0) return found
  for (const { edge, x0, y0, x1, y1 } of near)
    for (const [isFrom, x, y] of [
      [true, x0, y0],
      [false, x1, y1],
    ] as const) {
      if (x !== fan.x || y !== fan.y) continue
      evaluate(edge.curve, isFrom ? edge.t0 : edge.t1, jet)
      const side = isFrom ? 1 : -1
      const turn = fan.direction - Math.atan2(side * jet.dy, side * jet.dx)
      const t = turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI))
      if (t > fan.t0 && t < fan.t1) found.push(t)
    }
  return found
}

/**
 * Further t of a fan to look at beside an edge that bends, which may reach into the strip and out again: at its middle, where
 * it comes nearest to the shore or is furthest from it, and where it leaves a corner or its rays touch it.
 */
export function besideBend(fans: Fans, fan: Fan, near: NearEdge, mostM: number, out: number[]): void {
  const { curve, t0, t1 } = near.edge
  // A cubic's nearest place has no closed form: a dip between a few places is too shallow to matter.
  for (const share of curve.kind === 'arc' ? HALF : QUARTERS) {
    evaluate(curve, t0 + (t1 - t0) * share, jet)
    const beside = footOf(fans, fan, jet.x, jet.y, mostM)
    if (beside !== undefined) out.push(beside)
  }
  if (curve.kind === 'arc') {
    // The ray through the circle's centre meets it square.
    const [cx, cy] = arcCentre(curve)
    const square = footOf(fans, fan, cx, cy, mostM + Math.abs(curve.radius))
    if (square !== undefined) out.push(square)
  }
  if (fan.shore < 0) {
    for (const t of [t0, t1]) {
      evaluate(curve, t, jet)
      const turn = fan.direction - Math.atan2(jet.dy, jet.dx)
      out.push(turn - Math.PI * Math.floor(turn / Math.PI))
    }
    if (curve.kind === 'arc') {
      // Rays from the corner that touch the circle.
      const [cx, cy] = arcCentre(curve)
      const d = norm(cx - fan.x, cy - fan.y)
      const r = Math.abs(curve.radius)
      if (d > r)
        for (const side of [1, -1]) {
          const turn = fan.direction - Math.atan2(cy - fan.y, cx - fan.x) - side * Math.asin(r / d)
          out.push(turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI)))
        }
    }
  } else if (curve.kind === 'arc' && fans.shores[fan.shore]!.curve.kind === 'line') {
    // Rays square to a straight shore that touch the circle.
    const shore = fans.shores[fan.shore]!.curve
    const [cx, cy] = arcCentre(curve)
    const length2 = (shore.x1 - shore.x0) ** 2 + (shore.y1 - shore.y0) ** 2
    const along = ((cx - shore.x0) * (shore.x1 - shore.x0) + (cy - shore.y0) * (shore.y1 - shore.y0)) / length2
    const r = Math.abs(curve.radius) / Math.sqrt(length2)
    out.push(along - r, along + r)
  }
}
