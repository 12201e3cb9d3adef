import { turnBetween } from './along-cubic.ts'
import { arcCentre, evaluate, newJet } from './curve.ts'
import { zerosAlong } from './curve-linear.ts'
import { cubicStrips } from './strips-of-cubic.ts'
import { NEARLY, SMOOTH_RAD } from './tolerance.ts'
import type { EdgeOrigin, Path, Point, Segment } from './types.ts'
import { type Leg, wallOf } from './wall-legs.ts'

/** A footprint, and how far it may lie from what is meant [m]. */
export interface Swept {
  readonly path: Path
  readonly offM: number
}

/** The same with the part of the outline that its edge is measured from. */
export interface WallStrip extends Swept {
  readonly measuredFrom: EdgeOrigin
}

type Vec = readonly [number, number]

/** A chain's end is carried on to the next wall where the outline turns by at least this much there [rad]. */
const CORNER_RAD = Math.PI / 6

const jet = newJet()

/**
 * Footprints that together cover the places to which normals of some segments of an outline lead within a width, on the
 * water's side: what normals of that length sweep up to the wall's centre of curvature, and a sector about each corner that juts into the water. So the ends are square to the wall; where the outline turns toward the water by 30° to 90° at an end, the strip runs on to the wall beyond, so that no
 * wedge stays between the two. Footprints may overlap, and may reach over the outline.
 * `segments` are indices of the outline's segments in order; all of them means all the way round.
 * Accuracy: lines and arcs to rounding; cubics within each footprint's `offM`.
 */
export function stripsAlong(outline: Path, segments: readonly number[], widthM: number): WallStrip[] {
  const { legs, side } = wallOf(outline)
  const chain = segments.map((i) => legs[i]).filter((leg) => leg !== undefined)
  if (chain.length === 0) return []
  const isWhole = segments.length === legs.length
  const strips: WallStrip[] = []
  const [ox, oy] = outline.start
  const beside = (point: Point, heading: Vec, by: number): Point => [
    point[0] - side * by * heading[1],
    point[1] + side * by * heading[0],
  ]
  // The next leg on from one, over what is too short to be any.
  const nextTo = (i: number, travel: 1 | -1): Leg | undefined => {
    for (let k = 1; k < legs.length; k++) {
      const leg = legs[(i + travel * k + k * legs.length) % legs.length]
      if (leg) return leg
    }
    return undefined
  }
  // A joint that is smooth but for its decimals leaves no sliver, whichever bench is on the other side: each strip starts where the
  // one before it ends.
  const startOf = (leg: Leg, before: Leg | undefined): Vec =>
    before && Math.abs(turnBetween(before.heading1, leg.heading0)) <= SMOOTH_RAD ? before.heading1 : leg.heading0
  let normal0 = startOf(chain[0]!, nextTo(legs.indexOf(chain[0]!), -1))
  chain.forEach((leg, i) => {
    const measuredFrom: EdgeOrigin = { kind: 'shore', segment: legs.indexOf(leg), widthM }
    for (const strip of stripsOf(leg, normal0, leg.heading1, side, widthM, [ox, oy]))
      strips.push({ ...strip, measuredFrom })
    const next = chain[i + 1] ?? (isWhole ? chain[0]! : undefined)
    if (!next) return
    const turn = side * turnBetween(leg.heading1, next.heading0)
    normal0 = startOf(next, leg)
    if (turn >= -SMOOTH_RAD) return
    const corner = leg.segment.to
    const path: Path = {
      start: corner,
      segments: [
        { to: beside(corner, leg.heading1, widthM) },
        { to: beside(corner, next.heading0, widthM), bulge: Math.tan((side * turn) / 4) },
        { to: corner },
      ],
    }
    strips.push({ path, offM: 0, measuredFrom: { ...measuredFrom, end: 1 } })
  })
  if (isWhole) return strips
  const first = chain[0]!
  const last = chain[chain.length - 1]!
  const before = nextTo(legs.indexOf(first), -1)
  const after = nextTo(legs.indexOf(last), 1)
  if (after) strips.push(...carriedOn(last, 1, after, turnBetween(last.heading1, after.heading0)))
  if (before) strips.push(...carriedOn(first, 0, before, turnBetween(before.heading1, first.heading0)))
  return strips

  /** The piece between the square end of a strip and the wall beyond: forward past a last point, backward past a first. */
  function carriedOn(leg: Leg, end: 0 | 1, beyond: Leg, turn: number): WallStrip[] {
    if (!(side * turn >= CORNER_RAD) || Math.cos(turn) <= NEARLY) return []
    const corner = end === 1 ? leg.segment.to : leg.from
    const heading = end === 1 ? leg.heading1 : leg.heading0
    const travel = end === 1 ? 1 : -1
    const away: Vec = [travel * heading[0], travel * heading[1]]
    const n: Vec = [-side * heading[1], side * heading[0]]
    const cx = corner[0] - ox
    const cy = corner[1] - oy
    const offset = { c: -(n[0] * cx + n[1] * cy) - widthM, gx: n[0], gy: n[1] }
    let run = widthM / Math.tan(CORNER_RAD)
    for (const t of zerosAlong(beyond.curve, 0, 1, offset)) {
      evaluate(beyond.curve, t, jet)
      const along = (jet.x - cx) * away[0] + (jet.y - cy) * away[1]
      if (along > 0) run = Math.min(run, along)
    }
    // A little past the wall, so that it is crossed and not just touched; dry land is cut off.
    run += widthM / 8
    const far: Point = [corner[0] + run * away[0], corner[1] + run * away[1]]
    const over = (p: Point): Point => [p[0] + widthM * n[0], p[1] + widthM * n[1]]
    const path: Path = { start: corner, segments: [{ to: far }, { to: over(far) }, { to: over(corner) }] }
    return [
      { path, offM: 0, measuredFrom: { kind: 'shore', segment: legs.indexOf(leg), widthM, end, isCarried: true } },
    ]
  }
}

/** What the normals of one segment sweep; those at its ends are given, for they may be a neighbour's. */
function stripsOf(leg: Leg, h0: Vec, h1: Vec, side: 1 | -1, widthM: number, origin: Point): Swept[] {
  const { curve, from, segment } = leg
  const beside = (p: Point, h: Vec): Point => [p[0] - side * widthM * h[1], p[1] + side * widthM * h[0]]
  const inner0 = beside(from, h0)
  const inner1 = beside(segment.to, h1)
  const offM = widthM * Math.abs(turnBetween(h0, leg.heading0))
  const close = (...back: Segment[]): Swept => ({ path: { start: from, segments: [segment, ...back] }, offM })
  if (curve.kind === 'line') return [close({ to: inner1 }, { to: inner0 }, { to: from })]
  if (curve.kind === 'cubic') return cubicStrips(leg, inner0, inner1, side, widthM, origin, offM)
  const bulge = Math.tan(curve.turn / 4)
  const kept = (curve.radius - side * widthM) / curve.radius
  if (kept > 0) return [close({ to: inner1 }, { to: inner0, bulge: -bulge }, { to: from })]
  // The width reaches the centre: all of the sector. Beyond the centre another place of the wall is nearer.
  const [x, y] = arcCentre(curve)
  return [close({ to: [x + origin[0], y + origin[1]] }, { to: from })]
}
