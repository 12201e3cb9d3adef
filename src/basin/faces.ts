import { sortAround } from './around-node.ts'
import type { Arrangement, RawEdge } from './arrangement.ts'
import { evaluate, newJet } from './curve.ts'
import { type AreaMoments, addMoments } from './edge-integrals.ts'
import { rootOf, unite } from './union.ts'

/** A closed walk along half-edges (2e along edge e, 2e + 1 against it), what it bounds on its left. */
export interface Loop {
  readonly halves: number[]
  readonly moments: AreaMoments
}

/** A region of the plane: its outer loop (none for the unbounded one) and the loops of what lies within. */
export interface Face {
  readonly outer: number
  readonly holes: number[]
}

export interface Faces {
  readonly loops: readonly Loop[]
  readonly faces: readonly Face[]
  /** Face on the left of each half-edge; face 0 is the unbounded one. */
  readonly faceOf: Int32Array
}

const jet = newJet()

/** The faces of an arrangement, or nothing where its topology doesn't close. */
export function facesOf(arrangement: Arrangement): Faces | undefined {
  const { edges, nodes } = arrangement
  const { loops, loopOf } = loopsOf(edges, nodes.x.length)
  const component = componentsOf(edges, nodes.x.length)
  const faces: Face[] = [{ outer: -1, holes: [] }]
  const faceOfLoop = new Int32Array(loops.length).fill(-1)
  // One loop of each component runs outside it: the one of least area. Going by the sign alone would lose slivers whose
  // area rounding has turned over.
  const around = new Map<number, number>()
  loops.forEach((loop, i) => {
    const root = component[edges[loop.halves[0]! >> 1]!.from]!
    const known = around.get(root)
    if (known === undefined || loop.moments.area < loops[known]!.moments.area) around.set(root, i)
  })
  const isAround = new Uint8Array(loops.length)
  for (const i of around.values()) isAround[i] = 1
  loops.forEach((_, i) => {
    if (isAround[i] === 1) return
    faceOfLoop[i] = faces.length
    faces.push({ outer: i, holes: [] })
  })
  const boxes = loops.map((loop) => boxOf(loop, edges))
  for (let i = 0; i < loops.length; i++) {
    if (faceOfLoop[i]! >= 0) continue
    const first = edges[loops[i]!.halves[0]! >> 1]!
    const x = nodes.x[first.from]!
    const y = nodes.y[first.from]!
    let best = -1
    for (let k = 0; k < loops.length; k++) {
      const other = loops[k]!
      const box = boxes[k]!
      if (isAround[k] === 1 || x < box[0] || x > box[2] || y < box[1] || y > box[3]) continue
      if (component[edges[other.halves[0]! >> 1]!.from] === component[first.from]) continue
      if (best >= 0 && loops[best]!.moments.area <= other.moments.area) continue
      if (isInside(other.halves, edges, nodes.x, nodes.y, x, y)) best = k
    }
    const face = best < 0 ? 0 : faceOfLoop[best]!
    faceOfLoop[i] = face
    faces[face]!.holes.push(i)
  }
  const faceOf = new Int32Array(2 * edges.length)
  for (let h = 0; h < faceOf.length; h++) faceOf[h] = faceOfLoop[loopOf[h]!]!
  // Euler: each component has two loops more than its edges less its nodes.
  let used = 0
  for (let n = 0; n < component.length; n++) if (component[n]! >= 0) used++
  if (loops.length !== edges.length - used + 2 * around.size) return undefined
  return { loops, faces, faceOf }
}

/** The closed walks along the edges of an arrangement, and which of them each half-edge is part of. */
export function loopsOf(edges: readonly Stretch[], nodeCount: number): { loops: Loop[]; loopOf: Int32Array } {
  return traceLoops(edges, nextHalves(edges, nodeCount))
}

/** For each half-edge the next one along the face on its left. */
function nextHalves(edges: readonly Stretch[], nodeCount: number): Int32Array {
  const out: number[][] = []
  for (let e = 0; e < edges.length; e++) {
    push(out, edges[e]!.from, 2 * e)
    push(out, edges[e]!.to, 2 * e + 1)
  }
  const next = new Int32Array(2 * edges.length)
  for (let n = 0; n < nodeCount; n++) {
    const halves = out[n]
    if (!halves) continue
    const sorted = halves.length > 2 ? sortAround(halves, edges) : halves
    // Arriving along h means leaving next to its twin, the first one clockwise from it.
    for (let i = 0; i < sorted.length; i++) {
      const before = sorted[(i + sorted.length - 1) % sorted.length]!
      next[sorted[i]! ^ 1] = before
    }
  }
  return next
}

