import type { Partition } from './partition-types.ts'
import { PlanDepth } from './plan-depth.ts'
import type { PlanMesh } from './plan-mesh.ts'

/** The plan's triangles with the depth at each corner. */
export interface DepthGrid {
  readonly x: readonly number[]
  readonly y: readonly number[]
  readonly triangles: readonly number[]
  /** Depth at each corner of each triangle, in their order. */
  readonly depths: Float64Array
  /** For each triangle the sheet of continuous depth that it belongs to: lines go on within one, not from one to another. */
  readonly sheet: Int32Array
}

/** Depths on a plan mesh; cells that meet without a step are one sheet. */
export function depthGrid(p: Partition, plan: PlanMesh): DepthGrid {
  const depths = new Float64Array(plan.triangles.length)
  const depths_ = new PlanDepth(p, plan)
  const at: Map<number, number>[] = p.cells.map(() => new Map())
  const depthOf = (cell: number, v: number): number => {
    let depth = at[cell]!.get(v)
    if (depth === undefined) {
      depth = depths_.at(cell, v)
      at[cell]!.set(v, depth)
    }
    return depth
  }
  const parent = p.cells.map((_, i) => i)
  const find = (i: number): number => {
    let root = i
    while (parent[root] !== root) root = parent[root]!
    return root
  }
  p.edges.forEach((edge, e) => {
    if (edge.left < 0 || edge.right < 0) return
    const joined = plan.chains[e]!.every(
      (v) => Math.abs(depthOf(edge.left, v) - depthOf(edge.right, v)) <= plan.points.mergeM,
    )
    if (!joined) return
    // From here on both sides have the very same depth along the edge, or a line could miss its own end.
    for (const v of plan.chains[e]!) at[edge.right]!.set(v, depthOf(edge.left, v))
    parent[find(edge.right)] = find(edge.left)
  })
  for (let i = 0; i < depths.length; i++) depths[i] = depthOf(plan.cellOf[Math.floor(i / 3)]!, plan.triangles[i]!)
  return {
    x: plan.points.x,
    y: plan.points.y,
    triangles: plan.triangles,
    depths,
    sheet: Int32Array.from(plan.cellOf, find),
  }
}
