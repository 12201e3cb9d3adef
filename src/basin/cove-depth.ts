import type { Cell, Partition } from './partition-types.ts'
import { planeAt } from './planes.ts'
import { boxDistance2, shoresOf } from './shores.ts'
import { type Foot, footOn } from './span.ts'

export interface CoveSample {
  readonly depthM: number
  readonly slope: number
  /** The stretch of shore that it stands at. */
  readonly by: number
}

const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** Distance to the nearest outline or island, where it is less than a reach; returns the stretch, −1 for none. */
export function shoreDistance(p: Partition, x: number, y: number, reachM: number, out: Foot): number {
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
  if (f - rise <= 0) return { depthM: coved, slope: 0, by }
  const q = (r - near.distance) / r
  const steep = q / Math.sqrt((1 - q) * (1 + q))
  const ux = near.distance > 0 ? (x - near.x) / near.distance : 0
  const uy = near.distance > 0 ? (y - near.y) / near.distance : 0
  return { depthM: coved, slope: Math.hypot(floor.dx + steep * ux, floor.dy + steep * uy), by }
}
