import { type Fan, type Fans, fansOf, type Ray, rayAt } from './cove-fan.ts'
import type { Partition } from './partition-types.ts'
import { footprintErrorM3 } from './patch-off.ts'
import { shoresOf } from './shores.ts'
import { sigmaOf } from './sigma.ts'
import { stripOf } from './strip.ts'
import { deepestUnderWall } from './strip-deepest.ts'
import { shoreFace, shoreLost } from './strip-shore.ts'
import { stepChange } from './strip-steps.ts'
import { NO_CHANGE, wallChange } from './strip-sum.ts'
import { NEARLY, ROUNDING } from './tolerance.ts'
import type { Measures } from './types.ts'
import { wallWidth } from './wall-width.ts'
import { wallLaw } from './walls.ts'
import { wetCell } from './wet-cell.ts'
import { wetEdge } from './wet-edge.ts'

/** An estimate of an integral's error is no bound: in turned copies of 250 pools the most that was seen was eleven of them. */
const ESTIMATES = 16

/** Share of what a wall takes over a hollow that rays' own integrals may be off by: four times the most that was seen. */
const OVER_HOLLOW = 1e-9

/** All figures of the water at a level [m above the datum]. A dry basin measures zero, its centroid the outline's middle. */
export function measure(p: Partition, levelM: number): Measures {
  const law = wallLaw(p.shape.wall)
  const change = wallChange(p, levelM)
  let volumeM3 = change.volumeM3
  let surfaceM2 = change.areaM2
  let momentX = change.areaX
  let momentY = change.areaY
  let floorM2 = change.floorM2
  let featureM2 = change.featureM2
  let wallM2 = change.wallM2
  let perimeterM = change.shoreM
  let maxDepthM = 0
  p.cells.forEach((cell, index) => {
    const wet = wetCell(cell, p.edges, levelM, p.extentM)
    if (wet.areaM2 === 0 && wet.shoreM === 0) return
    volumeM3 += wet.volumeM3
    surfaceM2 += wet.areaM2
    momentX += wet.areaX
    momentY += wet.areaY
    perimeterM += wet.shoreM
    if (law && wet.shoreM > 0) perimeterM -= shoreLost(p, cell, index, levelM)
    if (cell.part === 'floor') floorM2 += wet.slopedM2
    else featureM2 += wet.slopedM2
    maxDepthM = Math.max(maxDepthM, cell.maxDepthM + levelM)
  })
  // What a wall takes is reckoned from the depth that there would be without it, and so is what rounding may leave of it.
  const jointsM3 = law ? jointBound(p, maxDepthM) + stripOf(p).strayM2 * maxDepthM : 0
  const hollowM3 = law && p.cells.some((cell) => cell.law) ? OVER_HOLLOW * Math.abs(change.volumeM3) : 0
  const arithmeticM3 = arithmeticBound(p, maxDepthM) + wallBound(p, levelM) + jointsM3 + hollowM3
  if (law && maxDepthM > 0) maxDepthM = Math.max(0, deepestUnderWall(p) + levelM)
  const steps = stepChange(p, levelM)
  let riserM2 = steps.faceM2
  perimeterM += steps.shoreM
  for (const edge of p.edges) {
    const isShore = edge.left < 0 || edge.right < 0
    if (isShore && law) continue
    const wet = wetEdge(p, edge, levelM)
    perimeterM += wet.shoreM
    if (isShore) wallM2 += wet.faceM2
    else riserM2 += wet.faceM2
  }
  if (law)
    for (const shore of shoresOf(p)) {
      const wet = shoreFace(p, law, shore, levelM)
      wallM2 += wet.faceM2
      perimeterM += wet.shoreM
    }
  volumeM3 = Math.max(0, volumeM3)
  surfaceM2 = Math.max(0, surfaceM2)
  // What a wall takes and what there was may cancel but for rounding: less than nothing is nothing.
  floorM2 = surfaceM2 > 0 ? Math.max(0, floorM2) : 0
  featureM2 = surfaceM2 > 0 ? Math.max(0, featureM2) : 0
  wallM2 = surfaceM2 > 0 ? Math.max(0, wallM2) : 0
  riserM2 = surfaceM2 > 0 ? Math.max(0, riserM2) : 0
  perimeterM = surfaceM2 > 0 ? Math.max(0, perimeterM) : 0
  const modelM3 = (p.floor.modelErrorM3 ?? 0) + footprintErrorM3(p, levelM)
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

/** Bound of what the integral of what a wall takes may be off by at a level [m³]. */
export function wallBound(p: Partition, levelM: number): number {
  return ESTIMATES * wallChange(p, levelM).errorM3
}

/**
 * Bound of what a wall takes twice or not at all [m³] at joints of the shore that count as smooth: in the wedge that a joint
 * leaves where it turns a little, as long as the strip is wide, or as the largest circle that the water has room for; and
 * where a stretch bends more than the strip is wide and the next one otherwise, by rays whose feet are nearer to the joint than
 * the root of a rounding tells.
 */
function jointBound(p: Partition, depthM: number): number {
  const fans = fansOf(p)
  const widthM = wallWidth(p)
  let tangentM = 0
  for (const fan of fans.fans) {
    if (fan.neighbours.length === 0 || fan.shore < 0) continue
    const bendM = bendRadius(fans, fan)
    if (!(bendM < widthM)) continue
    for (const i of fan.neighbours)
      if (Math.abs(bendRadius(fans, fans.fans[i]!) - bendM) > NEARLY * bendM) tangentM += bendM
  }
  if (fans.strayRad === 0 && tangentM === 0) return 0
  const waterM2 = p.cells.reduce((sum, cell) => sum + cell.areaM2, 0)
  const reachM2 = Math.min(widthM ** 2, waterM2 / Math.PI)
  return (fans.strayRad * reachM2 + Math.sqrt(ROUNDING) * tangentM * Math.sqrt(reachM2)) * (depthM / 2)
}

/** Least radius with which a stretch of shore bends toward the water at its ends [m]; endless where it doesn't. */
function bendRadius(fans: Fans, fan: Fan): number {
  let least = Infinity
  for (const t of [fan.t0, fan.t1]) {
    const { h0, h1 } = rayAt(fans, fan, t, ray)
    if (h1 < 0) least = Math.min(least, -h0 / h1)
  }
  return least
}

const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }

/** Volume and water surface alone, for level curves. */
export function volumeAtLevel(p: Partition, levelM: number): { volumeM3: number; waterSurfaceM2: number } {
  let volumeM3 = 0
  let waterSurfaceM2 = 0
  for (const cell of p.cells) {
    const wet = wetCell(cell, p.edges, levelM, p.extentM)
    volumeM3 += wet.volumeM3
    waterSurfaceM2 += wet.areaM2
  }
  const change = volumeM3 > 0 ? wallChange(p, levelM) : NO_CHANGE
  return {
    volumeM3: Math.max(0, volumeM3 + change.volumeM3),
    waterSurfaceM2: Math.max(0, waterSurfaceM2 + change.areaM2),
  }
}
