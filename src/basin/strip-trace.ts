import { type Fans, type Ray, rayAt } from './cove-fan.ts'
import { howReached, type Reach, reachOf, reachTo } from './cove-reach.ts'
import { evaluate, newJet } from './curve.ts'
import { zerosAlong } from './curve-linear.ts'
import type { Partition } from './partition-types.ts'
import { mark } from './pattern-integral.ts'
import { type Meetings, meetArc } from './ray-circle.ts'
import type { FanPlan, NearEdge } from './strip-plan.ts'
import { nearAt } from './strip-sweep.ts'
import { ROUND_RAD, TIE } from './tolerance.ts'

/** What tells a ray that starts on an edge and crosses none from one that meets no edge at all. */
const ON_EDGE = -2
/** An edge that a ray meets within this many grains of its start or end counts for none: rounding alone tells which side. */
const AT_END = 4

/** What one ray of a fan meets. Two with the same name meet the same, in the same order. */
export interface Trace {
  readonly t: number
  readonly by: number
  readonly how: number
  readonly end: number
  readonly edges: readonly number[]
  readonly at: readonly number[]
  /** True where an edge lies so near to the ray's start that it isn't counted: what the ray then is in may be beyond it. */
  readonly startsOnEdge: boolean
  readonly name: number
}

/** All that following rays of one fan needs. */
export interface Tracer {
  readonly p: Partition
  readonly fans: Fans
  readonly plan: FanPlan
  readonly widthM: number
  /** About a corner: the t of each edge that leaves it. Between two of them all rays begin in one cell. */
  readonly leaving: readonly number[]
}

const NOTHING: readonly number[] = []
const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }
const reach: Reach = { n: 0, by: 0, how: 0 }
const jet = newJet()
const met: Meetings = { first: 0, second: 0 }
let startsOnEdge = false

/** Follows the ray at t up to its end. */
export function trace({ p, fans, plan, widthM, leaving }: Tracer, t: number): Trace {
  rayAt(fans, plan.fan, t, ray)
  reachOf(fans, plan.fan, rivalsAt(plan, t), ray, widthM, reach)
  const { n, by } = reach
  const how = howOf(plan, by, reach.how)
  const edges: number[] = []
  const at: number[] = []
  const { near, placed, swath } = plan
  const { ends, rises } = placed
  const { x, y, nx, ny } = ray
  startsOnEdge = false
  for (const i of nearAt(fans, plan.fan, swath, placed, widthM, p.grainM, t)) {
    // Where its two ends lie beside the ray: most edges lie on one side.
    const a0 = (ends[4 * i + 1]! - y) * nx - (ends[4 * i]! - x) * ny
    const a1 = (ends[4 * i + 3]! - y) * nx - (ends[4 * i + 2]! - x) * ny
    if (a0 > 0 !== a1 > 0 || rises[i]! > 0) addHits(p, near[i]!, n, a0, a1, edges, at)
  }
  let name = mark(mark(0, by), how)
  for (const edge of edges) name = mark(name, edge)
  // Where an edge touches the shore the rays beside it cross it, though the one from there doesn't.
  if (startsOnEdge && edges.length === 0) name = mark(name, ON_EDGE)
  if (leaving.length > 0) {
    let passed = 0
    for (const at of leaving) if (t > at) passed++
    name = mark(name, passed)
  }
  return { t, by, how, end: n, edges, at, startsOnEdge, name }
}

/** What ends the ray at t, and nothing else. */
export function traceEnd({ fans, plan, widthM }: Tracer, t: number): Trace {
  rayAt(fans, plan.fan, t, ray)
  reachOf(fans, plan.fan, rivalsAt(plan, t), ray, widthM, reach)
  const { n, by } = reach
  const how = howOf(plan, by, reach.how)
  return { t, by, how, end: n, edges: NOTHING, at: NOTHING, startsOnEdge: false, name: mark(mark(0, by), how) }
}

