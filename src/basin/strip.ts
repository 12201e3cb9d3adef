import { bracketedRoot } from '../base/index.ts'
import { type Fans, fansOf, type Ray, rayAt } from './cove-fan.ts'
import { cellAt } from './depth-at.ts'
import { Memory } from './memory.ts'
import type { Partition } from './partition-types.ts'
import { besideBend, footOf, leavingFrom, squareTo } from './strip-feet.ts'
import { planFans } from './strip-plan.ts'
import {
  beyondWidth,
  crossesAt,
  endBeside,
  endsBefore,
  type Trace,
  type Tracer,
  trace,
  traceEnd,
} from './strip-trace.ts'
import type { Strip, StripPiece } from './strip-types.ts'
import { HAIR, NEARLY, TIE } from './tolerance.ts'
import { wallWidth } from './wall-width.ts'

const known = new Memory<Partition, Strip>()

/**
 * The strip of water along the shores that a wall changes; nothing for an upright one. Remembered for each partition.
 * Method: fans are cut at the feet of all nodes near by, then wherever two rays inside meet different things, at the root
 *   of what tells them apart.
 */
export function stripOf(p: Partition): Strip {
  let strip = known.get(p)
  if (!strip) {
    const widthM = wallWidth(p)
    strip = { widthM, pieces: widthM > 0 ? piecesOf(p, fansOf(p), widthM) : [] }
    known.set(p, strip)
  }
  return strip
}

function piecesOf(p: Partition, fans: Fans, widthM: number): StripPiece[] {
  const pieces: StripPiece[] = []
  for (const plan of planFans(p, fans, widthM)) {
    const { fan } = plan
    const tracer: Tracer = { p, fans, plan, widthM, leaving: leavingFrom(fan, plan.near) }
    if (plan.near.length === 0 && plan.rivals.length === 0 && fan.cell >= 0) {
      // Nothing in the way: no ray meets anything.
      pieces.push({ fan, t0: fan.t0, t1: fan.t1, by: -1, cells: [fan.cell], edges: [] })
      continue
    }
    const runs: Run[] = []
    const stops = stopsOf(tracer)
    for (let i = 1; i < stops.length; i++) divide(tracer, stops[i - 1]!, stops[i]!, runs)
    for (const run of broad(runs, fan.t0, fan.t1)) if (run.trace.end > 0) pieces.push(pieceOf(tracer, run))
  }
  return pieces
}

/** A stretch of t in which all rays meet the same. */
interface Run {
  readonly t0: number
  t1: number
  readonly trace: Trace
}

/** Runs without those so narrow that they are rounding of a root; the one before takes their place. */
function broad(runs: readonly Run[], t0: number, t1: number): Run[] {
  const least = 4 * NEARLY * (t1 - t0)
  const kept: Run[] = []
  let from = t0
  for (const run of runs) {
    const last = kept[kept.length - 1]
    if (run.t1 - run.t0 < least) {
      if (last) last.t1 = run.t1
    } else if (last?.trace.name === run.trace.name) last.t1 = run.t1
    else kept.push({ ...run, t0: from })
    from = kept[kept.length - 1]?.t1 ?? t0
  }
  return kept
}

/** Places of a fan to cut or to look at: its ends, feet of nodes, changes of what ends the rays. */
function stopsOf(tracer: Tracer): number[] {
  const { p, fans, plan, widthM, leaving } = tracer
  const { fan, near, rivals } = plan
  const stops = [fan.t0, fan.t1, ...leaving]
  const nodes = new Set<number>()
  for (const edge of near) {
    for (const node of [edge.edge.from, edge.edge.to]) {
      if (nodes.has(node)) continue
      nodes.add(node)
      const t = footOf(fans, fan, p.nodeX[node]!, p.nodeY[node]!, widthM)
      if (t !== undefined) stops.push(t)
    }
    squareTo(fans, fan, edge, stops)
    if (edge.edge.curve.kind !== 'line') besideBend(fans, fan, edge, widthM, stops)
  }
  if (rivals.length > 0) {
    const length = fan.shore >= 0 ? p.edges[fans.shores[fan.shore]!.edge]!.length : widthM * (fan.t1 - fan.t0)
    const samples = Math.min(1000, 12 + Math.ceil((4 * length) / widthM))
    const inset = HAIR * (fan.t1 - fan.t0)
    // At a corner so blunt that hardly a ray ends at its other side those few still cross the strip.
    const least = NEARLY * (fan.t1 - fan.t0)
    const [isCorner0, isCorner1] = cornersOf(tracer)
    let last = traceEnd(tracer, fan.t0 + (isCorner0 ? least : inset))
    for (let i = isCorner0 ? 0 : 1; i <= (isCorner1 ? samples + 1 : samples); i++) {
      const t =
        i === 0
          ? fan.t0 + inset
          : i < samples
            ? fan.t0 + ((fan.t1 - fan.t0) * i) / samples
            : fan.t1 - (i === samples ? inset : least)
      const next = traceEnd(tracer, t)
      if (next.name !== last.name) stops.push(last.t, next.t)
      last = next
    }
  }
  const inside = stops.filter((t) => t >= fan.t0 && t <= fan.t1).sort((a, b) => a - b)
  const apart = TIE * (fan.t1 - fan.t0)
  return inside.filter((t, i) => i === 0 || t - inside[i - 1]! > apart)
}

