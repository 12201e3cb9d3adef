import { type CoveChange, coveChange } from './cove-change.ts'
import { deepestUnderCove } from './cove-deepest.ts'
import { isStepInCove, stepInCove, wallOverCove } from './cove-edges.ts'
import { shoreLostToCove } from './cove-shore.ts'
import type { Partition } from './partition-types.ts'
import { slopeOf } from './planes.ts'
import { shoresOf } from './shores.ts'
import { sigmaOf } from './sigma.ts'
import { ROUNDING } from './tolerance.ts'
import type { Measures } from './types.ts'
import { wetCell } from './wet-cell.ts'
import { wetEdge } from './wet-edge.ts'

const NO_COVE: CoveChange = {
  volumeM3: 0,
  areaM2: 0,
  areaX: 0,
  areaY: 0,
  floorM2: 0,
  featureM2: 0,
  shoreM: 0,
  errorM3: 0,
}

/** All figures of the water at a level [m above the datum]. A dry basin measures zero, its centroid the outline's middle. */
export function measure(p: Partition, levelM: number): Measures {
  const { wall } = p.shape
  const r = wall.kind === 'cove' ? wall.radiusM : 0
  const cove = wall.kind === 'cove' ? coveChange(p, r, levelM, true) : NO_COVE
  let volumeM3 = cove.volumeM3
  let surfaceM2 = cove.areaM2
  let momentX = cove.areaX
  let momentY = cove.areaY
  let floorM2 = cove.floorM2
  let featureM2 = cove.featureM2
  let perimeterM = cove.shoreM
  let maxDepthM = 0
  p.cells.forEach((cell, index) => {
    const wet = wetCell(cell, p.edges, levelM, p.extentM)
    if (wet.areaM2 === 0 && wet.shoreM === 0) return
    volumeM3 += wet.volumeM3
    surfaceM2 += wet.areaM2
    momentX += wet.areaX
    momentY += wet.areaY
    perimeterM += wet.shoreM
    if (r > 0 && wet.shoreM > 0) perimeterM -= shoreLostToCove(p, cell, index, levelM)
    const sloping = wet.areaM2 * Math.sqrt(1 + slopeOf(cell.plane) ** 2)
    if (cell.part === 'floor') floorM2 += sloping
    else featureM2 += sloping
    maxDepthM = Math.max(maxDepthM, cell.maxDepthM + levelM)
  })
  if (r > 0 && maxDepthM > 0) maxDepthM = Math.max(0, deepestUnderCove(p, r) + levelM)
  let wallM2 = 0
  let riserM2 = 0
  p.edges.forEach((edge) => {
    if (edge.left < 0 || edge.right < 0) {
      if (r > 0) return
      const wet = wetEdge(p, edge, levelM)
      wallM2 += wet.faceM2
      perimeterM += wet.shoreM
      return
    }
    const wet = r > 0 && isStepInCove(p, edge, r) ? stepInCove(p, edge, r, levelM) : wetEdge(p, edge, levelM)
    riserM2 += wet.faceM2
    perimeterM += wet.shoreM
  })
  if (r > 0)
    for (const shore of shoresOf(p)) {
      const wet = wallOverCove(p, shore, r, levelM)
      wallM2 += wet.faceM2
      perimeterM += wet.shoreM
    }
  volumeM3 = Math.max(0, volumeM3)
  surfaceM2 = Math.max(0, surfaceM2)
  // What a cove takes and what there was may cancel but for rounding: less than nothing is nothing.
  floorM2 = surfaceM2 > 0 ? Math.max(0, floorM2) : 0
  featureM2 = surfaceM2 > 0 ? Math.max(0, featureM2) : 0
  perimeterM = surfaceM2 > 0 ? Math.max(0, perimeterM) : 0
  const arithmeticM3 = arithmeticBound(p, maxDepthM) + 4 * cove.errorM3
  const modelM3 = p.floor.modelErrorM3 ?? 0
  const sigmaM3 = sigmaOf(p, levelM, volumeM3)
  return {
    levelM,
    volumeM3,
    waterSurfaceM2: surfaceM2,
    wetted: { floorM2, wallM2, riserM2, featureM2, totalM2: floorM2 + wallM2 + riserM2 + featureM2 },
    perimeterM,
    meanDepthM: surfaceM2 > 0 ? volumeM3 / surfaceM2 : 0,
    maxDepthM,
    volumePerLevelM2: surfaceM2,
    centroid:
      surfaceM2 > 0 ? [p.originX + momentX / surfaceM2, p.originY + momentY / surfaceM2] : [p.originX, p.originY],
    errorBoundM3: arithmeticM3 + modelM3,
    errors: { arithmeticM3, modelM3, measurementM3: sigmaM3 },
    sigmaM3,
  }
}

/**
 * Bound of the rounding in a volume [m³]: every term of the boundary sums is at most extent² · depth, and each is off by
 * a few units in the last place; a joint that was closed over a gap may misplace a sliver of gap · extent.
 */
export function arithmeticBound(p: Partition, depthM: number): number {
  const terms = p.edges.length + 8
  return (
    (16 * ROUNDING * terms * p.extentM + 2 * p.gapM * p.cells.length) * p.extentM * Math.max(depthM, p.extentM * 1e-3)
  )
}

/** Volume and water surface alone, for level curves. */
export function volumeAtLevel(p: Partition, levelM: number): { volumeM3: number; waterSurfaceM2: number } {
  const { wall } = p.shape
  let volumeM3 = 0
  let waterSurfaceM2 = 0
  for (const cell of p.cells) {
    const wet = wetCell(cell, p.edges, levelM, p.extentM)
    volumeM3 += wet.volumeM3
    waterSurfaceM2 += wet.areaM2
  }
  if (wall.kind !== 'cove' || volumeM3 === 0) return { volumeM3, waterSurfaceM2 }
  const cove = coveChange(p, wall.radiusM, levelM, false)
  return {
    volumeM3: Math.max(0, volumeM3 + cove.volumeM3),
    waterSurfaceM2: Math.max(0, waterSurfaceM2 + cove.areaM2),
  }
}
