import { coveRise } from './cove-depth.ts'
import { type Fans, fansOf, type Ray, rayAt } from './cove-fan.ts'
import { type FanPlan, planFan } from './cove-outer.ts'
import { followRay, newCrossing } from './cove-ray.ts'
import { type Reach, reachOf } from './cove-reach.ts'
import { rangeAlong } from './curve-linear.ts'
import type { Cell, Partition } from './partition-types.ts'
import { planeAt, slopeOf } from './planes.ts'
import { depthIn } from './surface-depth.ts'

const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }
const reach: Reach = { n: 0, by: 0 }
const crossing = newCrossing()
const known = new WeakMap<Partition, number>()

/**
 * Greatest depth below the datum where a cove rises from the floor [m].
 * Method: beyond the strip the depth is linear in each cell and greatest at a node or where the strip ends; within the
 *   strip along a ray f − rise is concave, greatest where rise′ = f′; the rays that could matter are sampled and refined.
 * Accuracy: 1e-9 m where the deepest rays are found by the sampling, 13 to a stretch.
 */
export function deepestUnderCove(p: Partition, r: number): number {
  let deepest = known.get(p)
  if (deepest === undefined) {
    deepest = search(p, r)
    known.set(p, deepest)
  }
  return deepest
}

function search(p: Partition, r: number): number {
  const fans = fansOf(p)
  const plans = fans.fans.map((fan) => planFan(p, fans, fan, r))
  let best = -Infinity
  for (const plan of plans) best = Math.max(best, deepestOnRay(p, fans, plan, (plan.fan.t0 + plan.fan.t1) / 2, r))
  const corners: { cell: Cell; x: number; y: number; depth: number }[] = []
  for (const cell of p.cells) {
    if (cell.maxDepthM <= best) continue
    for (const loop of cell.loops)
      for (const half of loop) {
        const node = p.edges[half >> 1]!.from
        const x = p.nodeX[node]!
        const y = p.nodeY[node]!
        corners.push({ cell, x, y, depth: planeAt(cell.plane, x, y) })
      }
  }
  corners.sort((a, b) => b.depth - a.depth)
  for (const { cell, x, y, depth } of corners) {
    if (depth <= best) break
    best = Math.max(best, depthIn(p, cell, x, y).depthM)
  }
  for (const plan of plans) if (couldBeat(p, fans, plan, r, best)) best = Math.max(best, refine(p, fans, plan, r))
  return best
}

/** True where the floor within r of a fan's shore comes deeper than the best so far. */
function couldBeat(p: Partition, fans: Fans, plan: FanPlan, r: number, best: number): boolean {
  const { fan } = plan
  if (plan.near.length > 0 || fan.shore < 0) return true
  const shore = fans.shores[fan.shore]!
  const { plane } = p.cells[shore.cell]!
  const [, most] = rangeAlong(shore.curve, shore.t0, shore.t1, { c: plane.atOrigin, gx: plane.dx, gy: plane.dy })
  return most + slopeOf(plane) * r > best
}

function refine(p: Partition, fans: Fans, plan: FanPlan, r: number): number {
  const { t0, t1 } = plan.fan
  const at = (t: number): number => deepestOnRay(p, fans, plan, t, r)
  const samples = 12
  let best = -Infinity
  let place = 0
  for (let i = 0; i <= samples; i++) {
    const value = at(t0 + ((t1 - t0) * i) / samples)
    if (value > best) {
      best = value
      place = i
    }
  }
  let lo = t0 + ((t1 - t0) * Math.max(0, place - 1)) / samples
  let hi = t0 + ((t1 - t0) * Math.min(samples, place + 1)) / samples
  for (let i = 0; i < 50; i++) {
    const a = lo + (hi - lo) / 3
    const b = hi - (hi - lo) / 3
    const va = at(a)
    const vb = at(b)
    best = Math.max(best, va, vb)
    if (va < vb) lo = a
    else hi = b
  }
  return best
}

/** Greatest depth along one ray, up to where another shore is nearer. */
function deepestOnRay(p: Partition, fans: Fans, plan: FanPlan, t: number, r: number): number {
  rayAt(fans, plan.fan, t, ray)
  reachOf(fans, plan.fan, plan.rivals, ray, r, reach)
  const { n } = reach
  followRay(p, plan.fan, plan.near, ray, n, crossing)
  let best = -Infinity
  crossing.cells.forEach((index, i) => {
    const cell = p.cells[index]
    if (!cell) return
    const from = crossing.from[i]!
    const to = crossing.from[i + 1] ?? n
    const { plane } = p.floor.pieces[cell.strip]!
    const fall = plane.dx * ray.nx + plane.dy * ray.ny
    // Where the cove's own slope makes up for the floor's: u/√(r² − u²) = −f′.
    const top = fall < 0 ? r + (r * fall) / Math.sqrt(1 + fall * fall) : to
    for (const at of [from, Math.min(Math.max(top, from), to), to]) {
      const x = ray.x + at * ray.nx
      const y = ray.y + at * ray.ny
      const f = planeAt(plane, x, y)
      const coved = Math.max(f - coveRise(at, r), Math.min(f, 0))
      best = Math.max(best, cell.part === 'feature' ? Math.min(coved, planeAt(cell.plane, x, y)) : coved)
    }
  })
  return best
}
