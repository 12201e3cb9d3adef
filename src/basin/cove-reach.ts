import type { Fan, Fans, Ray } from './cove-fan.ts'
import { type ArcCurve, type CubicCurve, type Curve, evaluate, type LineCurve, newJet } from './curve.ts'
import { norm } from './norm.ts'
import { cubicAt } from './polynomial.ts'
import type { Shore } from './shores.ts'
import { HAIR, NEARLY, ROUND_RAD, ROUNDING, SMOOTH_RAD, TIE } from './tolerance.ts'

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
    if (along * along + across * across >= most * most) continue
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

/**
 * Least ρ along a stretch; beside P itself the curvature answers.
 * Method: sampled, then Newton from each dip that may be the least. A stretch may dip more than once: where it goes on from
 *   the ray's own at a blunt corner, close to the corner and again where it bends back.
 */
function bySearch(ray: Ray, shore: Shore, limit: number, touching: boolean): number {
  const { curve, t0, t1 } = shore
  const count = layPlaces(ray, shore, limit, touching)
  let least = Infinity
  for (let i = 0; i < count; i++) {
    if (i > 0 && i < count - 1)
      values[i] =
        curve.kind === 'cubic'
          ? valueOnCubic(ray, curve, places[i]!, touching, limit)
          : valueAt(ray, curve, places[i]!, touching, limit)
    least = Math.min(least, values[i]!)
  }
  let best = Infinity
  how = 0
  for (let i = 0; i < count; i++) {
    const value = values[i]!
    if (!(value <= 2 * least) || (i > 0 && value >= values[i - 1]!) || (i + 1 < count && value > values[i + 1]!))
      continue
    let found = value
    // What ends the ray far beyond the limit need not be known any better.
    if (value <= 2 * limit || i <= 1 || i >= count - 2)
      found = dipBetween(
        ray,
        curve,
        i > 0 ? places[i - 1]! : t0,
        places[i]!,
        i + 1 < count ? places[i + 1]! : t1,
        touching,
        limit,
      )
    if (found >= best) continue
    best = found
    how = found < value || (i > 0 && i < count - 1) ? 0 : i === 0 ? 1 : 2
    // The same stretch may end the next rays far away from the corner that it starts at.
    if (
      how === 0 &&
      !touching &&
      ((besideFirst > 0 && i <= besideFirst) || (besideLast > 0 && i >= count - 1 - besideLast))
    )
      how = 3
  }
  return best
}

const MOST_STEPS = 24
const MOST_HALVINGS = 40
const places = new Float64Array(MOST_STEPS + 1 + 2 * MOST_HALVINGS)
const values = new Float64Array(places.length)

/** How many of the places lie close to the first and to the last end for the foot's sake. */
let besideFirst = 0
let besideLast = 0

/**
 * Writes the places of a stretch to look at, ascending, and the values at both ends; returns how many. They lie denser
 * toward an end that is near the ray's foot.
 */
function layPlaces(ray: Ray, shore: Shore, limit: number, touching: boolean): number {
  const { curve, t0, t1 } = shore
  // Fine enough to see every dip that a curve of this length can make at this distance.
  const span = Math.max(shore.maxX - shore.minX, shore.maxY - shore.minY)
  const steps = Math.min(MOST_STEPS, Math.max(6, Math.ceil((4 * span) / limit)))
  const step = (t1 - t0) / steps
  const first = valueAt(ray, curve, t0, touching, limit)
  const afterFirst = halvings(ray, step)
  const last = valueAt(ray, curve, t1, touching, limit)
  const beforeLast = halvings(ray, step)
  let count = 0
  places[count++] = t0
  // Halves are exact, so the last one may be doubled up to the first.
  for (let k = afterFirst, part = step * 0.5 ** afterFirst; k > 0; k--, part *= 2) places[count++] = t0 + part
  for (let i = 1; i < steps; i++) places[count++] = t0 + step * i
  for (let k = 1, part = step / 2; k <= beforeLast; k++, part /= 2) places[count++] = t1 - part
  places[count++] = t1
  values[0] = first
  values[count - 1] = last
  besideFirst = afterFirst
  besideLast = beforeLast
  return count
}

