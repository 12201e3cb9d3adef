import { type Curve, evaluate, newJet, secondX, secondY } from './curve.ts'
import { cubicAt } from './polynomial.ts'
import { ROUNDING } from './tolerance.ts'

/** Places to look at first: a bend of a quarter turn may come near to a place twice; an arc that is all but straight can't. */
const CUBIC_PIECES = 6
const ARC_PIECES = 2
/** How often a stretch that isn't clear is looked at a third at a time: what two dips in one place then differ by is rounding. */
const DEPTH = 6
/** The square of a distance is clearly curved from this share of its slope's own rate on: one dip, or none, between two places. */
const CLEAR = 0.25
/** A step of Newton's below this share of its stretch is the last one. */
const NEAR = 1e-9

const jet = newJet()
const ROW = CUBIC_PIECES + 1
const distance2 = new Float64Array(ROW * (DEPTH + 1))
/** What the last look saw: numbers of an object are written in place, loose ones anew each time. */
const seen = { bend: 0.5, half: 0.5, speed: 0.5 }

/** Where on a cubic, or an arc that is all but straight, the nearest point to (x, y) is: t within [t0, t1]. */
export function searchFoot(curve: Curve, t0: number, t1: number, x: number, y: number): number {
  return leastIn(curve, t0, t1, x, y, 0)
}

/**
 * The nearest point's t in a stretch.
 * Method: the square of the distance at a few places; from each dip Newton's, and where beside a dip it is not clear whether
 *   there are two (as near the centre of the bend) the same again between its neighbours.
 */
function leastIn(curve: Curve, t0: number, t1: number, x: number, y: number, depth: number): number {
  const pieces = curve.kind === 'cubic' ? CUBIC_PIECES : ARC_PIECES
  const base = ROW * depth
  const step = (t1 - t0) / pieces
  let leastSeen = Infinity
  for (let i = 0; i <= pieces; i++) {
    const off = distance2At(curve, i === pieces ? t1 : t0 + step * i, x, y)
    distance2[base + i] = off
    leastSeen = Math.min(leastSeen, off)
  }
  let best = t0
  let least = Infinity
  for (let i = 0; i <= pieces; i++) {
    const here = distance2[base + i]!
    const isDip = (i === 0 || here < distance2[base + i - 1]!) && (i === pieces || here <= distance2[base + i + 1]!)
    if (!isDip) continue
    const at = i === pieces ? t1 : t0 + step * i
    let found = at
    look(curve, at, x, y)
    // Another dip that can't come as near within a step, with room for a change of speed.
    if (here > leastSeen && Math.sqrt(here) - 2 * step * seen.speed > Math.sqrt(leastSeen)) continue
    const isFlat = curve.kind !== 'cubic' || (seen.bend > 1 - CLEAR && seen.bend < 1 + CLEAR)
    // Where it is not, there may be a second dip a step further on.
    const aside = isFlat || depth > 0 ? 1 : 2
    const lo = i <= aside ? t0 : at - aside * step
    const hi = i >= pieces - aside ? t1 : at + aside * step
    let most = seen.bend
    let fewest = seen.bend
    // All but straight where it comes nearest: nothing else to fear close by.
    for (let k = isFlat ? 5 : 0; k < 5; k++) {
      look(curve, lo + ((hi - lo) * k) / 4, x, y)
      most = Math.max(most, seen.bend)
      fewest = Math.min(fewest, seen.bend)
    }
    if (fewest > CLEAR) found = descend(curve, x, y, at, lo, hi)
    else if (!(most < -CLEAR))
      found = depth < DEPTH ? leastIn(curve, lo, hi, x, y, depth + 1) : descend(curve, x, y, at, lo, hi)
    const off = found === at ? here : distance2At(curve, found, x, y)
    if (off < least) {
      least = off
      best = found
    }
  }
  return best
}

function distance2At(curve: Curve, t: number, x: number, y: number): number {
  if (curve.kind === 'cubic') {
    const vx = cubicAt(curve.x0, curve.ax, curve.bx, curve.x1, t) - x
    const vy = cubicAt(curve.y0, curve.ay, curve.by, curve.y1, t) - y
    return vx * vx + vy * vy
  }
  evaluate(curve, t, jet)
  return (jet.x - x) ** 2 + (jet.y - y) ** 2
}

/** Looks at t: half the slope of the square of the distance, and how fast that grows against what it would on a straight line. */
function look(curve: Curve, t: number, x: number, y: number): void {
  evaluate(curve, t, jet)
  const vx = jet.x - x
  const vy = jet.y - y
  const speed2 = jet.dx * jet.dx + jet.dy * jet.dy
  seen.half = vx * jet.dx + vy * jet.dy
  seen.bend = 1
  seen.speed = Math.sqrt(speed2)
  if (curve.kind !== 'cubic') return
  // Where a curve stands still nothing is clear.
  seen.bend = speed2 > 0 ? 1 + (vx * secondX(curve, t) + vy * secondY(curve, t)) / speed2 : 0
}

/** From a guess to the nearest point between two places: root of (P − Q)·P′ by Newton, bracketed; where it doesn't head for one, halving does. */
export function descend(curve: Curve, x: number, y: number, from: number, t0: number, t1: number): number {
  let t = from
  let lo = t0
  let hi = t1
  const scale = 4 * ROUNDING * Math.max(Math.abs(t0), Math.abs(t1))
  for (let i = 0; i < 60; i++) {
    look(curve, t, x, y)
    // Where a curve stands still, as at a handle on its own point, an end tells nothing: the foot may lie inside.
    if (seen.half > 0 || (seen.speed === 0 && t >= hi)) hi = t
    else lo = t
    const slope = seen.bend * seen.speed * seen.speed
    let next = slope > 0 ? t - seen.half / slope : (lo + hi) / 2
    // A step of Newton's that is as small leaves the square of it.
    if (slope > 0 && next >= lo && next <= hi && Math.abs(next - t) <= NEAR * (t1 - t0)) return next
    // Once to the end that it heads for, which often is the nearest point; then by halves.
    if (!(next >= lo && next <= hi)) next = slope > 0 && i < 3 ? (seen.half > 0 ? lo : hi) : (lo + hi) / 2
    if (Math.abs(next - t) <= scale || !(hi > lo)) return next
    t = next
  }
  return t
}
