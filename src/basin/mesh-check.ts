import { fansOf } from './cove-fan.ts'
import type { Partition } from './partition-types.ts'
import type { PlanMesh } from './plan-mesh.ts'
import { planeAt } from './planes.ts'
import { stripOf } from './strip.ts'
import { ringsOf } from './strip-rings.ts'
import { wallChange } from './strip-sum.ts'
import { ROUNDING } from './tolerance.ts'
import { wallLaw } from './walls.ts'

/** Volume between the floor and the plane of the rim, where the floor stands above it counted negative [m³]. */
export function exactCapacity(p: Partition, rimM: number): number {
  let sum = 0
  let highest = 0
  for (const cell of p.cells) {
    const meanM = cell.lawMeans ? cell.lawMeans.depthM : planeAt(cell.plane, cell.centreX, cell.centreY)
    sum += cell.areaM2 * (meanM + rimM)
    highest = Math.max(highest, -cell.minDepthM)
  }
  // With water over everything the wall takes its whole body.
  return sum + wallChange(p, highest + p.extentM).volumeM3
}

/**
 * What the facets of a wall can be off by [m³]: chords of its profile, chords along the shore times the depth over which it
 * leans, and what is left unfollowed where rings or creases come to an end between rays nearer than eight chord heights.
 */
function wallSlack(p: Partition, chordM: number, tallestM: number): number {
  const law = wallLaw(p.shape.wall)
  if (!law) return 0
  const { widthM, pieces } = stripOf(p)
  const stops = [0, ...ringsOf(p, chordM), widthM]
  // Area between the profile over a level floor and its chords.
  let facetM2 = 0
  for (let i = 1; i < stops.length && stops.length > 2; i++) {
    const a = stops[i - 1]!
    const b = stops[i]!
    const chord = law.allowedM(tallestM, a) + law.allowedM(tallestM, b)
    facetM2 += (b - a) * Math.abs(law.allowedM(tallestM, (a + b) / 2) - chord / 2)
  }
  const leanM = stops.length > 2 ? Math.min(widthM, tallestM) : tallestM
  let lengthM = 0
  for (const { shore, t1 } of fansOf(p).fans)
    lengthM += shore < 0 ? t1 * widthM : p.edges[fansOf(p).shores[shore]!.edge]!.length
  return lengthM * (2 * facetM2 + 3 * chordM * leanM) + pieces.length * 8 * chordM * widthM * leanM
}

/** What the facets of a hollow can be off by [m³]: chord heights over its area, and near its border twice the steps. */
function hollowSlack(p: Partition, chordM: number): number {
  let sum = 0
  for (const { law, areaM2 } of p.cells)
    if (law) sum += areaM2 * (4 * chordM + Math.abs(law.depthM - law.edgeDepthM) / 64)
  return sum
}

/** What chords and rounding can take from or add to the mesh's volume [m³]. */
export function meshSlack(p: Partition, plan: PlanMesh, chordM: number, rimM: number): number {
  let tallest = 0
  let areaM2 = 0
  for (const cell of p.cells) {
    tallest = Math.max(tallest, Math.abs(cell.maxDepthM + rimM), Math.abs(cell.minDepthM + rimM))
    areaM2 += cell.areaM2
  }
  const rounding = 64 * ROUNDING * (p.edges.length + plan.cellOf.length) * p.extentM * p.extentM
  return (
    hollowSlack(p, chordM) +
    wallSlack(p, chordM, tallest) +
    plan.sliverM2 * tallest +
    (rounding + 2 * plan.points.mergeM * p.extentM) * (tallest + p.extentM * 1e-3) +
    2 * plan.points.mergeM * areaM2
  )
}
