import { type Fans, fansOf, type Ray, rayAt } from './cove-fan.ts'
import { cellAt } from './depth-at.ts'
import { Memory } from './memory.ts'
import type { Partition } from './partition-types.ts'
import { divide, type Run } from './strip-divide.ts'
import { besideBend, footOf, leavingFrom, squareTo } from './strip-feet.ts'
import { planFans } from './strip-plan.ts'
import { type Tracer, traceEnd } from './strip-trace.ts'
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
    strip = widthM > 0 ? sweep(p, fansOf(p), widthM) : { widthM, pieces: [], strayM2: 0 }
    known.set(p, strip)
  }
  return strip
}

function sweep(p: Partition, fans: Fans, widthM: number): Strip {
  const pieces: StripPiece[] = []
  let strayM2 = 0
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
    for (let i = 1; i < stops.length; i++) strayM2 += divide(tracer, stops[i - 1]!, stops[i]!, runs)
    for (const run of broad(runs, fan.t0, fan.t1)) if (run.trace.end > 0) pieces.push(pieceOf(tracer, run))
  }
  return { widthM, pieces, strayM2 }
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
    if (plan.freeFrom < plan.freeTo) stops.push(plan.freeFrom, plan.freeTo)
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
