import { type Bounds, boundsOf, type Floor, type Path, type Point } from '../../../basin/index.ts'

const widthOf = (box: Bounds) => box.maxX - box.minX
const heightOf = (box: Bounds) => box.maxY - box.minY

/** The same place in another box: shares of its width and height are kept. */
function moved([x, y]: Point, from: Bounds, to: Bounds): Point {
  const share = (value: number, low: number, size: number) => (size > 0 ? (value - low) / size : 0.5)
  return [
    to.minX + share(x, from.minX, widthOf(from)) * widthOf(to),
    to.minY + share(y, from.minY, heightOf(from)) * heightOf(to),
  ]
}

/** A floor laid under a new outline: the axis keeps its place in the box, its stations their share of the axis. */
export function floorUnder(floor: Floor, was: Path, now: Path): Floor {
  if (floor.kind === 'flat') return floor
  const from = boundsOf(was)
  const to = boundsOf(now)
  const axis = { from: moved(floor.axis.from, from, to), to: moved(floor.axis.to, from, to) }
  const lengthOf = (a: Point, b: Point) => Math.hypot(b[0] - a[0], b[1] - a[1])
  const before = lengthOf(floor.axis.from, floor.axis.to)
  const after = lengthOf(axis.from, axis.to)
  if (!(before > 0) || !(after > 0)) return floor
  const stretch = after / before
  return { ...floor, axis, stations: floor.stations.map(([sM, depthM]) => [sM * stretch, depthM] as const) }
}

/** The middle of a path's box. */
export function middleOf(path: Path): Point {
  const box = boundsOf(path)
  return [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
}
