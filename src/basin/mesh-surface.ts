import type { MeshBuilder } from './mesh-builder.ts'
import type { Partition } from './partition-types.ts'
import { PARTS } from './parts.ts'
import type { PlanDepth } from './plan-depth.ts'
import type { PlanMesh } from './plan-mesh.ts'
import { Room } from './room.ts'
import type { WallLaw } from './wall-kind.ts'

const normal = [0, 0, 1]
const ray = { ux: 0, uy: 0 }
const firstRoom = new Room(Int32Array)
const cellRoom = new Room(Int32Array)
const rayRoom = new Room(Int32Array)
const madeRoom = new Room(Int32Array)
const nextRoom = new Room(Int32Array)

/**
 * The floor, treads, shelves and what the wall makes of them, facing up. A vertex is shared within a cell; on the wall it
 * belongs to a ray as well, so that its normal is the wall's there, and two walls that meet keep their edge.
 */
export function addSurface(
  p: Partition,
  plan: PlanMesh,
  depth: PlanDepth,
  law: WallLaw | undefined,
  pointAt: Int32Array,
  builder: MeshBuilder,
): void {
  const { triangles, cellOf, rayOf, rays } = plan
  const first = firstRoom.filled(plan.points.x.length, -1)
  const cellAt = cellRoom.atLeast(triangles.length)
  const rayAt = rayRoom.atLeast(triangles.length)
  const made = madeRoom.atLeast(triangles.length)
  const next = nextRoom.atLeast(triangles.length)
  const wallPart = law ? PARTS.indexOf(law.part) : -1
  const partOf = p.cells.map(({ part }) => PARTS.indexOf(part))
  let count = 0
  const corner = (i: number, cell: number, isWalled: boolean): number => {
    const v = triangles[i]!
    const station = isWalled ? rayOf[i]! : -1
    for (let k = first[v]!; k >= 0; k = next[k]!) if (cellAt[k] === cell && rayAt[k] === station) return made[k]!
    if (station >= 0) {
      ray.ux = rays[2 * station]!
      ray.uy = rays[2 * station + 1]!
    }
    depth.normal(cell, v, station >= 0 ? ray : undefined, normal)
    const vertex = builder.vertex(pointAt[i]!, normal[0]!, normal[1]!, normal[2]!)
    cellAt[count] = cell
    rayAt[count] = station
    made[count] = vertex
    next[count] = first[v]!
    first[v] = count++
    return vertex
  }
  for (let i = 0; i < triangles.length; i += 3) {
    const cell = cellOf[i / 3]!
    const isWalled = rayOf[i]! >= 0 && depth.isWalled(i)
    const part = isWalled && law ? wallPart : partOf[cell]!
    builder.triangle(corner(i, cell, isWalled), corner(i + 1, cell, isWalled), corner(i + 2, cell, isWalled), part)
  }
}