function rivalsAt({ rivals, freeFrom, freeTo }: FanPlan, t: number): readonly number[] {
  return t >= freeFrom && t <= freeTo ? NOTHING : rivals
}

/** How the ray is ended, told apart only where that may be in more ways than one. */
function howOf({ touchOnce }: FanPlan, by: number, how: number): number {
  return how > 0 && touchOnce.includes(by) ? 0 : how
}

function addHits(
  p: Partition,
  near: NearEdge,
  end: number,
  a0: number,
  a1: number,
  edges: number[],
  at: number[],
): void {
  const { x0, y0, x1, y1 } = near
  const dx0 = x0 - ray.x
  const dy0 = y0 - ray.y
  const dx1 = x1 - ray.x
  const dy1 = y1 - ray.y
  const d0 = dx0 * ray.nx + dy0 * ray.ny
  const d1 = dx1 * ray.nx + dy1 * ray.ny
  const { curve } = near.edge
  if (curve.kind === 'line') {
    if ((d0 >= end && d1 >= end) || (d0 <= 0 && d1 <= 0)) return
    addHit((d0 * a1 - d1 * a0) / (a1 - a0), near.index, p.grainM, end, edges, at)
    return
  }
  // It stays in the triangle over its chord, at most as high as half the chord is long.
  const rise = Math.abs(x1 - x0) + Math.abs(y1 - y0)
  if (Math.min(d0, d1) - rise > end || Math.max(d0, d1) + rise < 0) return
  if ((a0 > rise && a1 > rise) || (a0 < -rise && a1 < -rise)) return
  if (curve.kind === 'arc' && Math.abs(curve.turn) > ROUND_RAD) {
    meetArc(curve, near.edge.t0, near.edge.t1, ray, false, met)
    addHit(met.first, near.index, p.grainM, end, edges, at)
    addHit(met.second, near.index, p.grainM, end, edges, at)
    return
  }
  const across = { c: ray.x * ray.ny - ray.y * ray.nx, gx: -ray.ny, gy: ray.nx }
  for (const t of zerosAlong(curve, near.edge.t0, near.edge.t1, across)) {
    evaluate(curve, t, jet)
    const n = (jet.x - ray.x) * ray.nx + (jet.y - ray.y) * ray.ny
    addHit(n, near.index, p.grainM, end, edges, at)
  }
}

function addHit(n: number, edge: number, grainM: number, end: number, edges: number[], at: number[]): void {
  if (!(n > AT_END * grainM && n < end - AT_END * grainM)) {
    if (Math.abs(n) <= AT_END * grainM) startsOnEdge = true
    return
  }
  at.push(n)
  edges.push(edge)
  let i = at.length - 1
  for (; i > 0 && at[i - 1]! > n; i--) {
    at[i] = at[i - 1]!
    edges[i] = edges[i - 1]!
  }
  at[i] = n
  edges[i] = edge
}

/** Less than zero where one thing ends the ray at t before another, more where after; between −1 and 1. */
export function endsBefore(tracer: Tracer, one: number, other: number, t: number): number {
  const { fans, plan, widthM } = tracer
  rayAt(fans, plan.fan, t, ray)
  return compared(lengthBy(tracer, one, widthM), lengthBy(tracer, other, widthM))
}

/** How much further out than the strip's width one thing ends the ray at t [m]; infinite where that is more than the width. */
export function beyondWidth(tracer: Tracer, by: number, t: number): number {
  const { fans, plan, widthM } = tracer
  rayAt(fans, plan.fan, t, ray)
  const over = lengthBy(tracer, by, widthM) - widthM
  return over <= widthM ? over : Infinity
}

/** Length of the ray just laid up to where one thing ends it, however far out another one does; past a limit it may be too long [m]. */
function lengthBy({ fans, plan }: Tracer, by: number, limitM: number): number {
  if (by === -1) return limitM
  if (by === -2) return ray.h1 < 0 ? -ray.h0 / ray.h1 : Infinity
  return reachTo(fans, plan.fan, by, ray, limitM)
}

