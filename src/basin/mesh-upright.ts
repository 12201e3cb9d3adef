import type { MeshBuilder } from './mesh-builder.ts'
import type { ShellPoints } from './mesh-levels.ts'
import type { Edge, Partition } from './partition-types.ts'
import type { PlanMesh } from './plan-mesh.ts'
import type { Part } from './types.ts'

/** What adding upright faces needs throughout. */
interface Shell {
  readonly p: Partition
  readonly plan: PlanMesh
  readonly points: ShellPoints
  readonly builder: MeshBuilder
}

/** A slope that changes by less than this across an edge isn't a break to ink. */
const SMOOTH_BREAK = 1e-3

/** Walls, rim and risers, facing the water, and the lines to ink along them and along the breaks of the floor. */
export function addUpright(
  p: Partition,
  plan: PlanMesh,
  pointOf: (cell: number, vertex: number) => number,
  points: ShellPoints,
  builder: MeshBuilder,
): void {
  const shell: Shell = { p, plan, points, builder }
  p.edges.forEach((edge, e) => {
    const chain = plan.chains[e]!
    if (edge.left < 0 || edge.right < 0) addShoreWall(shell, edge, chain, pointOf)
    else addRiser(shell, edge, chain, pointOf)
  })
}

function addShoreWall(
  shell: Shell,
  edge: Edge,
  chain: readonly number[],
  pointOf: (cell: number, vertex: number) => number,
): void {
  const { p, points, builder } = shell
  const rim = -p.shape.freeboardM
  const cell = Math.max(edge.left, edge.right)
  const side: 1 | -1 = edge.left >= 0 ? 1 : -1
  const foot = chain.map((v) => pointOf(cell, v))
  const rims = chain.map((v) => points.settle(v, rim))
  const datum = chain.map((v) => points.settle(v, 0))
  const depthOf = (point: number): number => points.depth[point]!
  const above = foot.map((point, i) => (depthOf(point) < 0 ? point : datum[i]!))
  const below = foot.map((point, i) => (depthOf(point) > 0 ? point : datum[i]!))
  addFace(shell, chain, rims, above, side, 'rim')
  addFace(shell, chain, datum, below, side, 'wall')
  inkAlong(
    builder,
    foot.map((point, i) => (depthOf(point) < rim ? point : rims[i]!)),
  )
  if (p.shape.wall.kind === 'vertical') inkAlong(builder, foot)
}

function addRiser(
  shell: Shell,
  edge: Edge,
  chain: readonly number[],
  pointOf: (cell: number, vertex: number) => number,
): void {
  const { p, points, builder } = shell
  const left = chain.map((v) => pointOf(edge.left, v))
  const right = chain.map((v) => pointOf(edge.right, v))
  if (left.every((point, i) => point === right[i])) {
    const a = p.cells[edge.left]!.plane
    const b = p.cells[edge.right]!.plane
    if (Math.hypot(a.dx - b.dx, a.dy - b.dy) > SMOOTH_BREAK) inkAlong(builder, left)
    return
  }
  // Facing the deeper side; an edge is cut where the sides change over.
  for (let i = 0; i + 1 < chain.length; i++) {
    const mean = (of: readonly number[]): number => points.depth[of[i]!]! + points.depth[of[i + 1]!]!
    const isDeeperLeft = mean(left) > mean(right)
    addQuad(shell, chain, i, isDeeperLeft ? right : left, isDeeperLeft ? left : right, isDeeperLeft ? 1 : -1, 'riser')
  }
  inkAlong(builder, left)
  inkAlong(builder, right)
}

function addFace(
  shell: Shell,
  chain: readonly number[],
  top: readonly number[],
  bottom: readonly number[],
  side: 1 | -1,
  part: Part,
): void {
  for (let i = 0; i + 1 < chain.length; i++) addQuad(shell, chain, i, top, bottom, side, part)
}

const near: number[] = []
const far: number[] = []

/** One upright face between two neighbours of a chain, cut at every level that other faces have there; side 1 looks left. */
function addQuad(
  { plan, points, builder }: Shell,
  chain: readonly number[],
  i: number,
  top: readonly number[],
  bottom: readonly number[],
  side: 1 | -1,
  part: Part,
): void {
  if (top[i] === bottom[i] && top[i + 1] === bottom[i + 1]) return
  const u = chain[i]!
  const v = chain[i + 1]!
  points.between(u, top[i]!, bottom[i]!, near)
  points.between(v, top[i + 1]!, bottom[i + 1]!, far)
  const { x, y } = plan.points
  const dx = x[v]! - x[u]!
  const dy = y[v]! - y[u]!
  const a = near.map((point) => builder.vertex(point, -dy * side, dx * side, 0))
  const b = far.map((point) => builder.vertex(point, -dy * side, dx * side, 0))
  let k = 0
  let m = 0
  while (k + 1 < a.length || m + 1 < b.length) {
    // Step down on the side that is behind.
    const stepA = m + 1 >= b.length || (k + 1 < a.length && (k + 1) * b.length <= (m + 1) * a.length)
    const ak = a[k]!
    const bm = b[m]!
    const next = stepA ? a[++k]! : b[++m]!
    if (side > 0) builder.triangle(ak, bm, next, part)
    else builder.triangle(ak, next, bm, part)
  }
}

function inkAlong(builder: MeshBuilder, points: readonly number[]): void {
  for (let i = 0; i + 1 < points.length; i++) if (points[i] !== points[i + 1]) builder.ink(points[i]!, points[i + 1]!)
}