/** How often to halve the step at the end just evaluated, so that a dip as far beyond it as the ray's foot is before it is seen. */
function halvings(ray: Ray, step: number): number {
  const awayM = norm(jet.x - ray.x, jet.y - ray.y)
  const stepM = norm(jet.dx, jet.dy) * step
  // At its very end a stretch dips nowhere.
  if (!(2 * awayM < stepM) || awayM <= NEARLY * stepM) return 0
  return Math.min(MOST_HALVINGS, Math.ceil(Math.log2(stepM / awayM)) + 1)
}

/** Steps below this share of their stretch are near enough a foot for Newton's to shrink each time. */
const DITHER = 1e-4
/** Share of ρ that rounding may be off by where one value counts; in a thicker blur the least of many is taken. */
const BLUR = 1e-6

/** Least ρ between two places about a sample: Newton on (Q − P − ρ N)·Q′ = 0, guarded by halving. */
function dipBetween(
  ray: Ray,
  curve: Curve,
  from: number,
  at: number,
  to: number,
  touching: boolean,
  limit: number,
): number {
  let lo = from
  let hi = to
  let t = at
  let best = Infinity
  let lastStep = Infinity
  const small = DITHER * (to - from)
  for (let i = 0; i < 60; i++) {
    let isClear = false
    const value = valueAt(ray, curve, t, touching, limit)
    best = Math.min(best, value)
    let next = (lo + hi) / 2
    if (value < Infinity) {
      const toward = ray.nx * (jet.x - ray.x) + ray.ny * (jet.y - ray.y)
      const vx = jet.x - ray.x - value * ray.nx
      const vy = jet.y - ray.y - value * ray.ny
      const g = vx * jet.dx + vy * jet.dy
      if (g > 0) hi = t
      else lo = t
      turnOf(curve, t, second)
      const along = ray.nx * jet.dx + ray.ny * jet.dy
      const slope =
        jet.dx * jet.dx + jet.dy * jet.dy + vx * second.x + vy * second.y - (toward > 0 ? (g / toward) * along : 0)
      const newton = t - g / slope
      const isInside = slope > 0 && newton >= lo && newton <= hi
      next = isInside ? newton : (lo + hi) / 2
      isClear = isInside && ROUNDING * (Math.abs(jet.x) + Math.abs(jet.y)) < BLUR * toward
    } else if (t < at) lo = t
    else hi = t
    if (Math.abs(next - t) <= 4 * ROUNDING * Math.max(Math.abs(t), to - from) || !(hi > lo)) break
    const step = Math.abs(next - t)
    // Newton's steps that no longer shrink wander about in the rounding of the places.
    if (lastStep < small && step > lastStep / 4) break
    lastStep = isClear ? step : Infinity
    t = next
  }
  return best
}

const second = { x: 0, y: 0 }

/** Second derivative by t. */
function turnOf(c: Curve, t: number, out: { x: number; y: number }): void {
  if (c.kind === 'cubic') {
    const u = 6 * (1 - t)
    const v = 6 * t
    out.x = u * (c.x0 - 2 * c.ax + c.bx) + v * (c.ax - 2 * c.bx + c.x1)
    out.y = u * (c.y0 - 2 * c.ay + c.by) + v * (c.ay - 2 * c.by + c.y1)
  } else if (c.kind === 'arc') {
    out.x = -c.turn * jet.dy
    out.y = c.turn * jet.dx
  } else {
    out.x = 0
    out.y = 0
  }
}

function valueAt(ray: Ray, curve: Curve, t: number, touching: boolean, limit: number): number {
  evaluate(curve, t, jet)
  return rhoOf(ray, jet.x, jet.y, touching, limit)
}

/** The same on a cubic, whose direction isn't asked for. */
function valueOnCubic(ray: Ray, c: CubicCurve, t: number, touching: boolean, limit: number): number {
  const x = cubicAt(c.x0, c.ax, c.bx, c.x1, t)
  const y = cubicAt(c.y0, c.ay, c.by, c.y1, t)
  return rhoOf(ray, x, y, touching, limit)
}

function rhoOf(ray: Ray, x: number, y: number, touching: boolean, limit: number): number {
  const dx = x - ray.x
  const dy = y - ray.y
  // Too near to its own foot both lengths are rounding; the curvature has answered there.
  if (touching && Math.abs(dx) + Math.abs(dy) < 10 * HAIR * limit) return Infinity
  const toward = ray.nx * dx + ray.ny * dy
  // Less than the places' own rounding: of a corner that juts in no more than that may be left.
  return toward > 4 * ROUNDING * (Math.abs(x) + Math.abs(y)) ? (dx * dx + dy * dy) / (2 * toward) : Infinity
}
