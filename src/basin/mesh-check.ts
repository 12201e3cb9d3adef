import { fansOf } from './cove-fan.ts'
import type { Partition } from './partition-types.ts'
import { meshedLaw, type PlanMesh } from './plan-mesh.ts'
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
 * What the facets of a wall can be off by [m³]. Along a straight shore distances from it are linear, so only its profile's
 * chords count and those of a line between two walls, by the square of their height, both walls being as deep there. Beside a
 * bend, and about a corner, distances bend by a chord height more. What no ray follows counts for all that the wall leans over.
 */
function wallSlack(p: Partition, plan: PlanMesh, chordM: number, tallestM: number): number {
  const law = wallLaw(p.shape.wall)
  if (!law) return 0
  const { widthM } = stripOf(p)
  if (!(widthM > 0)) return 0
  // A wall too thin to be followed is upright in the mesh.
  if (!meshedLaw(p)) return p.edges.reduce((sum, { length }) => sum + length, 0) * widthM * tallestM
  const stops = [0, ...ringsOf(p, chordM), widthM]
  // Area between the profile over a level floor and its chords.
  let facetM2 = 0
  for (let i = 1; i < stops.length && stops.length > 2; i++) {
    const a = stops[i - 1]!
    const b = stops[i]!
    const chord = law.allowedM(tallestM, a) + law.allowedM(tallestM, b)
    facetM2 += (b - a) * Math.abs(law.allowedM(tallestM, (a + b) / 2) - chord / 2)
  }
  // Where walls meet first, none leans over all of its width.
  let reachM = 0
  for (const n of plan.points.n) if (n > reachM) reachM = n
  reachM = Math.min(reachM, widthM)
  const leanM = law.allowedM(tallestM, reachM) - law.allowedM(tallestM, 0)
  const { fans, shores } = fansOf(p)
  let lengthM = 0
  let bentM = 0
  for (const { shore, t1 } of fans) {
    const edge = shore < 0 ? undefined : p.edges[shores[shore]!.edge]!
    const ownM = edge ? edge.length : t1 * reachM
    lengthM += ownM
    if (edge?.curve.kind !== 'line') bentM += ownM
  }
  return (
    lengthM * (facetM2 + (4 * chordM * chordM * leanM) / (reachM || widthM)) +
    (2 / 3) * bentM * chordM * leanM +
    plan.leftM2 * leanM
  )
}

/** What the facets of a hollow can be off by [m³]: chord heights over its area, and near its border twice the steps. */
function hollowSlack(p: Partition, chordM: number): number {
  let sum = 0
  for (const { law, areaM2 } of p.cells)
    if (law) sum += areaM2 * (4 * chordM + Math.abs(law.depthM - law.edgeDepthM) / 64)
  return sum
}

/** Area between the plan's curves and their chords times the depth that changes there [m³]: at a wall's shore, up to the rim. */
function sliversM3(p: Partition, chordM: number, tallestM: number, rimM: number): number {
  const isShallow = wallLaw(p.shape.wall)?.meetsDatumAtShore === true
  const shoreM = p.cells.reduce((most, { minDepthM }) => Math.max(most, -minDepthM - rimM), Math.abs(rimM))
  let sum = 0
  for (const { curve, left, right, length } of p.edges) {
    if (curve.kind === 'line') continue
    const isShore = left < 0 || right < 0
    sum += (2 / 3) * length * chordM * (isShore && isShallow ? shoreM : tallestM)
  }
  return sum
}

/** What chords and rounding can take from or add to the mesh's volume [m³]. */
export function meshSlack(p: Partition, plan: PlanMesh, chordM: number, rimM: number): number {
  // From the rim, to the deepest floor and to what stands above it, and from one to the other.
  let below = 0
  let above = 0
  let areaM2 = 0
  for (const cell of p.cells) {
    below = Math.max(below, cell.maxDepthM + rimM)
    above = Math.max(above, -cell.minDepthM - rimM)
    areaM2 += cell.areaM2
  }
  const tallest = below + above
  const rounding = 64 * ROUNDING * (p.edges.length + plan.cellOf.length) * p.extentM * p.extentM
  return (
    hollowSlack(p, chordM) +
    wallSlack(p, plan, chordM, tallest) +
    sliversM3(p, chordM, tallest, rimM) +
    (rounding + 2 * plan.points.mergeM * p.extentM) * (tallest + p.extentM * 1e-3) +
    2 * plan.points.mergeM * areaM2
  )
}
