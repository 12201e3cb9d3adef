import type { Ray } from './cove-fan.ts'
import { type CubicCurve, type Curve, evaluate, fastest, newJet, secondX, secondY } from './curve.ts'
import { turningPoints } from './curve-linear.ts'
import { norm } from './norm.ts'
import { cubicAt } from './polynomial.ts'
import type { Shore } from './shores.ts'
import { HAIR, NEARLY, ROUNDING } from './tolerance.ts'

const jet = newJet()

/** How the last search found a ray to be ended, as in a reach. */
export const endedBy = { how: 0 }

/**
 * Least ρ along a stretch; beside P itself the curvature answers.
 * Method: sampled, then Newton from each dip that may be the least, or that lies where the stretch may come into the ray's
 *   own circle between two looks. A stretch may dip more than once: where it goes on from the ray's own at a blunt corner,
 *   close to the corner and again where it bends back.
 */
export function searchReach(ray: Ray, shore: Shore, limit: number, touching: boolean): number {
  const { curve } = shore
  const count = layPlaces(ray, shore, limit, touching)
  let least = Infinity
  let isBehind = false
  for (let i = 0; i < count; i++) {
    if (i > 0 && i < count - 1)
      values[i] =
        curve.kind === 'cubic'
          ? valueOnCubic(ray, curve, places[i]!, touching, limit)
          : valueAt(ray, curve, places[i]!, touching, limit)
    least = Math.min(least, values[i]!)
    if (values[i] === Infinity) isBehind = true
  }
  let best = Infinity
  endedBy.how = 0
  // Across a slit a stretch that bends away lies before the ray's foot for so short a way that no look may have met it.
  if (least > limit && isBehind && isBefore(ray, shore)) best = peakReach(ray, shore, count, limit, touching)
  for (let i = 0; i < count; i++) {
    const value = values[i]!
    if ((i > 0 && value >= values[i - 1]!) || (i + 1 < count && value > values[i + 1]!)) continue
    // Where the stretch bends as tightly there may be a second dip a step further on.
    const aside = value > shore.clearM ? 2 : 1
    // Beside a stretch that is much nearer than it is long, as across a slit, the places of it that end the ray lie between two looks.
    const mayBeNear = value > 2 * Math.min(least, limit) && mayComeNear(ray, curve, i, aside, count, limit)
    if (!(value <= 2 * least) && !mayBeNear) continue
    let found = value
    // What ends the ray far beyond the limit need not be known any better.
    if (value <= 2 * limit || i <= 1 || i >= count - 2 || mayBeNear)
      found = leastBetween(
        ray,
        curve,
        places[Math.max(0, i - aside)]!,
        places[i]!,
        places[Math.min(count - 1, i + aside)]!,
        touching,
        limit,
        aside > 1 ? MOST_THIRDS : 0,
      )
    if (found >= best) continue
    best = found
    endedBy.how = found < value || (i > 0 && i < count - 1) ? 0 : i === 0 ? 1 : 2
    // The same stretch may end the next rays far away from the corner that it starts at.
    if (
      endedBy.how === 0 &&
      !touching &&
      ((besideFirst > 0 && i <= besideFirst) || (besideLast > 0 && i >= count - 1 - besideLast))
    )
      endedBy.how = 3
  }
  return best
}

/** True where the box about a stretch reaches before a ray's foot. */
function isBefore(ray: Ray, { boxX, boxY, boxUx, boxUy, boxHalfLengthM, boxHalfWidthM }: Shore): boolean {
  const along = boxHalfLengthM * Math.abs(boxUx * ray.nx + boxUy * ray.ny)
  const across = boxHalfWidthM * Math.abs(boxUx * ray.ny - boxUy * ray.nx)
  return (boxX - ray.x) * ray.nx + (boxY - ray.y) * ray.ny + along + across > 0
}

/** Least ρ about the places where a stretch lies furthest before the ray's foot. */
function peakReach(ray: Ray, { curve, t0, t1 }: Shore, count: number, limit: number, touching: boolean): number {
  let best = Infinity
  const step = (t1 - t0) / count
  for (const t of turningPoints(curve, { c: 0, gx: ray.nx, gy: ray.ny })) {
    if (!(t > t0 && t < t1) || valueAt(ray, curve, t, touching, limit) === Infinity) continue
    const found = dipBetween(ray, curve, Math.max(t0, t - step), t, Math.min(t1, t + step), touching, limit)
    best = Math.min(best, found)
  }
  return best
}

