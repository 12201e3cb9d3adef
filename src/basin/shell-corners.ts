import { Memory } from './memory.ts'
import { ShellPoints } from './mesh-levels.ts'
import type { Partition } from './partition-types.ts'
import { PlanDepth } from './plan-depth.ts'
import type { PlanMesh } from './plan-mesh.ts'

/** The points of a shell and which of them each corner of the plan's triangles has. */
export interface ShellCorners {
  readonly points: ShellPoints
  readonly pointAt: Int32Array
  /** The point that a vertex has in a cell: the one that the cell's triangles have there. */
  readonly pointOf: (cell: number, v: number) => number
}

const known = new Memory<PlanMesh, ShellCorners>()

/** Depths of all corners of a plan mesh; cells that meet without a step share their points. Remembered for each mesh. */
export function shellCorners(p: Partition, plan: PlanMesh): ShellCorners {
  let corners = known.get(plan)
  if (!corners) {
    corners = build(p, plan)
    known.set(plan, corners)
  }
  return corners
}

function build(p: Partition, plan: PlanMesh): ShellCorners {
  const points = new ShellPoints(plan.points, plan.points.mergeM)
  // First the levels that walls stop at: a floor that comes up to one of them by rounding has that very depth.
  p.edges.forEach((edge, e) => {
    if (edge.left >= 0 && edge.right >= 0) return
    for (const v of plan.chains[e]!) {
      points.settle(v, 0)
      points.settle(v, -p.shape.freeboardM)
    }
  })
  const depth = new PlanDepth(p, plan)
  const { triangles, cellOf } = plan
  const pointAt = new Int32Array(triangles.length)
  // Corners already settled at each vertex, by cell.
  const first = new Int32Array(plan.points.x.length).fill(-1)
  const next = new Int32Array(triangles.length)
  for (let i = 0; i < triangles.length; i++) {
    const v = triangles[i]!
    const cell = cellOf[(i / 3) | 0]!
    let k = first[v]!
    while (k >= 0 && cellOf[(k / 3) | 0] !== cell) k = next[k]!
    if (k >= 0) {
      pointAt[i] = pointAt[k]!
      continue
    }
    pointAt[i] = points.settle(v, depth.at(cell, v))
    next[i] = first[v]!
    first[v] = i
  }
  // A depth that is within the grain of two points may be nearest to one that came later: what was settled stays so.
  const later = new Map<number, number>()
  const pointOf = (cell: number, v: number): number => {
    for (let k = first[v]!; k >= 0; k = next[k]!) if (cellOf[(k / 3) | 0] === cell) return pointAt[k]!
    const key = cell * plan.points.x.length + v
    let point = later.get(key)
    if (point === undefined) {
      point = points.settle(v, depth.at(cell, v))
      later.set(key, point)
    }
    return point
  }
  return { points, pointAt, pointOf }
}
