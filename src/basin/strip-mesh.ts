import { fansOf } from './cove-fan.ts'
import type { EdgeVertices } from './edge-chains.ts'
import type { Partition } from './partition-types.ts'
import type { PlanPoints } from './plan-points.ts'
import type { Sides } from './plan-remainder.ts'
import type { PlanTriangles } from './plan-triangles.ts'
import { isCrease } from './strip-rings.ts'
import type { FanRun, Gap, KnotRun, Station } from './strip-stations.ts'

/**
 * Cuts the strip into triangles, gap by gap and cell by cell. Whatever border it has within a cell goes to `sides` the
 * other way round, so that what is left of the cell closes with it whether or not the two fit; crossings of inner edges
 * go to their edges; the vertices along each shore's edge are returned.
 */
export function meshStrip(
  p: Partition,
  runs: readonly FanRun[],
  points: PlanPoints,
  edges: EdgeVertices,
  sides: Sides,
  out: PlanTriangles,
): void {
  const { shores } = fansOf(p)
  for (const { stations } of runs)
    for (const station of stations)
      if (station.ray < 0) {
        station.ray = out.rays.length / 2
        out.rays.push(station.nx, station.ny)
      }
  for (const { fan, stations, gaps } of runs) {
    const shore = fan.shore >= 0 ? shores[fan.shore]! : undefined
    for (let i = 0; i < gaps.length; i++) {
      const gap = gaps[i]
      const first = stations[i]!
      const last = stations[i + 1]!
      if (gap) meshGap(gap, points, edges, sides, out)
      if (shore) passShore(shore.cell, gap, first.v[0]!, last.v[0]!, sides)
      if (gap && first.isEvent) flank(first, gap, gap.atA, false, sides)
      if (gap && last.isEvent) flank(last, gap, gap.atB, true, sides)
    }
    if (shore) edges.layShore(shore.edge, feetOf(stations, shore.side > 0))
    for (let i = 0; i < stations.length; i++) if (stations[i]!.isEvent) edges.layAlong(stations[i]!)
  }
}

/** The side of a gap that lies on the shore, where the shore's own cell isn't the one that the rays begin in. */
function passShore(cell: number, gap: Gap | undefined, from: number, to: number, sides: Sides): void {
  if (from === to || gap?.piece.cells[0] === cell) return
  sides.put(cell, from, to)
  if (gap) sides.put(gap.piece.cells[0]!, to, from)
}

/** The feet of rays along a shore, each once, in the shore's own direction. */
function feetOf(stations: readonly Station[], isForward: boolean): number[] {
  const feet: number[] = []
  for (let i = 0; i < stations.length; i++) {
    const v = stations[i]!.v[0]!
    if (i === 0 || v !== feet[feet.length - 1]) feet.push(v)
  }
  return isForward ? feet : feet.reverse()
}

/** Borders of a gap along one of its rays. The gap on the other side puts the same the other way round where it has the same cell. */
function flank(station: Station, gap: Gap, at: readonly number[], isEnd: boolean, sides: Sides): void {
  const { cells } = gap.piece
  for (let j = 0; j < cells.length; j++)
    for (let i = at[j]!; i < at[j + 1]!; i++) {
      const u = station.v[i]!
      const v = station.v[i + 1]!
      if (isEnd) sides.put(cells[j]!, v, u)
      else sides.put(cells[j]!, u, v)
    }
}

function meshGap(gap: Gap, points: PlanPoints, edges: EdgeVertices, sides: Sides, out: PlanTriangles): void {
  const { piece, a, b, atA, atB, knots } = gap
  const { cells } = piece
  // Cells that neither ray comes to lie beyond the strip's end here.
  let last = cells.length - 1
  while (last > 0 && atA[last] === atA[last + 1] && atB[last] === atB[last + 1]) last--
  for (let j = 0; j <= last; j++) {
    const below = j > 0 ? knots?.[j - 1] : undefined
    const above = j < last ? knots?.[j] : undefined
    if (below?.v.length || above?.v.length) {
      // Along an edge that leaves one ray for the other, the ray that has less of the cell goes on along the edge.
      lay(left, a, atA[j]!, atA[j + 1]!, b, atB[j]!, atB[j + 1]!, below, above, true)
      lay(right, b, atB[j]!, atB[j + 1]!, a, atA[j]!, atA[j + 1]!, below, above, false)
      zip(points, left, 0, left.v.length - 1, right, 0, right.v.length - 1, cells[j]!, out)
    } else if (a.code === b.code && a.v[0] !== b.v[0]) ladder(points, a, b, atA[j]!, atA[j + 1]!, cells[j]!, out)
    else zip(points, a, atA[j]!, atA[j + 1]!, b, atB[j]!, atB[j + 1]!, cells[j]!, out)
    let u = a.v[atA[j + 1]!]!
    if (above && j < last)
      for (const v of above.v) {
        edges.cross(piece.edges[j]!, u, v, cells[j]!, cells[j + 1]!)
        u = v
      }
    const v = b.v[atB[j + 1]!]!
    if (u === v) continue
    if (j < last) edges.cross(piece.edges[j]!, u, v, cells[j]!, cells[j + 1]!)
    else {
      sides.put(cells[j]!, u, v)
      edges.endAlong(cells[j]!, u, v)
      // Of the two fans that meet on a cut locus one tells.
      if (piece.by >= 0 && u < v) out.creases.push(u, v, cells[j]!)
    }
  }
}