/** True where a stretch may come into the circle that a ray of the limit's length would have, between the looks beside one. */
function mayComeNear(ray: Ray, curve: Curve, i: number, aside: number, count: number, limit: number): boolean {
  evaluate(curve, places[i]!, jet)
  const offM = norm(jet.x - ray.x - limit * ray.nx, jet.y - ray.y - limit * ray.ny) - limit
  if (offM <= 0) return true
  const from = places[Math.max(0, i - aside)]!
  const to = places[Math.min(count - 1, i + aside)]!
  return offM <= Math.max(places[i]! - from, to - places[i]!) * fastest(curve, from, to)
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
  const afterFirst = halvings(ray, curve, t0, step, span / steps)
  const last = valueAt(ray, curve, t1, touching, limit)
  const beforeLast = halvings(ray, curve, t1, -step, span / steps)
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

/** An end is slow where its speed is less than this share of the stretch's own, as at a handle on its point. */
const SLOW = 0.25

/** How often to halve the step at the end just evaluated, so that a dip as far beyond it as the ray's foot is before it is seen. */
function halvings(ray: Ray, curve: Curve, t: number, step: number, meanM: number): number {
  const awayM = norm(jet.x - ray.x, jet.y - ray.y)
  let stepM = norm(jet.dx, jet.dy) * Math.abs(step)
  if (stepM < SLOW * meanM) {
    const { x, y } = jet
    evaluate(curve, t + step, jet)
    stepM = Math.max(stepM, norm(jet.x - x, jet.y - y))
  }
  // At its very end a stretch dips nowhere.
  if (!(2 * awayM < stepM) || awayM <= NEARLY * stepM) return 0
  return Math.min(MOST_HALVINGS, Math.ceil(Math.log2(stepM / awayM)) + 1)
}

/** Steps below this share of their stretch are near enough a foot for Newton's to shrink each time. */
const DITHER = 1e-4
/** A step of Newton's below this share of its stretch leaves nothing to find. */
const NEAR = 1e-8
/** Share of ρ that rounding may be off by where one value counts; in a thicker blur the least of so many is taken. */
const BLUR = 1e-6
const MOST_DITHERED = 8

/** How often a stretch that isn't clear is looked at a third at a time, and the places to look at in it. */
const MOST_THIRDS = 5
const PARTS_OF_IT = 6
/** Roundings of a place by which its circle may be off. */
const ROUNDINGS_OF_IT = 16
/** The circles about a stretch's places clearly grow or shrink away from one from this share on of how they do along a line. */
const CLEAR = 0.25
const ALIKE = 2

/** Places and the circles there, for each time that a stretch is looked at a third at a time. */
const wheres = Array.from({ length: MOST_THIRDS + 1 }, () => new Float64Array(PARTS_OF_IT + 1))
const theres = Array.from({ length: MOST_THIRDS + 1 }, () => new Float64Array(PARTS_OF_IT + 1))

/** Least ρ between two places about a sample; where it is not clear that there is one dip at most, of all that are found. */
function leastBetween(
  ray: Ray,
  curve: Curve,
  from: number,
  at: number,
  to: number,
  touching: boolean,
  limit: number,
  thirds: number,
): number {
  if (thirds === 0 || curve.kind !== 'cubic' || isClear(ray, curve, placesAbout(from, at, to), touching, limit))
    return dipBetween(ray, curve, from, at, to, touching, limit)
  const where = wheres[thirds]!
  const there = theres[thirds]!
  let blurM = 0
  let leastM = Infinity
  let mostM = 0
  for (let i = 0; i <= PARTS_OF_IT; i++) {
    where[i] = i === PARTS_OF_IT ? to : from + ((to - from) * i) / PARTS_OF_IT
    const value = valueAt(ray, curve, where[i]!, touching, limit)
    there[i] = value
    if (value === Infinity) continue
    const toward = ray.nx * (jet.x - ray.x) + ray.ny * (jet.y - ray.y)
    blurM = Math.max(blurM, (value * ROUNDING * (Math.abs(jet.x) + Math.abs(jet.y))) / toward)
    leastM = Math.min(leastM, value)
    mostM = Math.max(mostM, value)
  }
  // Dips that rounding makes where a place lies beside the foot are none, and there is no end of them.
  if (mostM - leastM <= ROUNDINGS_OF_IT * blurM) return dipBetween(ray, curve, from, at, to, touching, limit)
  let best = Infinity
  for (let i = 0; i <= PARTS_OF_IT; i++) {
    const value = there[i]!
    if (!(value < Infinity) || (i > 0 && value >= there[i - 1]!) || (i < PARTS_OF_IT && value > there[i + 1]!)) continue
    const before = where[Math.max(0, i - 1)]!
    const after = where[Math.min(PARTS_OF_IT, i + 1)]!
    best = Math.min(best, leastBetween(ray, curve, before, where[i]!, after, touching, limit, thirds - 1))
  }
  return best
}

const five = new Float64Array(5)

/** A sample, the ends of what lies about it, and the middles between; the list is written over by the next. */
function placesAbout(from: number, at: number, to: number): Float64Array {
  five[0] = from
  five[1] = (from + at) / 2
  five[2] = at
  five[3] = (at + to) / 2
  five[4] = to
  return five
}

/** True where ρ bends the same way at all of some places, so that there is one dip or none between them. */
function isClear(ray: Ray, curve: Curve, where: Float64Array, touching: boolean, limit: number): boolean {
  let least = Infinity
  let most = -Infinity
  for (const t of where) {
    const value = valueAt(ray, curve, t, touching, limit)
    if (!(value < Infinity)) continue
    const speed2 = jet.dx * jet.dx + jet.dy * jet.dy
    const share = slopeOfG(ray, curve, t, value) / speed2
    least = Math.min(least, share)
    most = Math.max(most, share)
    // What some places leave unclear no other one clears up.
    if (!isOneWay(least, most)) return false
  }
  return true
}

/** True where all bends between two, as shares of the speed, go one way beyond doubt. */
function isOneWay(least: number, most: number): boolean {
  if (least > CLEAR || most < -CLEAR) return true
  // Beside a place as near all around the bends are slight: that they are much alike tells as well.
  return least > 0 ? most < ALIKE * least : most < 0 && least > ALIKE * most
}

/** Half the slope of (Q − P − ρ N)² by t at the place last evaluated; in an object, where a number is written in place. */
const dip = { half: 0.5 }

/** Half the slope of (Q − P − ρ N)² by t at the place just evaluated, left in `dip`, and how fast that grows. */
function slopeOfG(ray: Ray, curve: Curve, t: number, value: number): number {
  const toward = ray.nx * (jet.x - ray.x) + ray.ny * (jet.y - ray.y)
  const vx = jet.x - ray.x - value * ray.nx
  const vy = jet.y - ray.y - value * ray.ny
  dip.half = vx * jet.dx + vy * jet.dy
  turnOf(curve, t, second)
  const along = ray.nx * jet.dx + ray.ny * jet.dy
  return (
    jet.dx * jet.dx + jet.dy * jet.dy + vx * second.x + vy * second.y - (toward > 0 ? (dip.half / toward) * along : 0)
  )
}

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
  let dithered = 0
  const small = DITHER * (to - from)
  for (let i = 0; i < 60; i++) {
    let isClear = false
    const value = valueAt(ray, curve, t, touching, limit)
    best = Math.min(best, value)
    let next = (lo + hi) / 2
    if (value < Infinity) {
      const slope = slopeOfG(ray, curve, t, value)
      if (dip.half > 0) hi = t
      else lo = t
      const newton = t - dip.half / slope
      const isInside = slope > 0 && newton >= lo && newton <= hi
      next = isInside ? newton : (lo + hi) / 2
      isClear =
        isInside &&
        ROUNDING * (Math.abs(jet.x) + Math.abs(jet.y)) < BLUR * (ray.nx * (jet.x - ray.x) + ray.ny * (jet.y - ray.y))
    } else if (t < at) lo = t
    else hi = t
    if (Math.abs(next - t) <= 4 * ROUNDING * Math.max(Math.abs(t), to - from) || !(hi > lo)) break
    const step = Math.abs(next - t)
    if (!isClear && step < small && ++dithered === MOST_DITHERED) break
    // The circle hangs on the place by the square of how far that is off.
    if (isClear && step <= NEAR * (to - from)) break
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
    out.x = secondX(c, t)
    out.y = secondY(c, t)
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
