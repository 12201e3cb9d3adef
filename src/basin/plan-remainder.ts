import type { Edge } from './partition-types.ts'
import type { PlanPoints } from './plan-points.ts'
import type { PlanTriangles } from './plan-triangles.ts'
import { Room } from './room.ts'
import { triangulate } from './triangulate.ts'

const cellRoom = new Room(Int32Array)
const fromRoom = new Room(Int32Array)
const toRoom = new Room(Int32Array)
const slotRoom = new Room(Int32Array)
const openRoom = new Room(Uint8Array)
const lastRoom = new Room(Int32Array)
const beforeRoom = new Room(Int32Array)
const placeRoom = new Room(Int32Array)

/**
 * Directed sides, each with the region that it bounds on its left. Opposite ones cancel out. It works in room that the next
 * one takes over.
 */
export class Sides {
  private count = 0
  private cell = cellRoom.atLeast(0)
  private from = fromRoom.atLeast(0)
  private to = toRoom.atLeast(0)

  put(cell: number, from: number, to: number): void {
    if (cell < 0 || from === to) return
    if (this.count >= this.cell.length) this.grow()
    this.cell[this.count] = cell
    this.from[this.count] = from
    this.to[this.count] = to
    this.count++
  }

  private grow(): void {
    const count = 2 * this.count + 1024
    this.cell = cellRoom.grown(count)
    this.from = fromRoom.grown(count)
    this.to = toRoom.grown(count)
  }

  /** A stretch of an edge's chain, for the cells on both of its sides. */
  putChain({ left, right }: Edge, chain: readonly number[], first: number, last: number): void {
    for (let i = first; i < last; i++) {
      this.put(left, chain[i]!, chain[i + 1]!)
      this.put(right, chain[i + 1]!, chain[i]!)
    }
  }

  /** Sides of each cell that have no opposite, as pairs of vertices. */
  openByCell(cells: number): number[][] {
    const { count, cell, from, to } = this
    let size = 256
    while (size < 2 * count) size *= 2
    // Sides of one cell between the same two vertices hang together; the last one that nothing has cancelled comes first.
    const first = slotRoom.filled(size, -1)
    const next = beforeRoom.atLeast(count)
    const isOpen = openRoom.atLeast(count)
    for (let i = 0; i < count; i++) {
      const u = from[i]!
      const v = to[i]!
      let slot =
        Math.imul(Math.min(u, v), 0x9e3779b1) ^ Math.imul(Math.max(u, v), 0x85ebca6b) ^ Math.imul(cell[i]!, 0xc2b2ae35)
      slot = (slot ^ (slot >>> 15)) & (size - 1)
      let before = -1
      let k = first[slot]!
      while (k >= 0 && (cell[k] !== cell[i] || from[k] !== v || to[k] !== u)) {
        before = k
        k = next[k]!
      }
      if (k >= 0) {
        isOpen[k] = 0
        isOpen[i] = 0
        if (before >= 0) next[before] = next[k]!
        else first[slot] = next[k]!
      } else {
        isOpen[i] = 1
        next[i] = first[slot]!
        first[slot] = i
      }
    }
    const open: number[][] = Array.from({ length: cells }, () => [])
    for (let i = 0; i < count; i++) if (isOpen[i]) open[cell[i]!]!.push(from[i]!, to[i]!)
    return open
  }
}

/** No wider than so many times what vertices are merged within, a hole is two pieces that overlap: nobody sees it either way. */
const HAIRS = 8

/** Fills what sides bound within one cell with triangles that have exactly those sides. */
export function fillRemainder(pairs: readonly number[], points: PlanPoints, cell: number, out: PlanTriangles): void {
  const rings = loopsOf(pairs, points)
  if (rings.length === 0) return
  const areas = rings.map((ring) => areaOf(ring, points))
  const outers = rings.flatMap((_, i) => (areas[i]! > 0 ? [i] : []))
  const groups: number[][][] = outers.map((i) => [rings[i]!])
  rings.forEach((ring, i) => {
    if (areas[i]! > 0) return
    const isSliver = -areas[i]! <= HAIRS * points.mergeM * lengthOf(ring, points)
    const home = isSliver ? -1 : smallestAround(ring, rings, areas, outers, points)
    // What lies in nothing is where two pieces overlap by a hair: it is filled as it stands, facing down.
    if (home < 0) groups.push([ring])
    else groups[home]!.push(ring)
  })
  for (const group of groups) {
    const turned = areaOf(group[0]!, points) < 0
    const own = triangulate(turned ? group.map((ring) => [...ring].reverse()) : group, points.x, points.y)
    for (let i = 0; i < own.length; i += 3)
      out.add(own[i]!, own[i + (turned ? 2 : 1)]!, own[i + (turned ? 1 : 2)]!, -1, -1, -1, cell)
  }
}

