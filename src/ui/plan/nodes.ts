import { type Path, type Point, pathLength, pointOn, type Segment } from '../../basin/index.ts'

/** A segment with where it starts. */
export interface PlacedSegment extends Segment {
  readonly from: Point
}

const same = (a: Point, b: Point) => a[0] === b[0] && a[1] === b[1]

/** The corners of a closed path; node i is where segment i starts. */
export function nodesOf(path: Path): Point[] {
  const nodes: Point[] = [path.start, ...path.segments.map((segment) => segment.to)]
  const last = nodes.at(-1)
  if (nodes.length > 1 && last && same(last, path.start)) nodes.pop()
  return nodes
}

/** Segment i of a path; the line that closes it counts as one. */
export function segmentAt(path: Path, index: number): PlacedSegment | undefined {
  const from = index === 0 ? path.start : path.segments[index - 1]?.to
  if (!from) return undefined
  const segment = path.segments[index]
  if (segment) return { ...segment, from }
  return index === path.segments.length && !same(from, path.start) ? { from, to: path.start } : undefined
}

/** A control point that can be dragged: which segment it belongs to and which end. */
export interface Control {
  readonly segment: number
  readonly which: 'c1' | 'c2'
  readonly at: Point
}

/** The control points on both sides of a node: of the curve that arrives and of the one that leaves. */
export function controlsAt(path: Path, node: number): Control[] {
  const count = nodesOf(path).length
  const before = (node - 1 + count) % count
  const arriving = path.segments[before]
  const leaving = path.segments[node]
  const controls: Control[] = []
  if (arriving?.c2) controls.push({ segment: before, which: 'c2', at: arriving.c2 })
  if (leaving?.c1) controls.push({ segment: node, which: 'c1', at: leaving.c1 })
  return controls
}

const difference = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]]
const unit = ([x, y]: Point): Point | undefined => {
  const length = Math.hypot(x, y)
  return length > 0 ? [x / length, y / length] : undefined
}
const turned = ([x, y]: Point, angle: number): Point => [
  x * Math.cos(angle) - y * Math.sin(angle),
  x * Math.sin(angle) + y * Math.cos(angle),
]

/** The direction of travel at the start or the end of a segment; undefined where it has none. */
export function directionAt(segment: PlacedSegment, end: 'start' | 'end'): Point | undefined {
  const { from, to, c1, c2 } = segment
  if (c1 && c2) {
    const order: Point[] = end === 'start' ? [from, c1, c2, to] : [to, c2, c1, from]
    const first = order.find((p) => !same(p, order[0] ?? p))
    const away = first && order[0] ? unit(difference(first, order[0])) : undefined
    return away && end === 'end' ? [-away[0], -away[1]] : away
  }
  const chord = unit(difference(to, from))
  if (!chord || !segment.bulge) return chord
  const half = 2 * Math.atan(segment.bulge)
  return turned(chord, end === 'start' ? -half : half)
}

/** The length of one segment [m]. */
export function segmentLength(segment: PlacedSegment): number {
  const { from, to, ...rest } = segment
  // There and straight back is a closed path whose length is known.
  const loop = pathLength({ start: from, segments: [{ to, ...rest }, { to: from }] })
  return loop - Math.hypot(to[0] - from[0], to[1] - from[1])
}

/** The point in the middle of a segment. */
export function middleOf(path: Path, index: number): Point {
  return pointOn(path, index, 0.5)
}

/** The radius of an arc of this bulge on this chord [m]; Infinity for a line. */
export function radiusOf(chordM: number, bulge: number): number {
  return bulge === 0 ? Number.POSITIVE_INFINITY : (chordM * (1 + bulge * bulge)) / (4 * Math.abs(bulge))
}

/** The bulge of the lesser or greater arc of a radius on a chord; undefined where the radius can't span it. */
export function bulgeOfRadius(chordM: number, radiusM: number, like: number): number | undefined {
  const ratio = chordM / (2 * radiusM)
  if (!(radiusM > 0) || ratio > 1 + 1e-9) return undefined
  const half = Math.asin(Math.min(1, ratio))
  const size = Math.tan((Math.abs(like) > 1 ? Math.PI - half : half) / 2)
  return like < 0 ? -size : size
}

/** The bulge of the arc over a chord that passes nearest to a point pulled out from its middle. */
export function bulgeThrough(from: Point, to: Point, pulled: Point): number {
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (chord === 0) return 0
  const mx = pulled[0] - (from[0] + to[0]) / 2
  const my = pulled[1] - (from[1] + to[1]) / 2
  // The rise over the chord, positive on its right, where a counter-clockwise arc lies.
  const rise = (mx * (to[1] - from[1]) - my * (to[0] - from[0])) / chord
  return (2 * rise) / chord
}