function push(lists: number[][], node: number, half: number): void {
  const list = lists[node]
  if (list) list.push(half)
  else lists[node] = [half]
}

function traceLoops(edges: readonly Stretch[], next: Int32Array): { loops: Loop[]; loopOf: Int32Array } {
  const loopOf = new Int32Array(2 * edges.length).fill(-1)
  const loops: Loop[] = []
  const own = edges.map(({ curve, t0, t1 }) => {
    const moments: AreaMoments = { area: 0, areaX: 0, areaY: 0 }
    addMoments(curve, t0, t1, 1, moments)
    return moments
  })
  for (let start = 0; start < loopOf.length; start++) {
    if (loopOf[start]! >= 0) continue
    const halves: number[] = []
    const moments: AreaMoments = { area: 0, areaX: 0, areaY: 0 }
    for (let h = start; loopOf[h]! < 0; h = next[h]!) {
      loopOf[h] = loops.length
      halves.push(h)
      const { area, areaX, areaY } = own[h >> 1]!
      const sign = h & 1 ? -1 : 1
      moments.area += sign * area
      moments.areaX += sign * areaX
      moments.areaY += sign * areaY
    }
    loops.push({ halves, moments })
  }
  return { loops, loopOf }
}

/** For each node the smallest node joined to it by edges, −1 for one without any. */
function componentsOf(edges: readonly RawEdge[], nodeCount: number): Int32Array {
  const parent = new Int32Array(nodeCount).fill(-1)
  for (const { from, to } of edges) {
    if (parent[from]! < 0) parent[from] = from
    if (parent[to]! < 0) parent[to] = to
    unite(parent, from, to)
  }
  for (let n = 0; n < nodeCount; n++) if (parent[n]! >= 0) parent[n] = rootOf(parent, n)
  return parent
}

function boxOf(loop: Loop, edges: readonly RawEdge[]): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const h of loop.halves) {
    const { curve, t0, t1 } = edges[h >> 1]!
    for (const t of [t0, t1]) {
      evaluate(curve, t, jet)
      box[0] = Math.min(box[0], jet.x)
      box[1] = Math.min(box[1], jet.y)
      box[2] = Math.max(box[2], jet.x)
      box[3] = Math.max(box[3], jet.y)
    }
  }
  return box
}

/** What `isInside` needs of an edge. */
export type Stretch = Pick<RawEdge, 'curve' | 't0' | 't1' | 'from' | 'to'>

/** True where a place lies inside loops of edges, by counting crossings of the ray to the right. */
export function isInside(
  halves: readonly number[],
  edges: readonly Stretch[],
  nodeX: ArrayLike<number>,
  nodeY: ArrayLike<number>,
  x: number,
  y: number,
): boolean {
  let inside = false
  for (const h of halves) {
    const edge = edges[h >> 1]!
    const y0 = nodeY[edge.from]!
    const y1 = nodeY[edge.to]!
    if (y0 > y === y1 > y) continue
    const x0 = nodeX[edge.from]!
    const x1 = nodeX[edge.to]!
    if (x >= Math.max(x0, x1)) continue
    if (x < Math.min(x0, x1) || isRightOf(edge, x0, y0, x1, y1, x, y)) inside = !inside
  }
  return inside
}

/** True where an edge that rises or falls past y passes to the right of (x, y). */
function isRightOf(edge: Stretch, x0: number, y0: number, x1: number, y1: number, x: number, y: number): boolean {
  if (edge.curve.kind === 'line') return x0 + ((y - y0) * (x1 - x0)) / (y1 - y0) > x
  let lo = edge.t0
  let hi = edge.t1
  const rising = y1 > y0
  let px = x0
  for (let i = 0; i < 60 && hi - lo > 1e-16; i++) {
    const t = (lo + hi) / 2
    evaluate(edge.curve, t, jet)
    px = jet.x
    if (jet.y < y === rising) lo = t
    else hi = t
    // Monotone in x too: stop as soon as the whole bracket is to one side.
  }
  return px > x
}
