import { type Fan, type Fans, headingAt } from './cove-fan.ts'
import { arcCentre, evaluate, newJet, secondX, secondY } from './curve.ts'
import { norm } from './norm.ts'
import type { Partition } from './partition-types.ts'
import { shoreGrid } from './shore-distance.ts'
import type { Shore } from './shores.ts'
import { ABOUT } from './tolerance.ts'

/** How a stretch of shore bends, with the water on the left. */
interface Bend {
  /** True where it bends toward the water more than the circle of the strip's width, and than one twice as wide. */
  readonly isTight: boolean
  readonly isFirm: boolean
  /** How much it turns toward the water from its first place to its last [rad]. */
  readonly turnRad: number
  readonly lengthM: number
}

/** What can end the rays of a fan. */
export interface Rivals {
  /** The stretches of shore that can, in order. */
  readonly all: readonly number[]
  /** Stretches that touch a circle which touches the fan's own shore in one place at most. */
  readonly touchOnce: readonly number[]
  /** Between these two t no ray is ended by any of them; from the fan's last to its first where that isn't known of any. */
  readonly freeFrom: number
  readonly freeTo: number
}

/** The stretches of shore that can end rays of each fan within a width [m]. */
export function rivalsOf(p: Partition, fans: Fans, widthM: number): Rivals[] {
  const bends = fans.shores.map((shore): Bend => {
    const isTight = !bendsLess(shore, 1 / widthM)
    return {
      isTight,
      isFirm: isTight || !bendsLess(shore, 0.5 / widthM),
      turnRad: turnOf(shore),
      lengthM: p.edges[shore.edge]!.length,
    }
  })
  const before = new Int32Array(fans.next.length).fill(-1)
  fans.next.forEach((next, i) => {
    if (next >= 0) before[next] = i
  })
  return fans.fans.map((fan): Rivals => {
    const own = fan.shore >= 0 ? fans.shores[fan.shore]! : undefined
    const minX = (own ? own.minX : fan.x) - 2 * widthM
    const maxX = (own ? own.maxX : fan.x) + 2 * widthM
    const minY = (own ? own.minY : fan.y) - 2 * widthM
    const maxY = (own ? own.maxY : fan.y) + 2 * widthM
    const may: number[] = []
    for (const i of shoreGrid(p).near(minX, minY, maxX, maxY, [])) {
      const shore = fans.shores[i]!
      if (shore.minX > maxX || shore.maxX < minX || shore.minY > maxY || shore.maxY < minY) continue
      // A stretch that bends less than the circle of the strip's width can't meet it beside its own touch.
      if (!bends[i]!.isTight && (i === fan.shore || (fan.shore < 0 && fan.neighbours.includes(i)))) continue
      if (own && i !== fan.shore && isOneCurve(own, shore)) continue
      may.push(i)
    }
    if (may.length === 0) return { all: may, touchOnce: may, freeFrom: fan.t0, freeTo: fan.t1 }
    may.sort((a, b) => a - b)
    const { harmless, touchOnce, reachM } = aheadOf(fans, fan, widthM, bends, before, may)
    const left = may.filter((i) => !harmless.includes(i))
    const joined = left.length > 0 ? smoothlyJoined(fans, fan, widthM, bends) : left
    const all = joined.length > 0 ? left.filter((i) => !joined.includes(i)) : left
    const ofEnd = all.every((i) => touchOnce.includes(i)) ? reachM : Infinity
    return {
      all,
      touchOnce,
      freeFrom: freeFrom(fans, fan, ofEnd, true),
      freeTo: freeFrom(fans, fan, ofEnd, false),
    }
  })
}

/** Stretches of one line or one circle: all are as near where the rays of each end by its own bend, and nowhere sooner. */
function isOneCurve({ curve: a, side }: Shore, { curve: b, side: other }: Shore): boolean {
  if (a.kind === 'cubic' || b.kind === 'cubic') return false
  if (a === b) return true
  if (a.kind !== 'arc' || b.kind !== 'arc') return false
  const radiusM = Math.abs(a.radius)
  if (side * Math.sign(a.radius) !== other * Math.sign(b.radius)) return false
  if (!(Math.abs(Math.abs(b.radius) - radiusM) <= ABOUT * radiusM)) return false
  const [ax, ay] = arcCentre(a)
  const [bx, by] = arcCentre(b)
  return norm(ax - bx, ay - by) <= ABOUT * radiusM
}

