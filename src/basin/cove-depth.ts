import { evaluate, newJet } from './curve.ts'
import type { Cell, Partition } from './partition-types.ts'
import { planeAt } from './planes.ts'
import { boxDistance2, shoresOf } from './shores.ts'
import { type Foot, footOn } from './span.ts'

export interface CoveSample {
  readonly depthM: number
  readonly slope: number
  /** The stretch of shore that it stands at. */
  readonly by: number
  /** A vector square to its surface, toward the water; z up. */
  readonly normal: readonly [number, number, number]
}

const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** Distance to the nearest outline or island, where it is less than a reach; returns the stretch, −1 for none. */
function shoreDistance(p: Partition, x: number, y: number, reachM: number, out: Foot): number {
  let best = reachM
  let found = -1
  const shores = shoresOf(p)
  for (let i = 0; i < shores.length; i++) {
    const shore = shores[i]!
    if (boxDistance2(shore, x, y) >= best * best) continue
    footOn(shore.curve, shore.t0, shore.t1, x, y, foot)
    if (foot.distance < best) {
      best = foot.distance
      found = i
      out.t = foot.t
      out.x = foot.x
      out.y = foot.y
      out.distance = foot.distance
    }
  }
  return found
}

/** Rise of a cove of radius r at distance n from the wall [m]. */
export function coveRise(n: number, r: number): number {
  if (n >= r) return 0
  // r − √(r² − (r − n)²) without the loss of digits near n = r.
  const q = (r - n) / r
  return (r * q * q) / (1 + Math.sqrt((1 - q) * (1 + q)))
}

const jet = newJet()
const near: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** Depth and slope where the cove of the wall rules over the floor and the features; nothing elsewhere. */
export function coveAt(p: Partition, cell: Cell, x: number, y: number): CoveSample | undefined {
  const { wall } = p.shape
  if (wall.kind !== 'cove') return undefined
  const r = wall.radiusM
  const by = shoreDistance(p, x, y, r, near)
  if (by < 0) return undefined
  const floor = p.floor.pieces[cell.strip]!.plane
  const f = planeAt(floor, x, y)
  const rise = coveRise(near.distance, r)
  const coved = Math.max(f - rise, Math.min(f, 0))
  const ruling = cell.feature >= 0 ? planeAt(cell.plane, x, y) : Infinity
  if (coved >= ruling || coved === f) return undefined
  if (f - rise <= 0) return { depthM: coved, slope: 0, by, normal: [0, 0, 1] }
  const cos = Math.max(0, (r - near.distance) / r)
  const sin = Math.sqrt(Math.max(0, (1 - cos) * (1 + cos)))
  const [ux, uy] = inward(p, by, x, y)
  const gx = floor.dx * sin + cos * ux
  const gy = floor.dy * sin + cos * uy
  return { depthM: coved, slope: Math.hypot(gx, gy) / sin, by, normal: [gx, gy, sin] }
}

/** The way from the shore to a place; at the shore itself, square to it. */
function inward(p: Partition, by: number, x: number, y: number): [number, number] {
  if (near.distance > p.grainM) return [(x - near.x) / near.distance, (y - near.y) / near.distance]
  const { curve, side } = shoresOf(p)[by]!
  evaluate(curve, near.t, jet)
  const speed = Math.hypot(jet.dx, jet.dy) || 1
  return [(-side * jet.dy) / speed, (side * jet.dx) / speed]
}