/** How far to one side of the ray at t the first or the last end of an edge lies [m]. */
export function endBeside({ fans, plan }: Tracer, near: NearEdge, isLast: boolean, t: number): number {
  rayAt(fans, plan.fan, t, ray)
  return isLast
    ? (near.y1 - ray.y) * ray.nx - (near.x1 - ray.x) * ray.ny
    : (near.y0 - ray.y) * ray.nx - (near.x0 - ray.x) * ray.ny
}

/**
 * Whether one thing ends the ray at t, in a way, no later than another does; of one thing, whether in that way. Rounding of two
 * that tie counts for nothing.
 */
export function endsFirst(tracer: Tracer, one: number, how: number, other: number, t: number): boolean {
  const { fans, plan, widthM } = tracer
  rayAt(fans, plan.fan, t, ray)
  const limitM = one === other ? widthM : Math.min(widthM, lengthBy(tracer, other, widthM))
  const lengthM = lengthBy(tracer, one, limitM)
  return lengthM * (1 - TIE) <= limitM && (one < 0 ? 0 : howOf(plan, one, howReached())) === how
}

/** How much nearer an edge crosses the ray at t than the ray's end by as much as counts, less than 0 where it does, between −1 and 1. */
export function beyondEnd(tracer: Tracer, near: NearEdge, t: number): number {
  const { p, fans, plan, widthM } = tracer
  rayAt(fans, plan.fan, t, ray)
  reachOf(fans, plan.fan, rivalsAt(plan, t), ray, widthM, reach)
  return compared(crossingOf(near), reach.n - AT_END * p.grainM)
}

/** The same for the ray's start. */
export function beyondStart({ p, fans, plan }: Tracer, near: NearEdge, t: number): number {
  rayAt(fans, plan.fan, t, ray)
  return compared(AT_END * p.grainM, crossingOf(near))
}

/** Less than zero where one edge crosses the ray at t before another, more where after; between −1 and 1. */
export function gapBetween({ fans, plan }: Tracer, one: NearEdge, other: NearEdge, t: number): number {
  rayAt(fans, plan.fan, t, ray)
  return compared(crossingOf(one), crossingOf(other))
}

/** Distance at which an edge, a straight one drawn on, crosses the ray just laid [m]. */
function crossingOf(near: NearEdge): number {
  const { curve } = near.edge
  if (curve.kind === 'line') {
    const d0 = (near.x0 - ray.x) * ray.nx + (near.y0 - ray.y) * ray.ny
    const d1 = (near.x1 - ray.x) * ray.nx + (near.y1 - ray.y) * ray.ny
    const a0 = (near.y0 - ray.y) * ray.nx - (near.x0 - ray.x) * ray.ny
    const a1 = (near.y1 - ray.y) * ray.nx - (near.x1 - ray.x) * ray.ny
    return (d0 * a1 - d1 * a0) / (a1 - a0)
  }
  if (curve.kind === 'arc' && Math.abs(curve.turn) > ROUND_RAD) {
    meetArc(curve, near.edge.t0, near.edge.t1, ray, false, met)
    return met.first
  }
  let n = Infinity
  const across = { c: ray.x * ray.ny - ray.y * ray.nx, gx: -ray.ny, gy: ray.nx }
  for (const u of zerosAlong(curve, near.edge.t0, near.edge.t1, across)) {
    evaluate(curve, u, jet)
    n = Math.min(n, (jet.x - ray.x) * ray.nx + (jet.y - ray.y) * ray.ny)
  }
  return n
}

function compared(a: number, b: number): number {
  if (a === b) return 0
  if (!(Math.abs(a) < Infinity)) return 1
  if (!(Math.abs(b) < Infinity)) return -1
  return (a - b) / (Math.abs(a) + Math.abs(b))
}