/** Sides chained into closed loops; where several go on, the one that keeps the region on the left undivided. */
function loopsOf(pairs: readonly number[], points: PlanPoints): number[][] {
  // The last side that leaves each vertex, and the one before it.
  const last = lastRoom.filled(points.x.length, -1)
  const before = beforeRoom.atLeast(pairs.length)
  for (let i = 0; i < pairs.length; i += 2) {
    before[i] = last[pairs[i]!]!
    last[pairs[i]!] = i
  }
  const placeOf = placeRoom.filled(points.x.length, -1)
  const loops: number[][] = []
  for (let i = 0; i < pairs.length; i += 2) {
    const start = pairs[i]!
    for (let side = last[start]!; side >= 0; side = last[start]!) {
      last[start] = before[side]!
      const ring = [start]
      let from = start
      let at = pairs[side + 1]!
      while (at !== start) {
        ring.push(at)
        const next = last[at]!
        if (next < 0) break
        const taken = before[next]! < 0 ? next : leftmost(from, at, pairs, next, before, points)
        if (taken === next) last[at] = before[next]!
        else {
          let k = next
          while (before[k] !== taken) k = before[k]!
          before[k] = before[taken]!
        }
        from = at
        at = pairs[taken + 1]!
      }
      pushSimple(ring, placeOf, loops)
    }
  }
  return loops
}

/** Cuts a loop that comes by a vertex twice into loops that don't. `placeOf` is −1 for each vertex before and after. */
function pushSimple(ring: number[], placeOf: Int32Array, loops: number[][]): void {
  let path: number[] = []
  for (const v of ring) {
    const known = placeOf[v]!
    if (known >= 0) {
      const loop = known === 0 ? path : path.splice(known)
      if (known === 0) path = []
      for (const w of loop) placeOf[w] = -1
      if (loop.length > 2) loops.push(loop)
    }
    placeOf[v] = path.length
    path.push(v)
  }
  for (const w of path) placeOf[w] = -1
  if (path.length > 2) loops.push(path)
}

/** Of the sides on from a vertex, by the last of them, the first one clockwise from the way back. */
function leftmost(
  from: number,
  at: number,
  pairs: readonly number[],
  last: number,
  before: Int32Array,
  { x, y }: PlanPoints,
): number {
  const back = Math.atan2(y[from]! - y[at]!, x[from]! - x[at]!)
  let best = last
  let least = Infinity
  for (let side = last; side >= 0; side = before[side]!) {
    const v = pairs[side + 1]!
    let turn = back - Math.atan2(y[v]! - y[at]!, x[v]! - x[at]!)
    if (turn <= 0) turn += 2 * Math.PI
    if (turn <= least) {
      least = turn
      best = side
    }
  }
  return best
}

function areaOf(ring: readonly number[], { x, y }: PlanPoints): number {
  const ox = x[ring[0]!]!
  const oy = y[ring[0]!]!
  let sum = 0
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!
    const b = ring[i + 1 < ring.length ? i + 1 : 0]!
    sum += (x[a]! - ox) * (y[b]! - oy) - (x[b]! - ox) * (y[a]! - oy)
  }
  return sum / 2
}

function lengthOf(ring: readonly number[], { x, y }: PlanPoints): number {
  let sum = 0
  let a = ring[ring.length - 1]!
  for (const b of ring) {
    sum += Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!)
    a = b
  }
  return sum
}

/** Which of the outer rings is the smallest around a hole; −1 where none is. */
function smallestAround(
  ring: readonly number[],
  rings: readonly (readonly number[])[],
  areas: readonly number[],
  outers: readonly number[],
  points: PlanPoints,
): number {
  const { x, y } = points
  const area = -areaOf(ring, points)
  let best = -1
  outers.forEach((outer, k) => {
    if (areas[outer]! < area || (best >= 0 && areas[outer]! >= areas[outers[best]!]!)) return
    const around = rings[outer]!
    // A vertex that both share tells nothing.
    const probe = ring.find((v) => !around.includes(v))
    if (probe !== undefined ? isInside(around, x[probe]!, y[probe]!, points) : area > 0) best = k
  })
  return best
}

function isInside(ring: readonly number[], px: number, py: number, { x, y }: PlanPoints): boolean {
  let inside = false
  for (let i = 0, k = ring.length - 1; i < ring.length; k = i++) {
    const ay = y[ring[i]!]!
    const by = y[ring[k]!]!
    if (ay > py === by > py) continue
    const ax = x[ring[i]!]!
    const bx = x[ring[k]!]!
    if (px < ax + ((py - ay) / (by - ay)) * (bx - ax)) inside = !inside
  }
  return inside
}
