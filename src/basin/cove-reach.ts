import type { Fan, Fans, Ray } from './cove-fan.ts'
import { type ArcCurve, evaluate, type LineCurve, newJet } from './curve.ts'
import { norm } from './norm.ts'
import { endedBy, searchReach } from './reach-search.ts'
import { type Shore, staysOut } from './shores.ts'
import { NEARLY, ROUND_RAD, ROUNDING, SMOOTH_RAD, TIE } from './tolerance.ts'

/** How far a ray is nearer to its own foot than to any other shore, and what ends it (−1: the radius asked for). */
export interface Reach {
  n: number
  by: number
  /** Whether it is the inside of that stretch (0), its first (1) or last end (2), or its inside beside a corner at the foot (3). */
  how: number
}

const jet = newJet()
/** From so many stretches on it pays to know one that ends a ray. */
const MANY_RIVALS = 16
let lastRivals: readonly number[] | undefined
let lastBy = -1

/**
 * Length of a ray up to the cut locus, at most r [m].
 * Equation: the circle that touches the shore at P with its centre on the ray meets Q where ρ = |Q − P|² / (2 N·(Q − P));
 *   n = min(r, 1/κ, min over Q of ρ). On a line ρ = δ/(1 − N·m), on a circle ρ = (|v|² − R²)/(2(R − N·v)) from outside,
 *   (R² − |v|²)/(2(R + N·v)) from inside, at the ends of a stretch by Q.
 * Symbols: N unit normal; δ distance of P from the line, m its normal toward P; v = P − centre; κ curvature toward N.
 * Source: definition of the medial axis by inscribed circles; own derivation.
 * Accuracy: rounding on lines and arcs, 1e-12 on cubics.
 */
export function reachOf(fans: Fans, fan: Fan, rivals: readonly number[], ray: Ray, r: number, out: Reach): void {
  // What ended the last ray ends this one at least so soon, but for a little: most stretches are further away.
  const known = rivals === lastRivals && rivals.length >= MANY_RIVALS ? lastBy : -1
  const near = known < 0 ? Infinity : reachTo(fans, fan, known, ray, r) * (1 + NEARLY) + NEARLY * r
  out.n = r
  out.by = -1
  out.how = 0
  if (ray.h1 < 0 && -ray.h0 / ray.h1 < r) {
    out.n = -ray.h0 / ray.h1
    out.by = -2
  }
  for (let k = 0; k < rivals.length; k++) {
    const i = rivals[k]!
    const shore = fans.shores[i]!
    // Only a stretch that comes into the circle about the ray's end so far can end it sooner.
    const most = Math.min(out.n, near)
    const x = ray.x + most * ray.nx
    const y = ray.y + most * ray.ny
    const awayX = Math.max(shore.minX - x, x - shore.maxX, 0)
    const awayY = Math.max(shore.minY - y, y - shore.maxY, 0)
    if (awayX * awayX + awayY * awayY >= most * most) continue
    const fromX = x - shore.boxX
    const fromY = y - shore.boxY
    const along = Math.max(0, Math.abs(fromX * shore.boxUx + fromY * shore.boxUy) - shore.boxHalfLengthM)
    const across = Math.max(0, Math.abs(fromY * shore.boxUx - fromX * shore.boxUy) - shore.boxHalfWidthM)
    if (along * along + across * across >= most * most || staysOut(shore, x, y, most)) continue
    const n = reachTo(fans, fan, i, ray, most)
    // A tie keeps the first, or rounding would make it flicker along the shore.
    if (n < out.n * (1 - TIE)) {
      out.n = n
      out.by = i
      out.how = how
    }
  }
  lastRivals = rivals
  lastBy = out.by
}

let how = 0

/** How the last stretch that a ray's length was asked for by ends it (Reach.how). */
export function howReached(): number {
  return how
}

/** Length of a ray up to where one stretch is as near as its own foot; past `limit` it may be too long [m]. */
export function reachTo(fans: Fans, fan: Fan, i: number, ray: Ray, limit: number): number {
  const shore = fans.shores[i]!
  how = 0
  const touching = i === fan.shore || (fan.shore < 0 && fan.neighbours.includes(i))
  if (touching) {
    if (shore.curve.kind === 'line' || (i === fan.shore && shore.curve.kind === 'arc')) return Infinity
    return bySearch(ray, shore, limit, true)
  }
  if (shore.curve.kind === 'line') return toLine(ray, shore, shore.curve)
  if (shore.curve.kind === 'arc' && Math.abs(shore.curve.turn) > ROUND_RAD) return toArc(ray, shore, shore.curve)
  // Beside a smooth joint the next stretch's first places are as near the foot as the own ones: rounding there, too.
  return bySearch(ray, shore, limit, fan.shore >= 0 && fan.neighbours.includes(i))
}

