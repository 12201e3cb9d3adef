import { type Ray, rayAt } from './cove-fan.ts'
import { changeBetween } from './strip-change.ts'
import { type Trace, type Tracer, trace } from './strip-trace.ts'
import { HAIR, NEARLY, TIE } from './tolerance.ts'

/** A stretch of t in which all rays meet the same. */
export interface Run {
  readonly t0: number
  t1: number
  readonly trace: Trace
}

/** A stretch with the rays that were followed next to both its ends. */
interface Open {
  readonly t0: number
  readonly first: Trace
  readonly t1: number
  readonly last: Trace
}

/**
 * Cuts between two stops, and as many more for each edge that a ray there meets. Where a ray is ended now by one thing and now
 * by another as rounding will have it there is no end of changes.
 */
const CUTS = 64
const CUTS_TO_EDGE = 2

const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }

/**
 * Divides a stretch between two stops where three rays inside it don't meet the same, the widest part first. Adds its runs,
 * and returns the area over which it was left open what the rays meet [m²].
 */
export function divide(tracer: Tracer, t0: number, t1: number, runs: Run[]): number {
  const inset = HAIR * (t1 - t0)
  const first = trace(tracer, t0 + inset)
  const middle = trace(tracer, (t0 + t1) / 2)
  const last = trace(tracer, t1 - inset)
  if (first.name === middle.name && middle.name === last.name) {
    put(runs, t0, t1, middle)
    return 0
  }
  const { fan } = tracer.plan
  let cuts = CUTS + CUTS_TO_EDGE * (first.edges.length + middle.edges.length + last.edges.length)
  let strayM2 = 0
  const open: Open[] = [
    { t0, first, t1: middle.t, last: middle },
    { t0: middle.t, first: middle, t1, last },
  ]
  const done: Run[] = []
  while (open.length > 0) {
    const part = takeWidest(open)
    // In a sliver rounding may make two ends of a ray take turns without end: the shorter one holds for all of it.
    const isSliver = part.t1 - part.t0 < 4 * NEARLY * (fan.t1 - fan.t0)
    if (part.first.name === part.last.name || isSliver || cuts === 0) {
      if (part.first.name !== part.last.name && !isSliver) strayM2 += areaOf(tracer, part)
      done.push({ t0: part.t0, t1: part.t1, trace: part.first.end <= part.last.end ? part.first : part.last })
      continue
    }
    cuts--
    cutOnce(tracer, part, open, done)
  }
  done.sort((a, b) => a.t0 - b.t0)
  for (const run of done) put(runs, run.t0, run.t1, run.trace)
  return strayM2
}

function takeWidest(open: Open[]): Open {
  let at = 0
  for (let i = 1; i < open.length; i++) if (open[i]!.t1 - open[i]!.t0 > open[at]!.t1 - open[at]!.t0) at = i
  const widest = open[at]!
  open[at] = open[open.length - 1]!
  open.pop()
  return widest
}

function cutOnce(tracer: Tracer, { t0, first, t1, last }: Open, open: Open[], done: Run[]): void {
  const least = TIE * (tracer.plan.fan.t1 - tracer.plan.fan.t0)
  const insetAt = (at: number): number => Math.max(least, HAIR * Math.min(at - t0, t1 - at))
  const isInside = (at: number): boolean => at - insetAt(at) > first.t && at + insetAt(at) < last.t
  const ofEnds = first.by !== last.by || first.how !== last.how
  let cut = changeBetween(tracer, first, last, ofEnds)
  // Two shores that go on smoothly from one another are as near to a ray at the end already: more may change between.
  if (ofEnds && !isInside(cut)) cut = changeBetween(tracer, first, last, false)
  if (!isInside(cut)) {
    done.push({ t0, t1: cut, trace: first }, { t0: cut, t1, trace: last })
    return
  }
  const inset = insetAt(cut)
  open.push(
    { t0, first, t1: cut, last: trace(tracer, cut - inset) },
    { t0: cut, first: trace(tracer, cut + inset), t1, last },
  )
}

/** Area that the rays of a stretch sweep beyond where both at its ends meet the same [m²]. */
function areaOf({ fans, plan }: Tracer, { t0, first, t1, last }: Open): number {
  const end = Math.max(first.end, last.end)
  const { h0, h1 } = rayAt(fans, plan.fan, first.t, ray)
  const isAlike = first.edges.length === last.edges.length && first.edges.every((edge, i) => edge === last.edges[i])
  return (t1 - t0) * Math.max(h0, h0 + h1 * end) * (isAlike ? Math.abs(first.end - last.end) : end)
}

function put(runs: Run[], t0: number, t1: number, found: Trace): void {
  const last = runs[runs.length - 1]
  if (last?.trace.name === found.name) last.t1 = t1
  else if (t1 > t0) runs.push({ t0, t1, trace: found })
}
