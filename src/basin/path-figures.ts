import { evaluate, newJet } from './curve.ts'
import { addMoments, lengthMoments } from './edge-integrals.ts'
import { curvesOf } from './path.ts'
import { type Foot, footOn, spanCuts } from './span.ts'
import type { Path, Point } from './types.ts'

export interface Bounds {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

export interface NearestPoint {
  /** The segment, or the number of segments for the line that closes the path. */
  readonly segmentIndex: number
  readonly t: number
  readonly point: Point
  readonly distanceM: number
}

const jet = newJet()

/** The box of a path, exact on arcs and cubics [m]. */
export function boundsOf(path: Path): Bounds {
  let [minX, minY] = path.start
  let [maxX, maxY] = path.start
  for (const curve of curvesOf(path))
    for (const t of spanCuts(curve, 0)) {
      evaluate(curve, t, jet)
      minX = Math.min(minX, jet.x)
      minY = Math.min(minY, jet.y)
      maxX = Math.max(maxX, jet.x)
      maxY = Math.max(maxY, jet.y)
    }
  return { minX, minY, maxX, maxY }
}

/** Length round a path [m], the closing line included. */
export function pathLength(path: Path): number {
  let length = 0
  for (const curve of curvesOf(path)) {
    const cuts = spanCuts(curve, 0)
    for (let i = 1; i < cuts.length; i++) length += lengthMoments(curve, cuts[i - 1]!, cuts[i]!).length
  }
  return length
}

/** Area of a path [m²], positive where it runs counter-clockwise. */
export function areaOf(path: Path): number {
  const moments = { area: 0, areaX: 0, areaY: 0 }
  for (const curve of curvesOf(path, path.start[0], path.start[1])) {
    const cuts = spanCuts(curve, 0)
    for (let i = 1; i < cuts.length; i++) addMoments(curve, cuts[i - 1]!, cuts[i]!, 1, moments)
  }
  return moments.area
}

/** The point of a segment at t from 0 to 1. */
export function pointOn(path: Path, segmentIndex: number, t: number): Point {
  const curve = curvesOf(path)[segmentIndex]
  if (!curve) return path.start
  evaluate(curve, t, jet)
  return [jet.x, jet.y]
}

/** The point of a path nearest to a place. */
export function nearestOn(path: Path, x: number, y: number): NearestPoint {
  const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }
  let best: NearestPoint = {
    segmentIndex: 0,
    t: 0,
    point: path.start,
    distanceM: Math.hypot(x - path.start[0], y - path.start[1]),
  }
  curvesOf(path).forEach((curve, segmentIndex) => {
    const cuts = spanCuts(curve, 0)
    for (let i = 1; i < cuts.length; i++) {
      footOn(curve, cuts[i - 1]!, cuts[i]!, x, y, foot)
      if (foot.distance < best.distanceM)
        best = { segmentIndex, t: foot.t, point: [foot.x, foot.y], distanceM: foot.distance }
    }
  })
  return best
}
