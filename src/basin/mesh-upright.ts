import { isInkedBreak } from './inked-breaks.ts'
import type { MeshBuilder } from './mesh-builder.ts'
import type { ShellPoints } from './mesh-levels.ts'
import type { Edge, Partition } from './partition-types.ts'
import { PARTS } from './parts.ts'
import type { PlanDepth } from './plan-depth.ts'
import type { PlanMesh } from './plan-mesh.ts'

const WALL = PARTS.indexOf('wall')
const RISER = PARTS.indexOf('riser')
const RIM = PARTS.indexOf('rim')

/** What adding upright faces needs throughout. */
interface Shell {
  readonly p: Partition
  readonly plan: PlanMesh
  readonly points: ShellPoints
  readonly builder: MeshBuilder
  readonly pointOf: (cell: number, vertex: number) => number
  readonly depth: PlanDepth
}

/** Walls, rim and risers, facing the water, and the lines to ink along them and along the breaks of the floor. */
export function addUpright(
  p: Partition,
  plan: PlanMesh,
  pointOf: (cell: number, vertex: number) => number,
  points: ShellPoints,
  depth: PlanDepth,
  builder: MeshBuilder,
): void {
  const shell: Shell = { p, plan, points, builder, pointOf, depth }
  p.edges.forEach((edge, e) => {
    const chain = plan.chains[e]!
    if (edge.left < 0 || edge.right < 0) addShoreWall(shell, edge, chain)
    else addRiser(shell, edge, chain)
  })
}

function addShoreWall(shell: Shell, edge: Edge, chain: readonly number[]): void {
  const { p, points, builder, pointOf } = shell
  const rimM = -p.shape.freeboardM
  const cell = Math.max(edge.left, edge.right)
  const side: 1 | -1 = edge.left >= 0 ? 1 : -1
  const isInked = p.shape.wall.kind === 'vertical'
  let before = chain[0]!
  let foot0 = pointOf(cell, before)
  let rim0 = points.settle(before, rimM)
  let datum0 = points.settle(before, 0)
  for (let i = 1; i < chain.length; i++) {
    const v = chain[i]!
    const foot = pointOf(cell, v)
    const rim = points.settle(v, rimM)
    const datum = points.settle(v, 0)
    const d0 = points.depth[foot0]!
    const d1 = points.depth[foot]!
    // Where the floor of a hollow passes the datum between two vertices, one face goes from the rim to the floor.
    if (d0 * d1 < 0) addQuad(shell, before, v, rim0, rim, foot0, foot, side, WALL)
    else {
      addQuad(shell, before, v, rim0, rim, d0 < 0 ? foot0 : datum0, d1 < 0 ? foot : datum, side, RIM)
      addQuad(shell, before, v, datum0, datum, d0 > 0 ? foot0 : datum0, d1 > 0 ? foot : datum, side, WALL)
    }
    builder.ink(d0 < rimM ? foot0 : rim0, d1 < rimM ? foot : rim)
    if (isInked) builder.ink(foot0, foot)
    before = v
    foot0 = foot
    rim0 = rim
    datum0 = datum
  }
}

function addRiser(shell: Shell, edge: Edge, chain: readonly number[]): void {
  const { p, points, pointOf } = shell
  const left = chain.map((v) => pointOf(edge.left, v))
  const right = chain.map((v) => pointOf(edge.right, v))
  if (left.every((point, i) => point === right[i])) {
    if (isInkedBreak(p, edge)) inkAlong(shell, edge, chain, left, right)
    return
  }
  // Facing the deeper side; an edge is cut where the sides change over.
  for (let i = 0; i + 1 < chain.length; i++) {
    const l0 = left[i]!
    const l1 = left[i + 1]!
    const r0 = right[i]!
    const r1 = right[i + 1]!
    const { depth } = points
    if (depth[l0]! + depth[l1]! > depth[r0]! + depth[r1]!)
      addQuad(shell, chain[i]!, chain[i + 1]!, r0, r1, l0, l1, 1, RISER)
    else addQuad(shell, chain[i]!, chain[i + 1]!, l0, l1, r0, r1, -1, RISER)
  }
  inkAlong(shell, edge, chain, left, right)
  inkAlong(shell, edge, chain, right, left)
}

const near: number[] = []
const far: number[] = []

/** One upright face between two vertices, cut at every level that other faces have there; side 1 looks left. */
function addQuad(
  { plan, points, builder }: Shell,
  u: number,
  v: number,
  top0: number,
  top1: number,
  bottom0: number,
  bottom1: number,
  side: 1 | -1,
  part: number,
): void {
  if (top0 === bottom0 && top1 === bottom1) return
  const nears = points.between(u, top0, bottom0, near)
  const fars = points.between(v, top1, bottom1, far)
  const { x, y } = plan.points
  const nx = -side * (y[v]! - y[u]!)
  const ny = side * (x[v]! - x[u]!)
  let a = builder.vertex(near[0]!, nx, ny, 0)
  let b = builder.vertex(far[0]!, nx, ny, 0)
  let k = 0
  let m = 0
  while (k + 1 < nears || m + 1 < fars) {
    // Step down on the side that is behind.
    const stepA = m + 1 >= fars || (k + 1 < nears && (k + 1) * fars <= (m + 1) * nears)
    const next = builder.vertex(stepA ? near[++k]! : far[++m]!, nx, ny, 0)
    if (side > 0) builder.triangle(a, b, next, part)
    else builder.triangle(a, next, b, part)
    if (stepA) a = next
    else b = next
  }
}

/** Inks the points along one side of an edge, but where a wall covers what a feature ends at, so that nothing shows. */
function inkAlong(
  { p, depth, builder }: Shell,
  { left, right }: Edge,
  chain: readonly number[],
  points: readonly number[],
  beyond: readonly number[],
): void {
  const isOfFeature = p.cells[left]!.patch >= 0 || p.cells[right]!.patch >= 0
  const isCovered = (i: number): boolean =>
    isOfFeature && points[i] === beyond[i] && depth.isOnWall(left, chain[i]!) && depth.isOnWall(right, chain[i]!)
  for (let i = 0; i + 1 < points.length; i++)
    if (points[i] !== points[i + 1] && !(isCovered(i) && isCovered(i + 1))) builder.ink(points[i]!, points[i + 1]!)
}
