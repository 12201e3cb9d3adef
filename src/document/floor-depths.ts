import type { Floor, SoundingsFloor } from '../basin/index.ts'

/** Every depth that a floor states, in its own order [m]. */
export function depthsOfFloor(floor: Floor): readonly number[] {
  switch (floor.kind) {
    case 'flat':
      return [floor.depthM]
    case 'profile':
      return floor.stations.map(([, depthM]) => depthM)
    case 'contours':
      return [floor.edgeDepthM, ...floor.rings.map((ring) => ring.depthM)]
    case 'soundings': {
      const depths = floor.points.map(([, , depthM]) => depthM)
      return floor.edgeDepthM === null ? depths : [floor.edgeDepthM, ...depths]
    }
    case 'dish':
      return [floor.edgeDepthM, floor.depthM]
  }
}

/** Number of the first sounding among a floor's depths: the one along the walls comes first where it is given. */
export function firstPointOf({ edgeDepthM }: SoundingsFloor): number {
  return edgeDepthM === null ? 0 : 1
}

/** The floor with every depth that it states lowered by as much; negative raises it [m]. */
export function deepenedFloor(floor: Floor, byM: number): Floor {
  switch (floor.kind) {
    case 'flat':
      return { ...floor, depthM: floor.depthM + byM }
    case 'profile':
      return { ...floor, stations: floor.stations.map(([s, depthM]) => [s, depthM + byM] as const) }
    case 'contours':
      return {
        ...floor,
        edgeDepthM: floor.edgeDepthM + byM,
        rings: floor.rings.map((ring) => ({ ...ring, depthM: ring.depthM + byM })),
      }
    case 'soundings':
      return {
        ...floor,
        edgeDepthM: floor.edgeDepthM === null ? null : floor.edgeDepthM + byM,
        points: floor.points.map(([x, y, depthM]) => [x, y, depthM + byM] as const),
      }
    case 'dish':
      return { ...floor, edgeDepthM: floor.edgeDepthM + byM, depthM: floor.depthM + byM }
  }
}