/**
 * Stretches that go on smoothly from a fan's own and bend less than the circle of radius r, as far as π r along the shore:
 * they can't come into a circle that touches the shore at any foot of the fan.
 * Source: a curve that bends no more than its tangent circle stays outside it for half a turn (comparison of curves,
 *   A. Schur 1921, from memory).
 */
function smoothlyJoined(fans: Fans, fan: Fan, r: number, bends: readonly Bend[]): readonly number[] {
  const joined: number[] = []
  if (fan.shore < 0 || bends[fan.shore]!.isTight) return joined
  const reachM = Math.PI * r - bends[fan.shore]!.lengthM
  const walk = (from: number, walkedM: number): void => {
    for (const next of fans.fans[from]!.neighbours) {
      if (next === fan.shore || bends[next]!.isTight || joined.includes(next)) continue
      const endM = walkedM + bends[next]!.lengthM
      // A neighbour never comes back into the circle within a quarter turn, however long it is.
      if (endM > reachM && from !== fan.shore) continue
      joined.push(next)
      if (endM <= reachM) walk(next, endM)
    }
  }
  walk(fan.shore, 0)
  return joined
}

/** Stretches that a fan's own goes on to: ones that never end its rays, and ones of which one place at most does. */
interface Ahead {
  readonly harmless: readonly number[]
  readonly touchOnce: readonly number[]
  /** How far from the end of the fan's own stretch the feet of rays are that those end, at most [m]. */
  readonly reachM: number
}

/** Turn from the foot's own direction within which a shore that goes on never comes back. */
const AHEAD_RAD = Math.PI / 2
/** The same toward the water and away from it for one that bends half as much. */
const AROUND_RAD = 0.75 * Math.PI
const ASIDE_RAD = Math.PI / 4
/** Corners of more than this in all are not blunt [rad]. */
const BLUNT_RAD = 0.1

/**
 * Stretches that a shore goes on to, however far, while it bends less than the circle of radius r and heads within a
 * quarter turn of what its foot does: they can't come into a circle that touches the shore at any foot of the fan.
 * Equation: with x along the tangent at the foot and φ the turn from there, d(sin φ)/dx = κ ≤ 1/r, so sin φ ≤ x/r, the
 *   slope of the circle. A corner away from the water makes φ less. Corners toward it by ε in all add at most ε to sin φ:
 *   where all bends less than a circle of 2 r, from x = 2 r ε on still sin φ ≤ x/2r + ε ≤ x/ρ for ρ ≤ r, so the rest stays
 *   out of a circle that touches what lies nearer, which touches that once. A shore of length ℓ that heads no further than α aside gets to x ≥ ℓ cos α.
 *   One that bends half as much may turn on toward the water, by three eighths of a turn, if never away by more than one: x + y,
 *   y square to x, then never falls, and is at least 4 r where φ is a quarter turn, beyond all of the circle, (1 + √2) r.
 * Source: own derivation.
 */
