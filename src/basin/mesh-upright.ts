import type { MeshBuilder } from './mesh-builder.ts'
import type { VertexLevels } from './mesh-levels.ts'
import type { Edge, Partition } from './partition-types.ts'
import type { PlanMesh } from './plan-mesh.ts'
import type { Part } from './types.ts'

/** Walls, rim and risers, facing the water, and the lines to ink along them and along the breaks of the floor. */
export function addUpright(
  p: Partition,
  plan: PlanMesh,
  depthOf: (cell: number, vertex: number) => number,
  levels: VertexLevels,
  builder: MeshBuilder,
): void {
  const rim = -p.shape.freeboardM
  p.edges.forEach((edge, e) => {
    const chain = plan.chains[e]!
    if (edge.left < 0 || edge.right < 0) {
      const cell = Math.max(edge.left, edge.right)
      const foot = chain.map((v) => depthOf(cell, v))
      const side: 1 | -1 = edge.left >= 0 ? 1 : -1
      const strip = { p, plan, levels, builder, edge, chain, heading: plan.headings[e]!, side }
      addStrip(
        strip,
        foot.map(() => rim),
        foot.map((d) => Math.min(0, d)),
        'rim',
      )
      addStrip(
        strip,
        foot.map(() => 0),
        foot.map((d) => Math.max(0, d)),
        'wall',
      )
      ink(
        strip,
        foot.map((d) => Math.min(rim, d)),
      )
      if (p.shape.wall.kind === 'vertical') ink(strip, foot)
      return
    }
    const left = chain.map((v) => depthOf(edge.left, v))
    const right = chain.map((v) => depthOf(edge.right, v))
    const plain = { p, plan, levels, builder, edge, chain, heading: plan.headings[e]!, side: 1 as const }
    const a = p.cells[edge.left]!.plane
    const b = p.cells[edge.right]!.plane
    if (left.every((d, i) => d === right[i])) {
      if (Math.hypot(a.dx - b.dx, a.dy - b.dy) > 1e-3) ink(plain, left)
      return
    }
    // Facing the deeper side; an edge is cut where the sides change over.
    for (let i = 0; i + 1 < chain.length; i++) {
      const deeperLeft = left[i]! + left[i + 1]! > right[i]! + right[i + 1]!
      const top = deeperLeft ? right : left
      const bottom = deeperLeft ? left : right
      addQuad({ ...plain, side: deeperLeft ? 1 : -1 }, i, top, bottom, 'riser')
    }
    ink(plain, left)
    ink(plain, right)
  })
}

interface Strip {
  readonly p: Partition
  readonly plan: PlanMesh
  readonly levels: VertexLevels
  readonly builder: MeshBuilder
  readonly edge: Edge
  readonly chain: readonly number[]
  readonly heading: readonly number[]
  /** 1 where the face looks to the left of the edge. */
  readonly side: 1 | -1
}

function addStrip(strip: Strip, top: readonly number[], bottom: readonly number[], part: Part): void {
  for (let i = 0; i + 1 < strip.chain.length; i++) addQuad(strip, i, top, bottom, part)
}

/** One upright face between two neighbours of a chain, cut at every level that other faces have there. */
function addQuad(strip: Strip, i: number, top: readonly number[], bottom: readonly number[], part: Part): void {
  const { levels, chain, builder, side } = strip
  const near = levels.between(chain[i]!, top[i]!, bottom[i]!)
  const far = levels.between(chain[i + 1]!, top[i + 1]!, bottom[i + 1]!)
  if (near.length === 1 && far.length === 1) return
  const a = near.map((d) => corner(strip, i, d))
  const b = far.map((d) => corner(strip, i + 1, d))
  const put = (u: number, v: number, w: number): void => {
    if (side > 0) builder.triangle(u, v, w, part)
    else builder.triangle(u, w, v, part)
  }
  let k = 0
  let m = 0
  while (k + 1 < a.length || m + 1 < b.length) {
    // Step down on the side that is behind.
    const stepA = m + 1 >= b.length || (k + 1 < a.length && (k + 1) * b.length <= (m + 1) * a.length)
    if (stepA) put(a[k]!, b[m]!, a[++k]!)
    else put(a[k]!, b[m]!, b[++m]!)
  }
}

function corner({ p, plan, builder, chain, heading, side }: Strip, i: number, depth: number): number {
  const v = chain[i]!
  const dx = heading[2 * i]!
  const dy = heading[2 * i + 1]!
  return builder.vertex(plan.x[v]! + p.originX, plan.y[v]! + p.originY, -depth, -dy * side, dx * side, 0)
}

function ink({ p, plan, builder, chain }: Strip, depths: readonly number[]): void {
  for (let i = 0; i + 1 < chain.length; i++) {
    const a = chain[i]!
    const b = chain[i + 1]!
    builder.ink(
      plan.x[a]! + p.originX,
      plan.y[a]! + p.originY,
      -depths[i]!,
      plan.x[b]! + p.originX,
      plan.y[b]! + p.originY,
      -depths[i + 1]!,
    )
  }
}
