import { evaluate, newJet } from './curve.ts'
import type { Stretch } from './faces.ts'
import { norm } from './norm.ts'
import { NEAR_RAD } from './tolerance.ts'

const jet = newJet()

/**
 * Counter-clockwise order of the stretches that leave a node, by where they cross one small circle about it: curves that
 * touch at the node and part later are told apart there, where their tangents would be equal. Two that are hardly apart
 * there are compared on the largest circle that both reach, for a short stretch may leave less than rounding between them.
 */
export function sortAround(halves: readonly number[], edges: readonly Stretch[]): number[] {
  let reach = Infinity
  for (const h of halves) reach = Math.min(reach, chordOf(edges[h >> 1]!))
  const keyed = halves.map((half) => ({ half, angle: directionAt(edges[half >> 1]!, half & 1, reach / 2) }))
  keyed.sort((p, q) => p.angle - q.angle)
  const count = keyed.length
  // Begin after a wide gap, so that no two that are near each other stand at both ends of the list.
  let start = 0
  while (start < count && angleFrom(keyed[(start + count - 1) % count]!.angle, keyed[start]!.angle) < NEAR_RAD) start++
  const order: typeof keyed = []
  for (let i = 0; i < count; i++) {
    const one = keyed[(start + i) % count]!
    let at = order.length
    while (
      at > 0 &&
      angleFrom(order[at - 1]!.angle, one.angle) < NEAR_RAD &&
      isAfter(order[at - 1]!.half, one.half, edges)
    )
      at--
    order.splice(at, 0, one)
  }
  return order.map((k) => k.half)
}

/** How far one direction is from another, either way [rad]. */
function angleFrom(a: number, b: number): number {
  const apart = Math.abs(a - b)
  return Math.min(apart, 2 * Math.PI - apart)
}

/** True where a leaves to the left of b, by the largest circle that both reach. */
function isAfter(a: number, b: number, edges: readonly Stretch[]): boolean {
  const p = edges[a >> 1]!
  const q = edges[b >> 1]!
  const reach = Math.min(chordOf(p), chordOf(q)) / 2
  return Math.sin(directionAt(p, a & 1, reach) - directionAt(q, b & 1, reach)) > 0
}

function chordOf(edge: Stretch): number {
  evaluate(edge.curve, edge.t0, jet)
  const x = jet.x
  const y = jet.y
  evaluate(edge.curve, edge.t1, jet)
  return norm(jet.x - x, jet.y - y)
}

/** Direction from an end of a stretch to its point at a given distance from there. */
function directionAt(edge: Stretch, backward: number, distance: number): number {
  const { curve, t0, t1 } = edge
  const start = backward ? t1 : t0
  const sign = backward ? -1 : 1
  if (curve.kind === 'line') return Math.atan2(sign * (curve.y1 - curve.y0), sign * (curve.x1 - curve.x0))
  if (curve.kind === 'arc') {
    const half = Math.asin(Math.min(1, distance / (2 * Math.abs(curve.radius))))
    const turn = sign * Math.sign(curve.turn) * half
    const heading = curve.heading + curve.turn * start + (backward ? Math.PI : 0) + turn
    return Math.atan2(Math.sin(heading), Math.cos(heading))
  }
  evaluate(curve, start, jet)
  const x = jet.x
  const y = jet.y
  // Newton on the distance from the node, halving where it would leave what is known.
  let lo = start
  let hi = backward ? t0 : t1
  let t = (lo + hi) / 2
  for (let i = 0; i < 60; i++) {
    evaluate(curve, t, jet)
    const dx = jet.x - x
    const dy = jet.y - y
    const off = Math.sqrt(dx * dx + dy * dy) - distance
    if (off < 0) lo = t
    else hi = t
    const along = (dx * jet.dx + dy * jet.dy) / (off + distance)
    const step = off / along
    if (Math.abs(hi - lo) < 1e-13 || Math.abs(step) < 1e-12) break
    const next = t - step
    t = Math.abs(next - lo) + Math.abs(next - hi) <= Math.abs(hi - lo) && next !== t ? next : (lo + hi) / 2
  }
  return Math.atan2(jet.y - y, jet.x - x)
}
