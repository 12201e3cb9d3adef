import { type Fans, fansOf, rayAt } from './cove-fan.ts'
import { type Reach, reachOf } from './cove-reach.ts'
import { type ArcCurve, evaluate, newJet } from './curve.ts'
import { zerosAlong } from './curve-linear.ts'
import type { Edge, Partition } from './partition-types.ts'
import type { StripPiece, StripRay } from './strip-types.ts'
import { HAIR, ROUND_RAD } from './tolerance.ts'
import { wallWidth } from './wall-width.ts'

/** An empty ray to write into. */
export function newStripRay(): StripRay {
  return { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0, at: [], end: 0 }
}

const jet = newJet()
// Rays come by the hundred from one partition.
let lastP: Partition | undefined
let fans: Fans = { shores: [], fans: [] }
let widthM = 0
const reach: Reach = { n: 0, by: 0, how: 0 }
const only: number[] = [0]

/** Writes the ray of a piece at t, between its ends, into `out`. */
export function rayIn(p: Partition, piece: StripPiece, t: number, out: StripRay): StripRay {
  if (p !== lastP) {
    lastP = p
    fans = fansOf(p)
    widthM = wallWidth(p)
  }
  rayAt(fans, piece.fan, t, out)
  if (piece.by === -2) out.end = -out.h0 / out.h1
  else if (piece.by < 0) out.end = widthM
  else {
    only[0] = piece.by
    reachOf(fans, piece.fan, only, out, widthM, reach)
    out.end = reach.n
  }
  const { edges } = piece
  out.at.length = edges.length
  for (let i = 0; i < edges.length; i++) {
    const e = edges[i]!
    // An edge that bends may be crossed twice: the first time nearer.
    let again = 0
    for (let k = 0; k < i; k++) if (edges[k] === e) again++
    out.at[i] = crossing(p.edges[e]!, out, again)
  }
  return out
}

function crossing(edge: Edge, ray: StripRay, again: number): number {
  const { curve } = edge
  if (curve.kind === 'line') {
    const ex = curve.x1 - curve.x0
    const ey = curve.y1 - curve.y0
    return ((curve.x0 - ray.x) * ey - (curve.y0 - ray.y) * ex) / (ray.nx * ey - ray.ny * ex)
  }
  let first = Infinity
  let second = Infinity
  const add = (at: number): void => {
    if (!(at > 0 && at < ray.end)) return
    if (at < first) {
      second = first
      first = at
    } else if (at < second) second = at
  }
  if (curve.kind === 'arc' && Math.abs(curve.turn) > ROUND_RAD) onCircle(edge, curve, ray, add)
  else {
    const across = { c: ray.x * ray.ny - ray.y * ray.nx, gx: -ray.ny, gy: ray.nx }
    for (const t of zerosAlong(curve, edge.t0, edge.t1, across)) {
      evaluate(curve, t, jet)
      add((jet.x - ray.x) * ray.nx + (jet.y - ray.y) * ray.ny)
    }
  }
  const at = again > 0 && second < Infinity ? second : first
  return at < Infinity ? at : ray.end
}

/** Where a ray meets the circle of an arc, on the arc's own stretch: on its side of the chord, for it is a quarter at most. */
function onCircle(edge: Edge, curve: ArcCurve, ray: StripRay, add: (at: number) => void): void {
  const cx = curve.x0 - curve.radius * Math.sin(curve.heading)
  const cy = curve.y0 + curve.radius * Math.cos(curve.heading)
  const vx = ray.x - cx
  const vy = ray.y - cy
  const along = vx * ray.nx + vy * ray.ny
  const off = vx * ray.ny - vy * ray.nx
  const half2 = curve.radius * curve.radius - off * off
  if (!(half2 >= 0)) return
  const half = Math.sqrt(half2)
  const middle = curve.heading + (curve.turn * (edge.t0 + edge.t1)) / 2
  const sign = Math.sign(curve.radius)
  const mx = sign * Math.sin(middle)
  const my = -sign * Math.cos(middle)
  // A hair more than the stretch, for its ends lie on the ends of pieces.
  const least =
    Math.abs(curve.radius) * Math.cos((curve.turn * (edge.t1 - edge.t0)) / 2) - HAIR * Math.abs(curve.radius)
  for (const at of [-along - half, -along + half]) {
    const x = vx + at * ray.nx
    const y = vy + at * ray.ny
    if (x * mx + y * my >= least) add(at)
  }
}
