import { bracketedRoot } from '../base/index.ts'
import type { NearEdge } from './strip-plan.ts'
import {
  beyondEnd,
  beyondStart,
  beyondWidth,
  endBeside,
  endsBefore,
  endsFirst,
  gapBetween,
  type Trace,
  type Tracer,
  trace,
  traceEnd,
} from './strip-trace.ts'
import { HAIR, NEARLY, TIE } from './tolerance.ts'

/**
 * A place between two rays where what they meet changes: what ends them where that is asked for, else an edge.
 * Method: the root of whatever tells them apart, or halving.
 */
export function changeBetween(tracer: Tracer, a: Trace, b: Trace, ofEnds: boolean): number {
  if (ofEnds && (a.by !== b.by || a.how !== b.how)) return changeOfEnds(tracer, a, b)
  const odd = oddBetween(a.edges, b.edges)
  const cut = odd === undefined ? swapBetween(tracer, a, b) : passBetween(tracer, a, b, odd)
  if (cut !== undefined) return cut
  return halved(tracer, a, b, (t) => {
    const { name, edges } = trace(tracer, t)
    return odd === undefined ? name === a.name : countOf(edges, odd) === countOf(a.edges, odd)
  })
}

function changeOfEnds(tracer: Tracer, a: Trace, b: Trace): number {
  if (a.by !== b.by) {
    if (a.by === -1 || b.by === -1) {
      const cut = reachedBetween(tracer, a, b)
      if (cut !== undefined) return cut
    }
    const root = bracketedRoot((t) => endsBefore(tracer, a.by, b.by, t), a.t, b.t, 0)
    if (root.ok) return root.value.x
  }
  // Of these two alone: whatever else ends the rays between them shows next to the cut.
  const isFirst = (t: number): boolean => endsFirst(tracer, a.by, a.how, b.by, t)
  if (isFirst(a.t) && !isFirst(b.t)) return halved(tracer, a, b, isFirst)
  return halved(tracer, a, b, (t) => {
    const { by, how } = traceEnd(tracer, t)
    return by === a.by && how === a.how
  })
}

/** Where an edge that but one of two rays crosses comes or goes; nothing where that isn't found by a root. */
function passBetween(tracer: Tracer, a: Trace, b: Trace, odd: number): number | undefined {
  const near = nearOf(tracer, odd)
  // An end of the edge passes the ray.
  for (const isLast of [false, true]) {
    const cut = rootBetween(a, b, (t) => endBeside(tracer, near, isLast, t))
    if (cut !== undefined) return cut
  }
  const [inA, inB] = [a.edges.includes(odd), b.edges.includes(odd)]
  if (inA === inB) return undefined
  const inside = inA ? a.t : b.t
  // Or the edge passes the ray's end, or its start, where both rays' lines meet the edge.
  for (const beyond of [beyondEnd, beyondStart]) {
    if (!(beyond(tracer, near, inside) < 0)) continue
    const cut = rootBetween(a, b, (t) => beyond(tracer, near, t))
    if (cut !== undefined) return cut
  }
  return undefined
}

/** Where two edges that both rays cross take each other's place; nothing where that isn't found by a root. */
function swapBetween(tracer: Tracer, a: Trace, b: Trace): number | undefined {
  const i = a.edges.findIndex((edge, k) => edge !== b.edges[k])
  if (i < 0 || b.edges[i] === undefined) return undefined
  const one = nearOf(tracer, a.edges[i]!)
  const other = nearOf(tracer, b.edges[i]!)
  return rootBetween(a, b, (t) => gapBetween(tracer, one, other, t))
}

function nearOf(tracer: Tracer, index: number): NearEdge {
  return tracer.plan.near.find((edge) => edge.index === index)!
}

function rootBetween(a: Trace, b: Trace, f: (t: number) => number): number | undefined {
  // A root at the very end, or there but for rounding, tells of another change than the one between.
  const room = HAIR * (b.t - a.t)
  const root = bracketedRoot(f, a.t, b.t, 0)
  return root.ok && root.value.x > a.t + room && root.value.x < b.t - room ? root.value.x : undefined
}

/** Where something that holds at the first of two rays, and not at the second one, ends to hold. */
function halved(tracer: Tracer, a: Trace, b: Trace, isAsA: (t: number) => boolean): number {
  let lo = a.t
  let hi = b.t
  // So near to an end of the fan what lies between is too narrow to be kept, wherever the cut is.
  const { t0, t1 } = tracer.plan.fan
  const least = NEARLY * (t1 - t0)
  // Next to the cut rays are looked at a tie away: nearer than a part of that it need not be known.
  const close = (TIE * (t1 - t0)) / TIE_PARTS
  while (hi - lo > close && hi - t0 > least && t1 - lo > least) {
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
