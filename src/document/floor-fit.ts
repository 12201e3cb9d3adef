import {
  boundsOf,
  depthAt,
  type Floor,
  flatten,
  type Partition,
  type Path,
  type Point,
  partition,
  volumeAtLevel,
} from '../basin/index.ts'
import { deepenedFloor, depthsOfFloor, firstPointOf } from './floor-depths.ts'
import { isInside } from './inset.ts'

/** Where a floor lies. */
export interface Plan {
  readonly outline: Path
  readonly islands: readonly Path[]
}

/** A floor as it lies in its plan, under upright walls: what another kind of floor is fitted to. */
export interface LaidFloor {
  /** Mean depth over the plan [m]. */
  readonly meanM: number
  /** Depth at a place; nothing on dry land [m]. */
  readonly at: (place: Point) => number | undefined
}

/** All is lowered to here before it is measured, for a floor may stand out of the water [m]. */
const WELL_UNDER_M = 1

/** The floor in its plan; nothing where the drawing can't be measured. */
export function laidFloor(floor: Floor, { outline, islands }: Plan): LaidFloor | undefined {
  const lowerM = WELL_UNDER_M - Math.min(0, ...depthsOfFloor(floor))
  const lowered = deepenedFloor(floor, lowerM)
  const parts = partition({ outline, islands, floor: lowered, wall: { kind: 'vertical' }, patches: [], freeboardM: 0 })
  if (!parts.ok) return undefined
  const { volumeM3, waterSurfaceM2 } = waterIn(parts.value)
  if (!(waterSurfaceM2 > 0)) return undefined
  return {
    meanM: volumeM3 / waterSurfaceM2 - lowerM,
    at: ([x, y]) => {
      const sample = depthAt(parts.value, x, y)
      return sample && sample.depthM - lowerM
    },
  }
}

/** Under upright walls, the surface is what the volume grows by for each metre of level. */
function waterIn(parts: Partition): { readonly volumeM3: number; readonly waterSurfaceM2: number } {
  const { volumeM3 } = volumeAtLevel(parts, 0)
  return { volumeM3, waterSurfaceM2: volumeAtLevel(parts, 1).volumeM3 - volumeM3 }
}

/**
 * The floor with some of its depths (by their numbers) moved alike until its mean depth is as wanted, but never beyond the
 * least and the greatest depth given. A floor's mean is linear in its depths, so one trial tells how far.
 */
export function fitted(
  floor: Floor,
  plan: Plan,
  isFree: (index: number) => boolean,
  wish: { readonly meanM: number; readonly leastM: number; readonly greatestM: number },
): Floor {
  const moved = (byM: number): Floor =>
    withDepths(floor, (depthM, i) =>
      isFree(i) ? Math.min(wish.greatestM, Math.max(wish.leastM, depthM + byM)) : depthM,
    )
  let best = floor
  let byM = 0
  // Depths that reach a limit stay there, and the others have to go further for them.
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const tried = moved(byM)
    const here = laidFloor(tried, plan)
    if (!here) return best
    best = tried
    const offM = wish.meanM - here.meanM
    if (Math.abs(offM) < NEAR_M) return best
    const further = laidFloor(withDepths(tried, nudge(isFree)), plan)
    if (!further || !(further.meanM > here.meanM)) return best
    byM += (NUDGE_M * offM) / (further.meanM - here.meanM)
  }
  return best
}

const MOST_PASSES = 6
/** A mean depth nearer than this to the wanted one is it [m]. */
const NEAR_M = 1e-6

/** How far depths are moved to see what comes of it [m]. */
const NUDGE_M = 0.01
const nudge = (isFree: (index: number) => boolean) => (depthM: number, i: number) =>
  isFree(i) ? depthM + NUDGE_M : depthM

/** The floor with each of its depths, as `depthsOfFloor` lists them, as told [m]. */
function withDepths(floor: Floor, to: (depthM: number, index: number) => number): Floor {
  switch (floor.kind) {
    case 'flat':
      return { ...floor, depthM: to(floor.depthM, 0) }
    case 'profile':
      return { ...floor, stations: floor.stations.map(([s, depthM], i) => [s, to(depthM, i)] as const) }
    case 'contours':
      return {
        ...floor,
        edgeDepthM: to(floor.edgeDepthM, 0),
        rings: floor.rings.map((ring, i) => ({ ...ring, depthM: to(ring.depthM, i + 1) })),
      }
    case 'soundings': {
      const first = firstPointOf(floor)
      return {
        ...floor,
        edgeDepthM: floor.edgeDepthM === null ? null : to(floor.edgeDepthM, 0),
        points: floor.points.map(([x, y, depthM], i) => [x, y, to(depthM, i + first)] as const),
      }
    }
    case 'dish':
      return { ...floor, edgeDepthM: to(floor.edgeDepthM, 0), depthM: to(floor.depthM, 1) }
  }
}

/** Places to look at along a plan's box, each way. */
const LOOKS = 40

/** Places in the water, evenly over the plan. */
export function placesInWater({ outline, islands }: Plan): readonly Point[] {
  const { minX, minY, maxX, maxY } = boundsOf(outline)
  const chordM = 1e-3 * Math.max(maxX - minX, maxY - minY)
  const shore = flatten(outline, chordM)
  const dry = islands.map((island) => flatten(island, chordM))
  const places: Point[] = []
  for (let i = 0; i < LOOKS; i++) {
    for (let k = 0; k < LOOKS; k++) {
      const at: Point = [minX + ((i + 0.5) / LOOKS) * (maxX - minX), minY + ((k + 0.5) / LOOKS) * (maxY - minY)]
      if (isInside(shore, at) && !dry.some((island) => isInside(island, at))) places.push(at)
    }
  }
  return places
}
