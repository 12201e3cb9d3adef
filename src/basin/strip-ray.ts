import { type Fans, fansOf, rayAt } from './cove-fan.ts'
import { type Reach, reachOf } from './cove-reach.ts'
import { type ArcCurve, evaluate, newJet } from './curve.ts'
import { zerosAlong } from './curve-linear.ts'
import type { Edge, Partition } from './partition-types.ts'
import { type Meetings, meetArc } from './ray-circle.ts'
import type { StripPiece, StripRay } from './strip-types.ts'
import { NEARLY, ROUND_RAD } from './tolerance.ts'
import { wallWidth } from './wall-width.ts'

/** An empty ray to write into. */
export function newStripRay(): StripRay {
  return { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0, at: [], end: 0 }
}

/** A meeting within this many grains of the foot is no crossing (see `AT_END` in strip-trace.ts). */
const AT_FOOT = 4

const jet = newJet()
const met: Meetings = { first: 0, second: 0 }
// Rays come by the hundred from one partition.
let lastP: Partition | undefined
let fans: Fans = { shores: [], fans: [], strayRad: 0, next: new Int32Array(0), turn: new Float64Array(0) }
let widthM = 0
let grainM = 0
const reach: Reach = { n: 0, by: 0, how: 0 }
const only: number[] = [0]

/** Writes the ray of a piece at t, between its ends, into `out`. */
export function rayIn(p: Partition, piece: StripPiece, t: number, out: StripRay): StripRay {
  layEnd(p, piece, t, out)
  for (let i = 0; i < piece.edges.length; i++) cross(p, piece, i, out)
  return out
}

/** The same with no crossing but that of the piece's edge j, or none where there is no such edge; the others are left as they are. */
export function rayTo(p: Partition, piece: StripPiece, t: number, j: number, out: StripRay): StripRay {
  layEnd(p, piece, t, out)
  if (j < piece.edges.length) cross(p, piece, j, out)
  return out
}

function layEnd(p: Partition, piece: StripPiece, t: number, out: StripRay): void {
  if (p !== lastP) {
    lastP = p
    fans = fansOf(p)
    widthM = wallWidth(p)
    grainM = p.grainM
  }
  rayAt(fans, piece.fan, t, out)
  if (piece.by === -2) out.end = -out.h0 / out.h1
  else if (piece.by < 0) out.end = widthM
  else {
    only[0] = piece.by
    reachOf(fans, piece.fan, only, out, widthM, reach)
    if (reach.by < 0) reachBeside(piece, t)
    out.end = reach.n
  }
  // Beside a handle on its own point a ray has all but no width, and nothing tells where it ends; where rounding says that its
  // neighbours go away from it behind the shore, they meet it at its foot.
  if (!(out.end <= widthM)) out.end = widthM
  else if (out.end < 0) out.end = 0
  const { length } = piece.edges
  if (out.at.length !== length) out.at.length = length
}

function cross(p: Partition, { edges }: StripPiece, i: number, out: StripRay): void {
  const e = edges[i]!
  const edge = p.edges[e]!
  // An edge that bends may be crossed twice: the first time nearer.
  let again = 0
  let isTwice = false
  if (edge.curve.kind !== 'line') {
    for (let k = 0; k < i; k++) if (edges[k] === e) again++
    isTwice = again > 0 || edges.indexOf(e, i + 1) >= 0
  }
  out.at[i] = crossing(edge, out, again, isTwice)
}

const probe = newStripRay()

/** All but at a joint rounding hides what ends a ray: as a little further on, up to the middle of its piece. */
function reachBeside({ fan, t0, t1 }: StripPiece, t: number): void {
  const middle = (t0 + t1) / 2
  let away = (NEARLY / 16) * (fan.t1 - fan.t0)
  for (let k = 0; k < 8 && reach.by < 0; k++, away *= 16) {
    const beside = t < middle ? Math.min(t + away, middle) : Math.max(t - away, middle)
    rayAt(fans, fan, beside, probe)
    reachOf(fans, fan, only, probe, widthM, reach)
    if (beside === middle) return
  }
}

function crossing(edge: Edge, ray: StripRay, again: number, isTwice: boolean): number {
  const { curve } = edge
  if (curve.kind === 'line') {
    const ex = curve.x1 - curve.x0
    const ey = curve.y1 - curve.y0
    const at = ((curve.x0 - ray.x) * ey - (curve.y0 - ray.y) * ex) / (ray.nx * ey - ray.ny * ex)
    if (at >= 0 && at <= ray.end) return at
    // Beside its end, or all but along it, the line meets the ray far off: never beyond the edge's own ends nor the ray's.
    const d0 = (curve.x0 - ray.x) * ray.nx + (curve.y0 - ray.y) * ray.ny
    const d1 = (curve.x1 - ray.x) * ray.nx + (curve.y1 - ray.y) * ray.ny
    const within = Number.isNaN(at) ? d0 : Math.min(Math.max(at, Math.min(d0, d1)), Math.max(d0, d1))
    return Math.min(Math.max(within, 0), ray.end)
  }
  if (curve.kind === 'arc' && Math.abs(curve.turn) > ROUND_RAD) {
    // A ray that crosses it once may pass its end nearer by: a hair more of the arc is for rays that miss it but for rounding.
    meetAhead(curve, edge, ray, isTwice)
    if (!isTwice && met.first === Infinity) meetAhead(curve, edge, ray, true)
  } else {
    met.first = Infinity
    met.second = Infinity
    const across = { c: ray.x * ray.ny - ray.y * ray.nx, gx: -ray.ny, gy: ray.nx }
    for (const t of zerosAlong(curve, edge.t0, edge.t1, across)) {
      evaluate(curve, t, jet)
      const at = (jet.x - ray.x) * ray.nx + (jet.y - ray.y) * ray.ny
      if (!(at > 0)) continue
      met.second = Math.max(met.first, Math.min(met.second, at))
      met.first = Math.min(met.first, at)
    }
  }
  // At either end of its piece a ray may pass an edge's own end, or begin there: rounding hides that they meet.
  if (!(met.first < ray.end)) {
    lookBeside(edge, ray)
    if (met.first === Infinity || beside.offM <= AT_FOOT * grainM) return Math.min(Math.max(beside.at, 0), ray.end)
  }
  // An edge that leaves the shore at the ray's foot is met there but for rounding, and is crossed where it bends back.
  if (!isTwice && met.first <= AT_FOOT * grainM && met.second < ray.end) met.first = met.second
  const at = again > 0 && met.second < ray.end ? met.second : met.first
  return Math.min(at, ray.end)
}

/** The end of an edge that lies nearest to a ray: how far along it, and how far off. */
const beside = { at: 0.5, offM: 0.5 }

function lookBeside({ curve, t0, t1 }: Edge, ray: StripRay): void {
  beside.offM = Infinity
  for (const t of [t0, t1]) {
    evaluate(curve, t, jet)
    const dx = jet.x - ray.x
    const dy = jet.y - ray.y
    const offM = Math.abs(ray.nx * dy - ray.ny * dx)
    if (offM >= beside.offM) continue
    beside.offM = offM
    beside.at = ray.nx * dx + ray.ny * dy
  }
}

/** Leaves in `met` where a ray meets an arc beyond its foot. */
function meetAhead(curve: ArcCurve, { t0, t1 }: Edge, ray: StripRay, isGenerous: boolean): void {
  meetArc(curve, t0, t1, ray, isGenerous, met)
  if (met.first > 0) return
  met.first = met.second
  met.second = Infinity
}
