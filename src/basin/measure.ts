import type { Partition } from './partition-types.ts'
import { slopeOf } from './planes.ts'
import { sigmaOf } from './sigma.ts'
import { ROUNDING } from './tolerance.ts'
import type { Measures } from './types.ts'
import { wetCell } from './wet-cell.ts'
import { wetEdge } from './wet-edge.ts'

/** All figures of the water at a level [m above the datum]. A dry basin measures zero, its centroid the outline's middle. */
export function measure(p: Partition, levelM: number): Measures {
  let volumeM3 = 0
  let surfaceM2 = 0
  let momentX = 0
  let momentY = 0
  let floorM2 = 0
  let featureM2 = 0
  let perimeterM = 0
  let maxDepthM = 0
  for (const cell of p.cells) {
    const wet = wetCell(cell, p.edges, levelM, p.extentM)
    if (wet.areaM2 === 0 && wet.shoreM === 0) continue
    volumeM3 += wet.volumeM3
    surfaceM2 += wet.areaM2
    momentX += wet.areaX
    momentY += wet.areaY
    perimeterM += wet.shoreM
    const sloping = wet.areaM2 * Math.sqrt(1 + slopeOf(cell.plane) ** 2)
    if (cell.part === 'floor') floorM2 += sloping
    else featureM2 += sloping
    maxDepthM = Math.max(maxDepthM, cell.maxDepthM + levelM)
  }
  let wallM2 = 0
  let riserM2 = 0
  for (const edge of p.edges) {
    const wet = wetEdge(p, edge, levelM)
    perimeterM += wet.shoreM
    if (edge.left < 0 || edge.right < 0) wallM2 += wet.faceM2
    else riserM2 += wet.faceM2
  }
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
    errorBoundM3: arithmeticBound(p, maxDepthM),
    sigmaM3: sigmaOf(p, levelM),
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
  let volumeM3 = 0
  let waterSurfaceM2 = 0
  for (const cell of p.cells) {
    const wet = wetCell(cell, p.edges, levelM, p.extentM)
    volumeM3 += wet.volumeM3
    waterSurfaceM2 += wet.areaM2
  }
  return { volumeM3, waterSurfaceM2 }
}
