import { type Bounds, boundsOf, type Floor, type Path, type Point } from '../../../basin/index.ts'
import { movedFloor } from '../../../document/index.ts'

const widthOf = (box: Bounds) => box.maxX - box.minX
const heightOf = (box: Bounds) => box.maxY - box.minY

/** A floor laid under a new outline: all of it keeps its place in the outline's box, its stations their share of the axis. */
export function floorUnder(floor: Floor, was: Path, now: Path): Floor {
  const from = boundsOf(was)
  const to = boundsOf(now)
  if (!(widthOf(from) > 0) || !(heightOf(from) > 0)) return floor
  const a = widthOf(to) / widthOf(from)
  const d = heightOf(to) / heightOf(from)
  return movedFloor(floor, { a, b: 0, c: 0, d, e: to.minX - a * from.minX, f: to.minY - d * from.minY })
}

/** The middle of a path's box. */
export function middleOf(path: Path): Point {
  const box = boundsOf(path)
  return [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
}
