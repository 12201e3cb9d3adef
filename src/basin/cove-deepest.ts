import { shoreDistance } from './cove-depth.ts'
import { type Fan, type Fans, fansOf, type Ray, rayAt } from './cove-fan.ts'
import { type Reach, reachOf, rivalsOf } from './cove-reach.ts'
import { evaluate, newJet } from './curve.ts'
import { rangeAlong } from './curve-linear.ts'
import { cellAt } from './depth-at.ts'
import type { Partition } from './partition-types.ts'
import { depthIn } from './surface-depth.ts'

const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }
const reach: Reach = { n: 0, by: 0 }
const foot = { t: 0, x: 0, y: 0, distance: 0 }
const jet = newJet()
const known = new WeakMap<Partition, number>()

/**
 * Greatest depth below the datum where a cove rises from the floor [m].
 * Method: beyond the strip the depth is linear in each cell and its greatest value lies at a node or where the strip ends;
 *   within the strip along a ray f − rise is concave, greatest where rise′ = f′; the rays are sampled and refined.
 * Accuracy: 1e-9 m on lines and arcs.
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
  let best = -Infinity
  for (const edge of p.edges)
    for (const index of [edge.left, edge.right]) {
      if (index < 0) continue
      const cell = p.cells[index]!
      const f = { c: cell.plane.atOrigin, gx: cell.plane.dx, gy: cell.plane.dy }
      if (rangeAlong(edge.curve, edge.t0, edge.t1, f)[1] <= best) continue
      for (let i = 0; i <= 16; i++) {
        evaluate(edge.curve, edge.t0 + ((edge.t1 - edge.t0) * i) / 16, jet)
        best = Math.max(best, depthIn(p, cell, jet.x, jet.y).depthM)
      }
    }
  for (const fan of fans.fans) best = Math.max(best, deepestOnFan(p, fans, fan, r, best))
  return best
}

function deepestOnFan(p: Partition, fans: Fans, fan: Fan, r: number, floorOf: number): number {
  const rivals = rivalsOf(fans, fan, r)
  const at = (t: number): number => {
    rayAt(fans, fan, t, ray)
    reachOf(fans, fan, rivals, ray, r, reach)
    let most = -Infinity
    const along = (n: number): number => {
      const x = ray.x + n * ray.nx
      const y = ray.y + n * ray.ny
      const cell = cellAt(p, x, y)
      // A hair of distance on the far side of the strip's end would read as open floor; the depth there is the same.
      return cell < 0 || shoreDistance(p, x, y, r * 2, foot) < 0 ? -Infinity : depthIn(p, p.cells[cell]!, x, y).depthM
    }
    let lo = 0
    let hi = reach.n
    for (let i = 0; i < 40; i++) {
      const a = lo + (hi - lo) / 3
      const b = hi - (hi - lo) / 3
      if (along(a) < along(b)) lo = a
      else hi = b
    }
    most = Math.max(along((lo + hi) / 2), along(reach.n * (1 - 1e-12)))
    return most
  }
  const samples = 12
  let best = -Infinity
  let place = 0
  for (let i = 0; i <= samples; i++) {
    const value = at(fan.t0 + ((fan.t1 - fan.t0) * i) / samples)
    if (value > best) {
      best = value
      place = i
    }
  }
  if (best < floorOf - r) return best
  let lo = fan.t0 + ((fan.t1 - fan.t0) * Math.max(0, place - 1)) / samples
  let hi = fan.t0 + ((fan.t1 - fan.t0) * Math.min(samples, place + 1)) / samples
  for (let i = 0; i < 40; i++) {
    const a = lo + (hi - lo) / 3
    const b = hi - (hi - lo) / 3
    if (at(a) < at(b)) lo = a
    else hi = b
  }
  return Math.max(best, at((lo + hi) / 2))
}