function aheadOf(
  fans: Fans,
  fan: Fan,
  r: number,
  bends: readonly Bend[],
  before: Int32Array,
  may: readonly number[],
): Ahead {
  const own = fan.shore >= 0 ? bends[fan.shore]! : undefined
  const harmless: number[] = []
  const touchOnce: number[] = []
  let reachM = 0
  // As many of those that are asked for as are still to come.
  let toCome = may.length
  if (own?.isTight) return { harmless, touchOnce, reachM }
  const goesBy = (isOnward: boolean): void => {
    const step = (i: number): number => (isOnward ? fans.next[i]! : before[i]!)
    const turnBefore = (i: number): number => fans.turn[isOnward ? before[i]! : i]!
    // The least and the greatest turn from any foot's direction so far, and at the place itself.
    const atFoot = own ? own.turnRad : fan.t0 - fan.t1
    let low = Math.min(0, atFoot)
    let high = Math.max(0, atFoot)
    let least = low
    let most = high
    // How far along the foot's direction the shore has got at least.
    let aheadM = 0
    let cornersRad = 0
    let isFirm = own?.isFirm ?? false
    let i = own ? step(fan.shore) : fan.neighbours[isOnward ? 1 : 0]!
    for (
      let isFirst = !own;
      i >= 0 && i !== fan.shore && toCome > 0 && !harmless.includes(i);
      i = step(i), isFirst = false
    ) {
      const bend = bends[i]!
      // About a corner its own turn is in the first place's already.
      const turn = isFirst ? 0 : turnBefore(i)
      if (turn > 0) cornersRad += turn
      isFirm ||= bend.isFirm
      low += turn
      high += turn
      const aside = Math.max(high, high + bend.turnRad, -low, -low - bend.turnRad)
      least = Math.min(least, low, low + bend.turnRad)
      most = Math.max(most, high, high + bend.turnRad)
      low += bend.turnRad
      high += bend.turnRad
      const isAhead = Math.max(-least, most) <= AHEAD_RAD || (!isFirm && -least <= ASIDE_RAD && most <= AROUND_RAD)
      if (bend.isTight || !isAhead || (cornersRad > 0 && (isFirm || cornersRad > BLUNT_RAD))) return
      if (may.includes(i)) toCome--
      if (2 * r * cornersRad <= aheadM) harmless.push(i)
      else {
        touchOnce.push(i)
        reachM = Math.max(reachM, own && own.turnRad >= 0 ? 4 * r * cornersRad : Infinity)
      }
      if (aside < AHEAD_RAD) aheadM += bend.lengthM * Math.cos(aside)
    }
  }
  goesBy(true)
  goesBy(false)
  return { harmless, touchOnce, reachM }
}

/** Speeds that are tried for how soon a foot is so far from an end: from what it is there. */
const SLOWER = [1, 4, 16] as const

/** A t from which on feet are further than a reach from the fan's first place, or its last one; its other end where none is known. */
function freeFrom(fans: Fans, fan: Fan, reachM: number, isFirst: boolean): number {
  const other = isFirst ? fan.t1 : fan.t0
  if (fan.shore < 0) return other
  const { curve } = fans.shores[fan.shore]!
  const end = isFirst ? fan.t0 : fan.t1
  evaluate(curve, end, jet)
  const { x, y } = jet
  const speed = norm(jet.dx, jet.dy)
  for (const slower of SLOWER) {
    const by = (2 * slower * reachM) / speed
    if (!(by < fan.t1 - fan.t0)) return other
    const t = isFirst ? end + by : end - by
    evaluate(curve, t, jet)
    if (norm(jet.x - x, jet.y - y) >= reachM) return t
  }
  return other
}

/** How much a stretch, which bends one way by at most a quarter turn, turns toward the water on its left [rad]. */
function turnOf(shore: Shore): number {
  if (shore.curve.kind === 'line') return 0
  const [ax, ay] = headingAt(shore, false)
  const [bx, by] = headingAt(shore, true)
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
}

const jet = newJet()

/** True where a stretch nowhere bends toward the water more than a curvature [1/m]. */
function bendsLess({ curve, t0, t1, side }: Shore, most: number): boolean {
  if (curve.kind === 'line') return true
  if (curve.kind === 'arc') return side / curve.radius <= most
  // κ = P′ × P″ / |P′|³: bounds of both on parts of the stretch, from the middle and the rate of change.
  const [ax, ay] = [secondX(curve, 0), secondY(curve, 0)]
  const [bx, by] = [secondX(curve, 1), secondY(curve, 1)]
  const fastest = Math.max(norm(ax, ay), norm(bx, by))
  const jerk = norm(bx - ax, by - ay)
  const holds = (a: number, b: number, depth: number): boolean => {
    const m = (a + b) / 2
    const h = (b - a) / 2
    evaluate(curve, m, jet)
    const { dx, dy } = jet
    const sx = ax + m * (bx - ax)
    const sy = ay + m * (by - ay)
    const speed = norm(dx, dy)
    const turn = side * (dx * sy - dy * sx)
    // d(P′ × P″)/dt = P′ × P‴.
    const turnMost = turn + h * (speed + h * fastest) * jerk
    const speedLeast = speed - h * fastest
    if (speedLeast > 0 && turnMost <= most * speedLeast ** 3) return true
    if (depth === 0 || turn > most * speed ** 3) return false
    return holds(a, m, depth - 1) && holds(m, b, depth - 1)
  }
  return holds(t0, t1, 7)
}
