import type { Path, Point, Segment } from '../basin/index.ts'

export { closed } from '../basin/index.ts'

/** Below this turn, about half a degree, two segments count as meeting smoothly [rad]. */
const SMOOTH_RAD = 0.01

/** Number of nodes of a closed path: one for each segment. */
export const nodeCount = (path: Path) => path.segments.length

/** Node i, counted round and round. */
export function nodeAt(path: Path, i: number): Point {
  const index = wrap(path, i)
  return index === 0 ? path.start : (path.segments[index - 1]?.to ?? path.start)
}

/** Segment i, counted round and round. */
export function segmentAt(path: Path, i: number): Segment {
  return path.segments[wrap(path, i)] ?? { to: path.start }
}

/** The path with segment i put in place of the old one. */
export function withSegment(path: Path, i: number, segment: Segment): Path {
  const index = wrap(path, i)
  return { ...path, segments: path.segments.map((old, k) => (k === index ? segment : old)) }
}

/** The path with node i somewhere else and its own handles carried along. */
export function withNodeMoved(path: Path, i: number, to: Point): Path {
  const from = nodeAt(path, i)
  const by: Point = [to[0] - from[0], to[1] - from[1]]
  const arriving = segmentAt(path, i - 1)
  let moved = withSegment(path, i - 1, { ...arriving, to, ...(arriving.c2 ? { c2: add(arriving.c2, by) } : {}) })
  const leaving = segmentAt(moved, i)
  if (leaving.c1) moved = withSegment(moved, i, { ...leaving, c1: add(leaving.c1, by) })
  return wrap(path, i) === 0 ? { ...moved, start: to } : moved
}

/** Unit direction in which segment i leaves its first node. */
export function leavingDirection(path: Path, i: number): Point {
  const from = nodeAt(path, i)
  const { to, bulge, c1, c2 } = segmentAt(path, i)
  if (c1 && c2) return firstDirection(from, [c1, c2, to])
  return turned(firstDirection(from, [to]), -2 * Math.atan(bulge ?? 0))
}

/** Unit direction in which segment i arrives at its last node. */
export function arrivingDirection(path: Path, i: number): Point {
  const from = nodeAt(path, i)
  const { to, bulge, c1, c2 } = segmentAt(path, i)
  if (c1 && c2) return scaled(firstDirection(to, [c2, c1, from]), -1)
  return turned(firstDirection(from, [to]), 2 * Math.atan(bulge ?? 0))
}

/** Whether the outline runs through node i without a corner. */
export function isSmooth(path: Path, i: number): boolean {
  const a = arrivingDirection(path, i - 1)
  const b = leavingDirection(path, i)
  return a[0] * b[0] + a[1] * b[1] > 0 && Math.abs(a[0] * b[1] - a[1] * b[0]) < SMOOTH_RAD
}

/**
 * Where a node ran smoothly before an edit and no longer does, the handle of a curve turns to follow the line or arc on the
 * other side of it.
 */
export function smoothAgain(before: Path, after: Path, nodes: readonly number[]): Path {
  let path = after
  for (const i of nodes) {
    if (!isSmooth(before, i)) continue
    const arrivesCurved = segmentAt(path, i - 1).c2 !== undefined
    const leavesCurved = segmentAt(path, i).c1 !== undefined
    if (arrivesCurved && !leavesCurved) path = withHandleAlong(path, i, 'c2', scaled(leavingDirection(path, i), -1))
    else if (leavesCurved && !arrivesCurved) path = withHandleAlong(path, i, 'c1', arrivingDirection(path, i - 1))
  }
  return path
}

/** The path with the handle of node i turned into a direction, its length kept. c1 leaves the node, c2 arrives at it. */
export function withHandleAlong(path: Path, i: number, which: 'c1' | 'c2', direction: Point): Path {
  const node = nodeAt(path, i)
  const index = which === 'c1' ? i : i - 1
  const segment = segmentAt(path, index)
  const handle = segment[which]
  if (!handle) return path
  return withSegment(path, index, { ...segment, [which]: add(node, scaled(direction, distanceBetween(node, handle))) })
}

export function add(a: Point, b: Point): Point {
  return [a[0] + b[0], a[1] + b[1]]
}

export function scaled(a: Point, by: number): Point {
  return [a[0] * by, a[1] * by]
}

export function between(a: Point, b: Point, t: number): Point {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]
}

export function distanceBetween(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1])
}

function wrap(path: Path, i: number): number {
  const n = path.segments.length
  return ((i % n) + n) % n
}

/** Towards the first of the points that isn't where we stand. */
function firstDirection(from: Point, points: readonly Point[]): Point {
  for (const point of points) {
    const length = distanceBetween(from, point)
    if (length > 0) return [(point[0] - from[0]) / length, (point[1] - from[1]) / length]
  }
  return [1, 0]
}

function turned(a: Point, by: number): Point {
  const cos = Math.cos(by)
  const sin = Math.sin(by)
  return [a[0] * cos - a[1] * sin, a[0] * sin + a[1] * cos]
}
