import { type Loop, loopsOf } from './faces.ts'
import type { Cell, Edge, Partition } from './partition-types.ts'
import type { Patch, Plane } from './types.ts'
import { rootOf, unite } from './union.ts'

/** Fewer edges than this between cells that are alike are left where they are. */
const FEW = 32
const OUTSIDE = -1
/** Both edges at a gap may be off. */
const OFF_AT_A_GAP = 2

/**
 * The same partition without the edges that have the same on both sides, where there are many of them: a bench round a tight
 * bend is made of hundreds of sectors that overlap. What it was where the edges left don't close.
 */
export function mergeAlike(p: Partition): Partition {
  const group = Int32Array.from(p.cells, (_, i) => i)
  const slivers = sliversOf(p)
  const isIdle = p.edges.map(({ left, right }) => {
    if (left < 0 || right < 0 || left === right) return false
    return slivers.has(left) || slivers.has(right) || isAlike(p, left, right)
  })
  if (isIdle.reduce((sum, idle) => sum + (idle ? 1 : 0), 0) < FEW) return p
  p.edges.forEach(({ left, right }, e) => {
    if (isIdle[e]) unite(group, left, right)
  })
  const kept = p.edges.filter((_, e) => !isIdle[e])
  const merged = withGroups(p, kept, (cell) => (cell < 0 ? OUTSIDE : rootOf(group, cell)))
  return merged ? { ...merged, sliverM2: [...slivers].reduce((sum, i) => sum + p.cells[i]!.areaM2, 0) } : p
}

/**
 * Cells that are no wider than footprints which only come near the curve that is meant leave open, between each other or
 * along the shore, with nothing beyond but cells that are alike.
 */
function sliversOf(p: Partition): ReadonlySet<number> {
  const slivers = new Set<number>()
  const offM = p.shape.patches.reduce((most, patch) => Math.max(most, patch.offM ?? 0), 0)
  if (offM === 0) return slivers
  for (const [i, { loops, areaM2, feature }] of p.cells.entries()) {
    const border = loops.flat().map((half) => p.edges[half >> 1]!)
    const lengthM = border.reduce((sum, { length }) => sum + length, 0)
    if (!(2 * areaM2 < OFF_AT_A_GAP * offM * lengthM)) continue
    const beyond = border.map(({ left, right }) => (left === i ? right : left)).filter((cell) => cell >= 0)
    const [first] = beyond
    if (first === undefined) continue
    const isAmid = (cell: number): boolean =>
      !slivers.has(cell) && p.cells[cell]!.feature !== feature && isAlike(p, first, cell)
    if (beyond.every(isAmid)) slivers.add(i)
  }
  return slivers
}

/** True where an edge between two cells bounds nothing: over the same piece of floor, of the same depth by the same measure. */
function isAlike({ cells, shape }: Partition, one: number, other: number): boolean {
  const a = cells[one]!
  const b = cells[other]!
  if (a.strip !== b.strip || a.feature !== b.feature) return false
  return a.patch === b.patch || (a.feature >= 0 && isOneMeasure(shape.patches[a.patch]!, shape.patches[b.patch]!))
}

function isOneMeasure(a: Patch, b: Patch): boolean {
  const isNamedAlike = a.depthNames?.join() === b.depthNames?.join()
  return !a.weights && !b.weights && isNamedAlike && isSamePlane(a.plane, b.plane)
}

function isSamePlane(a: Plane, b: Plane): boolean {
  return a.atOrigin === b.atOrigin && a.dx === b.dx && a.dy === b.dy
}

/** Groups of cells as cells, each within the loops that have it on their left; nothing where a loop has two of them. */
function withGroups(p: Partition, kept: readonly Edge[], groupOf: (cell: number) => number): Partition | undefined {
  const { loops, loopOf } = loopsOf(kept, p.nodeX.length)
  const around = new Map<number, Loop[]>()
  const groupOfLoop = loops.map(({ halves }) => {
    const sides = halves.map((half) => groupOf(half & 1 ? kept[half >> 1]!.right : kept[half >> 1]!.left))
    return sides.every((side) => side === sides[0]) ? sides[0]! : Number.NaN
  })
  if (groupOfLoop.some(Number.isNaN)) return undefined
  loops.forEach((loop, i) => {
    const group = groupOfLoop[i]!
    if (group === OUTSIDE) return
    const others = around.get(group)
    if (others) others.push(loop)
    else around.set(group, [loop])
  })
  const members = new Map<number, Cell[]>()
  p.cells.forEach((cell, i) => {
    const group = groupOf(i)
    const others = members.get(group)
    if (others) others.push(cell)
    else members.set(group, [cell])
  })
  const indexOf = new Map<number, number>()
  const cells: Cell[] = []
  for (const [group, alike] of members) {
    const border = around.get(group)
    if (!border) return undefined
    indexOf.set(group, cells.length)
    cells.push(joined(alike, border))
  }
  const sideOf = (half: number): number => indexOf.get(groupOfLoop[loopOf[half]!]!) ?? OUTSIDE
  const edges = kept.map((edge, e): Edge => ({ ...edge, left: sideOf(2 * e), right: sideOf(2 * e + 1) }))
  return { ...p, edges, cells, memory: [] }
}

/** One cell for several that are alike, with what bounds them all. */
function joined(members: readonly Cell[], border: readonly Loop[]): Cell {
  const first = members.reduce((largest, cell) => (cell.areaM2 > largest.areaM2 ? cell : largest))
  // The outer loop first: all others run round holes.
  const loops = [...border].sort((a, b) => b.moments.area - a.moments.area).map(({ halves }) => halves)
  if (members.length === 1) return { ...first, loops }
  const least = (of: (cell: Cell) => number): number => members.reduce((low, cell) => Math.min(low, of(cell)), Infinity)
  const sum = (of: (cell: Cell) => number): number => members.reduce((total, cell) => total + of(cell), 0)
  const areaM2 = sum((cell) => cell.areaM2)
  const mean = (of: (cell: Cell) => number): number => sum((cell) => of(cell) * cell.areaM2) / areaM2
  return {
    ...first,
    ...(first.lawMeans && {
      lawMeans: {
        depthM: mean(({ lawMeans }) => lawMeans?.depthM ?? 0),
        slopedM2: sum(({ lawMeans }) => lawMeans?.slopedM2 ?? 0),
      },
    }),
    patch: least(({ feature, patch }) => (feature === first.feature ? patch : Infinity)),
    loops,
    areaM2,
    centreX: mean(({ centreX }) => centreX),
    centreY: mean(({ centreY }) => centreY),
    minDepthM: least(({ minDepthM }) => minDepthM),
    maxDepthM: -least(({ maxDepthM }) => -maxDepthM),
    minX: least(({ minX }) => minX),
    minY: least(({ minY }) => minY),
    maxX: -least(({ maxX }) => -maxX),
    maxY: -least(({ maxY }) => -maxY),
  }
}
