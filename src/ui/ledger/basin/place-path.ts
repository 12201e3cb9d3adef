import { boundsOf, type Path, type Point, transformPath } from '../../../basin/index.ts'
import { middleOf } from './new-body.ts'

/** A path with the middle of its box at another place. */
export function movedTo(path: Path, middle: Point): Path {
  const [x, y] = middleOf(path)
  return transformPath(path, { a: 1, b: 0, c: 0, d: 1, e: middle[0] - x, f: middle[1] - y })
}

/** Share of the outline's smaller side that a new island measures across. */
const ISLAND_SHARE = 0.15

/** A round island in the middle of an outline, to be dragged to where it belongs. */
export function islandIn(outline: Path): Path {
  const box = boundsOf(outline)
  const radius = (ISLAND_SHARE / 2) * Math.min(box.maxX - box.minX, box.maxY - box.minY)
  const [x, y] = middleOf(outline)
  // Four quarter arcs: bulge = tan(90° / 4).
  const bulge = Math.SQRT2 - 1
  const at = (dx: number, dy: number): Point => [x + dx * radius, y + dy * radius]
  return {
    start: at(1, 0),
    segments: [at(0, 1), at(-1, 0), at(0, -1), at(1, 0)].map((to) => ({ to, bulge })),
  }
}
