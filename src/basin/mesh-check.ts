import type { Partition } from './partition-types.ts'
import type { PlanMesh } from './plan-mesh.ts'
import { planeAt } from './planes.ts'
import { ROUNDING } from './tolerance.ts'

/** Volume between the floor and the plane of the rim, where the floor stands above it counted negative [m³]. */
export function exactCapacity(p: Partition, rimM: number): number {
  let sum = 0
  for (const cell of p.cells) sum += cell.areaM2 * (planeAt(cell.plane, cell.centreX, cell.centreY) + rimM)
  return sum
}

/** What chords and rounding can take from or add to the mesh's volume [m³]. */
export function meshSlack(p: Partition, plan: PlanMesh, rimM: number): number {
  let tallest = 0
  let areaM2 = 0
  for (const cell of p.cells) {
    tallest = Math.max(tallest, Math.abs(cell.maxDepthM + rimM), Math.abs(cell.minDepthM + rimM))
    areaM2 += cell.areaM2
  }
  const rounding = 64 * ROUNDING * (p.edges.length + plan.cellOf.length) * p.extentM * p.extentM
  return (
    plan.sliverM2 * tallest +
    (rounding + 8 * p.grainM * p.extentM) * (tallest + p.extentM * 1e-3) +
    8 * p.grainM * areaM2
  )
}
