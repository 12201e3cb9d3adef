import { isStepInCove } from './cove-edges.ts'
import { COVE_RINGS } from './cove-rings.ts'
import type { Partition } from './partition-types.ts'
import type { PlanMesh } from './plan-mesh.ts'
import { planeAt } from './planes.ts'
import { shoresOf } from './shores.ts'
import { wallChange } from './strip-sum.ts'
import { ROUNDING } from './tolerance.ts'

/** Volume between the floor and the plane of the rim, where the floor stands above it counted negative [m³]. */
export function exactCapacity(p: Partition, rimM: number): number {
  let sum = 0
  for (const cell of p.cells) sum += cell.areaM2 * (planeAt(cell.plane, cell.centreX, cell.centreY) + rimM)
  // With water over everything the wall takes its whole body.
  const flooded = Math.max(0, ...p.cells.map((cell) => -cell.minDepthM)) + p.extentM
  return sum + wallChange(p, flooded).volumeM3
}

/** What the facets of a cove can be off by: chords of its quarter circle, and triangles that bridge its meeting with a feature. */
function coveSlack(p: Partition): number {
  const { wall } = p.shape
  if (wall.kind !== 'cove') return 0
  const r2 = wall.radiusM * wall.radiusM
  const step = Math.PI / 2 / COVE_RINGS
  const facet = r2 * (Math.PI / 4 - (COVE_RINGS / 2) * Math.sin(step))
  let sum = 0
  for (const shore of shoresOf(p)) {
    const cell = p.cells[shore.cell]!
    const crossed = cell.part === 'feature' || cell.minDepthM < wall.radiusM
    sum += p.edges[shore.edge]!.length * (2 * facet + (crossed ? r2 / 2 : 0))
  }
  for (const edge of p.edges)
    if (isStepInCove(p, edge, wall.radiusM)) sum += Math.min(edge.length, 4 * wall.radiusM) * r2
  return sum + 8 * facet * wall.radiusM
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
    coveSlack(p) +
    plan.sliverM2 * tallest +
    (rounding + 8 * p.grainM * p.extentM) * (tallest + p.extentM * 1e-3) +
    8 * p.grainM * areaM2
  )
}