/** Whether the shore has a corner at the first and the last foot of a fan along it. */
function cornersOf({ p, fans: { shores }, plan: { fan } }: Tracer): [boolean, boolean] {
  if (fan.shore < 0) return [false, false]
  const edgeOf = (shore: number) => p.edges[shores[shore]!.edge]!
  const goesOn = (node: number): boolean =>
    fan.neighbours.some((other) => edgeOf(other).from === node || edgeOf(other).to === node)
  const { from, to } = edgeOf(fan.shore)
  return [!goesOn(from), !goesOn(to)]
}

/** Divides a stretch between two stops where three rays inside it don't meet the same. */
function divide(tracer: Tracer, t0: number, t1: number, runs: Run[]): void {
  const inset = HAIR * (t1 - t0)
  const first = trace(tracer, t0 + inset)
  const middle = trace(tracer, (t0 + t1) / 2)
  const last = trace(tracer, t1 - inset)
  if (first.name === middle.name && middle.name === last.name) {
    put(runs, t0, t1, middle)
    return
  }
  // Edges that fan out from one node change one by one.
  const depth = 40 + tracer.plan.near.length
  split(tracer, t0, first, middle.t, middle, runs, depth)
  split(tracer, middle.t, middle, t1, last, runs, depth)
}

function split(tracer: Tracer, t0: number, first: Trace, t1: number, last: Trace, runs: Run[], depth: number): void {
  // In a sliver rounding may make two ends of a ray take turns without end: the shorter one holds for all of it.
  if (first.name === last.name || t1 - t0 < 4 * NEARLY * (tracer.plan.fan.t1 - tracer.plan.fan.t0)) {
    put(runs, t0, t1, first.end <= last.end ? first : last)
    return
  }
  const least = TIE * (tracer.plan.fan.t1 - tracer.plan.fan.t0)
  const insetAt = (at: number): number => Math.max(least, HAIR * Math.min(at - t0, t1 - at))
  const isInside = (at: number): boolean => at - insetAt(at) > first.t && at + insetAt(at) < last.t
  const ofEnds = first.by !== last.by || first.how !== last.how
  let cut = changeBetween(tracer, first, last, ofEnds)
  // Two shores that go on smoothly from one another are as near to a ray at the end already: more may change between.
  if (ofEnds && !isInside(cut)) cut = changeBetween(tracer, first, last, false)
  const inset = insetAt(cut)
  if (depth === 0 || !isInside(cut)) {
    put(runs, t0, cut, first)
    put(runs, cut, t1, last)
    return
  }
  const before = trace(tracer, cut - inset)
  const after = trace(tracer, cut + inset)
  split(tracer, t0, first, cut, before, runs, depth - 1)
  split(tracer, cut, after, t1, last, runs, depth - 1)
}

function put(runs: Run[], t0: number, t1: number, found: Trace): void {
  const last = runs[runs.length - 1]
  if (last?.trace.name === found.name) last.t1 = t1
  else if (t1 > t0) runs.push({ t0, t1, trace: found })
}

/**
 * A place between two rays where what they meet changes: what ends them where that is asked for, else an edge. The root of
 * what tells them apart, or halving.
 */