/** Vertices to zip in order, with what they are named; their ray, or the ray of each. */
interface Chain {
  readonly v: readonly number[]
  readonly code: readonly number[]
  readonly ray: number
  readonly rays?: readonly number[]
}

const left = { v: [] as number[], code: [] as number[], ray: -1, rays: [] as number[] }
const right = { v: [] as number[], code: [] as number[], ray: -1, rays: [] as number[] }

/**
 * Writes one side of a cell between two rays: the vertices of its own ray, and those on the edges below and above where
 * these are nearer to the shore on the other ray (below) or further out (above).
 */
function lay(
  out: typeof left,
  own: Station,
  own0: number,
  own1: number,
  other: Station,
  other0: number,
  other1: number,
  below: KnotRun | undefined,
  above: KnotRun | undefined,
  isFirst: boolean,
): void {
  out.v.length = 0
  out.code.length = 0
  out.rays.length = 0
  if (below?.v.length && own.n[own0]! > other.n[other0]!) {
    put(out, other.v[other0]!, -1, other.ray)
    putRun(out, below, !isFirst)
  }
  for (let i = own0; i <= own1; i++) put(out, own.v[i]!, own.code[i]!, own.ray)
  if (above?.v.length && own.n[own1]! < other.n[other1]!) {
    putRun(out, above, isFirst)
    put(out, other.v[other1]!, -1, other.ray)
  }
}

function put(out: typeof left, v: number, code: number, ray: number): void {
  out.v.push(v)
  out.code.push(code)
  out.rays.push(ray)
}

function putRun(out: typeof left, { v, code, rays }: KnotRun, isForward: boolean): void {
  for (let i = 0; i < v.length; i++) {
    const k = isForward ? i : v.length - 1 - i
    put(out, v[k]!, code[k]!, rays[k]!)
  }
}

/** Triangles between two rays with the same places, each strip of two rings cut by its shorter diagonal. */
function ladder(
  { x, y }: PlanPoints,
  a: Chain,
  b: Chain,
  from: number,
  to: number,
  cell: number,
  out: PlanTriangles,
): void {
  for (let i = from; i < to; i++) {
    const u = a.v[i]!
    const v = b.v[i]!
    const w = b.v[i + 1]!
    const z = a.v[i + 1]!
    const dx = x[z]! - x[v]!
    const dy = y[z]! - y[v]!
    const ex = x[w]! - x[u]!
    const ey = y[w]! - y[u]!
    if (dx * dx + dy * dy < ex * ex + ey * ey) {
      out.add(u, v, z, a.ray, b.ray, a.ray, cell)
      out.add(z, v, w, a.ray, b.ray, b.ray, cell)
    } else {
      out.add(u, v, w, a.ray, b.ray, b.ray, cell)
      out.add(u, w, z, a.ray, b.ray, a.ray, cell)
    }
  }
}

/** Triangles between two runs of vertices; the same ring or crease on both is joined, the rest goes by the shorter diagonal. */
function zip(
  points: PlanPoints,
  a: Chain,
  a0: number,
  a1: number,
  b: Chain,
  b0: number,
  b1: number,
  cell: number,
  out: PlanTriangles,
): void {
  const { x, y } = points
  let i = a0
  let k = b0
  // Next places that both sides name.
  let ni = i
  let nk = k
  while (i < a1 || k < b1) {
    if (i >= ni && k >= nk) {
      nextPair(a, i, a1, b, k, b1)
      ni = pairA
      nk = pairB
      if (ni < a1 && isCrease(a.code[ni]!)) out.creases.push(a.v[ni]!, b.v[nk]!, cell)
    }
    let stepA = k >= nk
    if (i < ni && k < nk) {
      const ai = a.v[i]!
      const bk = b.v[k]!
      const an = a.v[i + 1]!
      const bn = b.v[k + 1]!
      const dx = x[an]! - x[bk]!
      const dy = y[an]! - y[bk]!
      const ex = x[bn]! - x[ai]!
      const ey = y[bn]! - y[ai]!
      stepA = dx * dx + dy * dy < ex * ex + ey * ey
    }
    const u = a.v[i]!
    const v = b.v[k]!
    const rayU = rayAt(a, i)
    const rayV = rayAt(b, k)
    const w = stepA ? a.v[++i]! : b.v[++k]!
    if (u === v || v === w || w === u) continue
    out.add(u, v, w, rayU, rayV, stepA ? rayAt(a, i) : rayAt(b, k), cell)
  }
}

function rayAt({ ray, rays }: Chain, i: number): number {
  return rays === undefined ? ray : rays[i]!
}

let pairA = 0
let pairB = 0

/** Writes the next places of both runs that have the same name, or their ends. */
function nextPair(a: Chain, i: number, a1: number, b: Chain, k: number, b1: number): void {
  for (let m = i + 1; m < a1; m++) {
    const code = a.code[m]!
    if (code < 0) continue
    for (let q = k + 1; q < b1; q++)
      if (b.code[q] === code) {
        pairA = m
        pairB = q
        return
      }
  }
  pairA = a1
  pairB = b1
}
