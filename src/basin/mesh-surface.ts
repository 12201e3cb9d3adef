import type { MeshBuilder } from './mesh-builder.ts'
import type { Partition } from './partition-types.ts'
import { PARTS } from './parts.ts'
import type { PlanDepth } from './plan-depth.ts'
import type { PlanMesh } from './plan-mesh.ts'
import { Room } from './room.ts'
import type { WallLaw } from './wall-kind.ts'

const normal = new Float64Array(3)
const corner = new Int32Array(3)
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
  for (let i = 0; i < triangles.length; i += 3) {
    const cell = cellOf[i / 3]!
    const isWalled = rayOf[i]! >= 0 && depth.isWalled(i)
    for (let j = i; j < i + 3; j++) {
      const v = triangles[j]!
      const station = isWalled ? rayOf[j]! : -1
      let k = first[v]!
      while (k >= 0 && (cellAt[k] !== cell || rayAt[k] !== station)) k = next[k]!
      if (k < 0) {
        if (station >= 0) {
          ray.ux = rays[2 * station]!
          ray.uy = rays[2 * station + 1]!
        }
        depth.normal(cell, v, station >= 0 ? ray : undefined, normal)
        k = count++
        cellAt[k] = cell
        rayAt[k] = station
        made[k] = builder.vertex(pointAt[j]!, normal[0]!, normal[1]!, normal[2]!)
        next[k] = first[v]!
        first[v] = k
      }
      corner[j - i] = made[k]!
    }
    builder.triangle(corner[0]!, corner[1]!, corner[2]!, isWalled && law ? wallPart : partOf[cell]!)
  }
}