function changeBetween(tracer: Tracer, a: Trace, b: Trace, ofEnds: boolean): number {
  if (ofEnds && a.by !== b.by) {
    if (a.by === -1 || b.by === -1) {
      const cut = reachedBetween(tracer, a, b)
      if (cut !== undefined) return cut
    }
    const root = bracketedRoot((t) => endsBefore(tracer, a.by, b.by, t), a.t, b.t, 0)
    if (root.ok) return root.value.x
  }
  const odd = oddBetween(a.edges, b.edges)
  if (!ofEnds && odd !== undefined) {
    const near = tracer.plan.near.find((edge) => edge.index === odd)!
    // A root at the very end, or there but for rounding, tells of another change than the one between.
    const room = HAIR * (b.t - a.t)
    const rootOf = (f: (t: number) => number): number | undefined => {
      const root = bracketedRoot(f, a.t, b.t, 0)
      return root.ok && root.value.x > a.t + room && root.value.x < b.t - room ? root.value.x : undefined
    }
    // An end of the edge passes the ray.
    for (const isLast of [false, true]) {
      const cut = rootOf((t) => endBeside(tracer, near, isLast, t))
      if (cut !== undefined) return cut
    }
    // Or the edge passes the ray's end, where both rays' lines meet the edge.
    const [inA, inB] = [a.edges.includes(odd), b.edges.includes(odd)]
    if (inA !== inB && crossesAt(tracer, near, inA ? a.t : b.t) < 0) {
      const cut = rootOf((t) => crossesAt(tracer, near, t))
      if (cut !== undefined) return cut
    }
  }
  const isAsA = (t: number): boolean => {
    if (ofEnds && (a.by !== b.by || a.how !== b.how)) {
      const { by, how } = traceEnd(tracer, t)
      return by === a.by && how === a.how
    }
    const { name, edges } = trace(tracer, t)
    return ofEnds || odd === undefined ? name === a.name : countOf(edges, odd) === countOf(a.edges, odd)
  }
  let lo = a.t
  let hi = b.t
  // So near to an end of the fan what lies between is too narrow to be kept, wherever the cut is.
  const { t0, t1 } = tracer.plan.fan
  const least = NEARLY * (t1 - t0)
  for (let i = 0; i < 52 && hi - t0 > least && t1 - lo > least; i++) {
    const m = (lo + hi) / 2
    if (!(m > lo && m < hi)) break
    if (isAsA(m)) lo = m
    else hi = m
  }
  return (lo + hi) / 2
}

/** An edge that one ray crosses more often than another. */
function oddBetween(a: readonly number[], b: readonly number[]): number | undefined {
  const isOdd = (e: number): boolean => countOf(a, e) !== countOf(b, e)
  return a.find(isOdd) ?? b.find(isOdd)
}

function countOf(list: readonly number[], e: number): number {
  let count = 0
  for (const one of list) if (one === e) count++
  return count
}

/** Share of a tie that a cut may be off by. */
const TIE_PARTS = 64

/**
 * Where what ends one of two rays sooner than the strip's width is as far out as that; nothing where that isn't found.
 * Method: beside a corner a rival's distance grows with that from the corner and soon has no end, so the corner is closed in on by
 *   its own scale until the distance is known at both rays; from there on it is nearly straight.
 */
function reachedBetween(tracer: Tracer, a: Trace, b: Trace): number | undefined {
  const { t0, t1 } = tracer.plan.fan
  const by = a.by === -1 ? b.by : a.by
  const over = (t: number): number => beyondWidth(tracer, by, t)
  let lo = a.t
  let hi = b.t
  let atLo = over(lo)
  let atHi = over(hi)
  if (atLo > 0 === atHi > 0) return undefined
  const close = (TIE * (t1 - t0)) / TIE_PARTS
  while (atLo === Infinity || atHi === Infinity) {
    const m = lo - t0 < t1 - hi ? t0 + Math.sqrt((lo - t0) * (hi - t0)) : t1 - Math.sqrt((t1 - lo) * (t1 - hi))
    if (!(m - lo > close && hi - m > close)) return undefined
    const atM = over(m)
    if (atM > 0 === atLo > 0) {
      lo = m
      atLo = atM
    } else {
      hi = m
      atHi = atM
    }
  }
  const root = bracketedRoot(over, lo, hi, close)
  return root.ok ? root.value.x : undefined
}

const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }

/** A run with the cells that its rays pass. */
function pieceOf({ p, fans, plan }: Tracer, { t0, t1, trace: middle }: Run): StripPiece {
  const { fan } = plan
  const { t, end, by, edges, at, startsOnEdge } = middle
  rayAt(fans, fan, t, ray)
  const cellNear = (n: number): number => cellAt(p, ray.x + n * ray.nx, ray.y + n * ray.ny)
  let cell = fan.cell >= 0 ? fan.cell : cellNear(HAIR * Math.min(end, at[0] ?? end))
  if (startsOnEdge && edges.length === 0) {
    const found = cellNear(end / 2)
    if (found >= 0) cell = found
  }
  const cells = [cell]
  edges.forEach((e, i) => {
    const edge = p.edges[e]!
    if (edge.left === cell) cell = edge.right
    else if (edge.right === cell) cell = edge.left
    else {
      // Along an edge, or through a joint that the grain closed: ask the plan.
      const found = cellNear((at[i]! + (at[i + 1] ?? end)) / 2)
      if (found >= 0) cell = found
      // What the ray was in before, but for a start of some grains, lies on the edge's other side.
      if (found >= 0 && edge.left === found) cells[i] = edge.right
      else if (found >= 0 && edge.right === found) cells[i] = edge.left
    }
    cells.push(cell)
  })
  return { fan, t0, t1, by, cells, edges }
}
