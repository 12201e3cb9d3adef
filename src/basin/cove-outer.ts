import { type Fan, type Fans, type Ray, rayAt } from './cove-fan.ts'
import { addCovePiece, COVE_SUMS, type RayPiece } from './cove-inner.ts'
import { edgesNear, followRay, newCrossing } from './cove-ray.ts'
import { type Reach, reachOf, rivalsOf } from './cove-reach.ts'
import type { Partition } from './partition-types.ts'
import { integratePattern, mark } from './pattern-integral.ts'
import type { Plane } from './types.ts'

/** What integrating over a fan needs to know of it, whatever the level. */
export interface FanPlan {
  readonly fan: Fan
  readonly rivals: readonly number[]
  readonly near: readonly number[]
}

/** Finds what can end the rays of a fan, and what they can cross. */
export function planFan(p: Partition, fans: Fans, fan: Fan, r: number): FanPlan {
  return { fan, rivals: rivalsOf(fans, fan, r), near: edgesNear(p, fans, fan, r) }
}

const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }
const reach: Reach = { n: 0, by: 0 }
const crossing = newCrossing()
const NOWHERE: Plane = { atOrigin: 0, dx: 0, dy: 0 }
const piece: RayPiece = { from: 0, to: 0, floor: NOWHERE, ruling: NOWHERE, isFeature: false }
const SCALE_POWERS = COVE_SUMS.map((name) => (name === 'volume' ? 3 : name === 'shore' ? 1 : 2))

/** Adds what the cove changes along a fan, ray by ray in closed form; returns the estimated error of the volume [m³]. */
export function sumFan(
  p: Partition,
  fans: Fans,
  plan: FanPlan,
  r: number,
  levelM: number,
  wetted: boolean,
  sums: Float64Array,
): number {
  const { fan } = plan
  const length = fan.shore >= 0 ? p.edges[fans.shores[fan.shore]!.edge]!.length : r * (fan.t1 - fan.t0)
  const samples = Math.min(1000, 12 + Math.ceil((4 * length) / r))
  return integratePattern(
    (t, out) => sumRay(p, fans, plan, r, levelM, wetted, t, out),
    fan.t0,
    fan.t1,
    samples,
    SCALE_POWERS.map((power) => r ** power),
    sums,
  )
}

function sumRay(
  p: Partition,
  fans: Fans,
  plan: FanPlan,
  r: number,
  levelM: number,
  wetted: boolean,
  t: number,
  out: Float64Array | undefined,
): number {
  rayAt(fans, plan.fan, t, ray)
  reachOf(fans, plan.fan, plan.rivals, ray, r, reach)
  const { n, by } = reach
  followRay(p, plan.fan, plan.near, ray, n, crossing)
  let name = mark(0, by)
  for (let i = 0; i < crossing.cells.length; i++) {
    const cell = p.cells[crossing.cells[i]!]
    if (!cell) continue
    piece.from = crossing.from[i]!
    piece.to = i + 1 < crossing.from.length ? crossing.from[i + 1]! : n
    piece.floor = p.floor.pieces[cell.strip]!.plane
    piece.ruling = cell.plane
    piece.isFeature = cell.part === 'feature'
    const pattern = addCovePiece(ray, piece, r, levelM, wetted, out)
    name = mark(mark(name, crossing.edges[i] ?? -1), pattern)
  }
  return name
}
