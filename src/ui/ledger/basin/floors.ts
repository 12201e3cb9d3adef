import { boundsOf, type Floor, type Path } from '../../../basin/index.ts'

/** A flat floor at the mean depth of a profile's first and last station. */
export function levelFloor(floor: Floor): Floor {
  if (floor.kind === 'flat') return floor
  const depths = floor.stations.map(([, depthM]) => depthM)
  const first = depths[0] ?? 0
  const last = depths[depths.length - 1] ?? first
  return { kind: 'flat', depthM: (first + last) / 2 }
}

/** A profile along the outline's longer side, as deep at both ends as the flat floor was. */
export function slopingFloor(floor: Floor, outline: Path): Floor {
  if (floor.kind === 'profile') return floor
  const box = boundsOf(outline)
  const width = box.maxX - box.minX
  const height = box.maxY - box.minY
  const x = (box.minX + box.maxX) / 2
  const y = (box.minY + box.maxY) / 2
  const isAcross = width >= height
  return {
    kind: 'profile',
    axis: isAcross ? { from: [box.minX, y], to: [box.maxX, y] } : { from: [x, box.minY], to: [x, box.maxY] },
    stations: [
      [0, floor.depthM],
      [isAcross ? width : height, floor.depthM],
    ],
  }
}

/** Where a new station would help most: in the middle of the longest stretch, at the depth that is there now. */
export function nextStation(stations: readonly (readonly [number, number])[]): readonly [number, number] {
  const first = stations[0] ?? [0, 0]
  const last = stations[stations.length - 1] ?? first
  let best: readonly [number, number] = [last[0] + 1, last[1]]
  let longest = 0
  stations.forEach((to, i) => {
    const from = stations[i - 1]
    if (!from || to[0] - from[0] <= longest) return
    longest = to[0] - from[0]
    best = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  })
  return best
}