function bySearch(ray: Ray, shore: Shore, limit: number, touching: boolean): number {
  const n = searchReach(ray, shore, limit, touching)
  how = endedBy.how
  return n
}

function toPoint(ray: Ray, x: number, y: number): number {
  const dx = x - ray.x
  const dy = y - ray.y
  const toward = ray.nx * dx + ray.ny * dy
  return toward > 0 ? (dx * dx + dy * dy) / (2 * toward) : Infinity
}

function toEnds(ray: Ray, shore: Shore): number {
  evaluate(shore.curve, shore.t0, jet)
  const first = toEnd(ray, jet.x, jet.y, jet.dx, jet.dy)
  evaluate(shore.curve, shore.t1, jet)
  const last = toEnd(ray, jet.x, jet.y, -jet.dx, -jet.dy)
  how = last < first ? 2 : 1
  return Math.min(first, last)
}

/** By an end of a stretch, from where it runs on in a direction: at a ray's own foot it ends the ray at once or not at all. */
function toEnd(ray: Ray, x: number, y: number, dx: number, dy: number): number {
  const rounding = 4 * ROUNDING * (Math.abs(x) + Math.abs(y))
  if (Math.abs(x - ray.x) + Math.abs(y - ray.y) > 16 * rounding)
    // An end of the ray's own stretch lies square to it but for rounding.
    return ray.nx * (x - ray.x) + ray.ny * (y - ray.y) > rounding ? toPoint(ray, x, y) : Infinity
  return ray.nx * dx + ray.ny * dy > TIE * norm(dx, dy) ? 0 : Infinity
}

function toLine(ray: Ray, shore: Shore, c: LineCurve): number {
  const length = norm(c.x1 - c.x0, c.y1 - c.y0)
  const ux = (c.x1 - c.x0) / length
  const uy = (c.y1 - c.y0) / length
  let delta = (ray.y - c.y0) * ux - (ray.x - c.x0) * uy
  let m = ray.ny * ux - ray.nx * uy
  if (delta < 0) {
    delta = -delta
    m = -m
  }
  if (m < 1 && delta > 0) {
    const n = delta / (1 - m)
    const s = ((ray.x + n * ray.nx - c.x0) * ux + (ray.y + n * ray.ny - c.y0) * uy) / length
    if (s >= shore.t0 && s <= shore.t1) return n
  }
  return toEnds(ray, shore)
}

function toArc(ray: Ray, shore: Shore, c: ArcCurve): number {
  const cx = c.x0 - c.radius * Math.sin(c.heading)
  const cy = c.y0 + c.radius * Math.cos(c.heading)
  const radius = Math.abs(c.radius)
  const vx = ray.x - cx
  const vy = ray.y - cy
  const gap = vx * vx + vy * vy - radius * radius
  const along = ray.nx * vx + ray.ny * vy
  // R ∓ N·v, by the part of v across the ray: at a blunt corner it is as small as the square of the turn.
  const across = ray.nx * vy - ray.ny * vx
  const toward = gap > 0 ? along : -along
  const away = Math.sqrt(vx * vx + vy * vy)
  const bottom = toward > 0 ? (across * across) / (away + toward) - gap / (radius + away) : radius - toward
  // On the very circle: its own centre is the end.
  if (Math.abs(gap) < NEARLY * radius * radius && toward > 0 && Math.abs(across) < SMOOTH_RAD * radius)
    return gap > 0 ? Infinity : radius
  if (bottom > 0) {
    const n = Math.abs(gap) / (2 * bottom)
    const qx = ray.x + n * ray.nx - cx
    const qy = ray.y + n * ray.ny - cy
    const middle = c.heading + (c.turn * (shore.t0 + shore.t1)) / 2
    const s = Math.sign(c.radius)
    const mx = s * Math.sin(middle)
    const my = -s * Math.cos(middle)
    const angle = Math.abs(Math.atan2(mx * qy - my * qx, mx * qx + my * qy))
    if (angle <= (Math.abs(c.turn) * (shore.t1 - shore.t0)) / 2) return n
  }
  return toEnds(ray, shore)
}
