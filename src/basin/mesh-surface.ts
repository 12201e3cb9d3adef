import type { MeshBuilder } from './mesh-builder.ts'
import type { Partition } from './partition-types.ts'
import type { PlanMesh } from './plan-mesh.ts'
import { wallAt } from './wall-depth.ts'

/** The floor, treads and shelves: one smooth surface for each cell, facing up. */
export function addSurface(
  p: Partition,
  plan: PlanMesh,
  depthOf: (cell: number, vertex: number) => number,
  builder: MeshBuilder,
): void {
  const made: Map<number, number>[] = p.cells.map(() => new Map())
  plan.cellOf.forEach((index, i) => {
    const cell = p.cells[index]!
    const corner = (k: number): number => {
      const v = plan.triangles[3 * i + k]!
      let vertex = made[index]!.get(v)
      if (vertex === undefined) {
        const z = -depthOf(index, v)
        const wall = wallAt(p, cell, plan.x[v]!, plan.y[v]!)
        const [nx, ny, nz] = wall ? wall.normal : [cell.plane.dx, cell.plane.dy, 1]
        vertex = builder.vertex(plan.x[v]! + p.originX, plan.y[v]! + p.originY, z, nx, ny, nz)
        made[index]!.set(v, vertex)
      }
      return vertex
    }
    builder.triangle(corner(0), corner(1), corner(2), cell.part)
  })
}
