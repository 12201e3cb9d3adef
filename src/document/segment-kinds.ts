import { type Path, type Point, type Segment, splitSegment } from '../basin/index.ts'
import {
  add,
  arrivingDirection,
  between,
  distanceBetween,
  leavingDirection,
  nodeAt,
  scaled,
  segmentAt,
  withSegment,
} from './path-edit.ts'

export type SegmentKind = 'line' | 'arc' | 'curve'

/** Below this an arc is as good as straight; an arc made from a line gets FRESH_BULGE instead, so that it can be seen. */
const STRAIGHT = 1e-3
const FRESH_BULGE = 0.25

export function kindOf(segment: Segment): SegmentKind {
  if (segment.c1 && segment.c2) return 'curve'
  return segment.bulge ? 'arc' : 'line'
}

/** Segment i as one of another kind, between the same nodes and as near to its old course as one segment can be. */
export function asKind(path: Path, i: number, kind: SegmentKind): Segment {
  const segment = segmentAt(path, i)
  if (kindOf(segment) === kind) return segment
  if (kind === 'line') return plain(segment)
  if (kind === 'curve') return asCurve(path, i)
  const bulge = bulgeOf(path, i)
  return { ...plain(segment), bulge: Math.abs(bulge) > STRAIGHT ? bulge : FRESH_BULGE * (turnsLeft(path) ? 1 : -1) }
}

/** The segment without bulge and handles. */
export function plain(segment: Segment): Segment {
  const { bulge: _, c1: __, c2: ___, ...rest } = segment
  return rest
}

/**
 * The cubic through the ends of an arc with its tangents there and its middle.
 * Equation: handle = 4/3 tan(θ/4) R = chord (1 + bulge²) / 3
 * Source: the standard approximation of an arc by one cubic (from memory). Accuracy: radius off by 3e-4 at 90°, 2 % at 180°.
 */
function asCurve(path: Path, i: number): Segment {
  const segment = segmentAt(path, i)
  const from = nodeAt(path, i)
  const handle = (distanceBetween(from, segment.to) * (1 + (segment.bulge ?? 0) ** 2)) / 3
  return {
    ...plain(segment),
    c1: add(from, scaled(leavingDirection(path, i), handle)),
    c2: add(segment.to, scaled(arrivingDirection(path, i), -handle)),
  }
}

/** An arc is split below this angle before it becomes curves, which then follow it within 5e-6 of its radius [rad]. */
const PIECE_RAD = Math.PI / 4

/** Into how many curves a segment goes where arcs become curves; 1 where it stays what it is. */
export function piecesOf(segment: Segment): number {
  return segment.bulge ? Math.ceil((4 * Math.abs(Math.atan(segment.bulge))) / PIECE_RAD) : 1
}

/** The path with every arc in curves, each of an eighth of a turn at most. */
export function asCurves(path: Path): Path {
  let result = path
  for (let i = path.segments.length - 1; i >= 0; i--) {
    const segment = path.segments[i]
    if (!segment?.bulge) continue
    const pieces = piecesOf(segment)
    let split = result
    for (let k = 0; k < pieces - 1; k++) split = splitSegment(split, i + k, 1 / (pieces - k))
    for (let k = 0; k < pieces; k++) split = withSegment(split, i + k, asCurve(split, i + k))
    result = split
  }
  return result
}

/** The bulge of the arc through both ends and the middle of segment i; positive to the right of its travel. */
function bulgeOf(path: Path, i: number): number {
  const segment = segmentAt(path, i)
  if (!segment.c1 || !segment.c2) return segment.bulge ?? 0
  const from = nodeAt(path, i)
  const chord = distanceBetween(from, segment.to)
  if (chord === 0) return 0
  const middle = between(between(from, segment.to, 0.5), between(segment.c1, segment.c2, 0.5), 0.75)
  const chordMiddle = between(from, segment.to, 0.5)
  const right: Point = [(segment.to[1] - from[1]) / chord, (from[0] - segment.to[0]) / chord]
  return (2 * ((middle[0] - chordMiddle[0]) * right[0] + (middle[1] - chordMiddle[1]) * right[1])) / chord
}

/** Whether the ring of nodes runs counter-clockwise: then an outward arc has a positive bulge. */
function turnsLeft(path: Path): boolean {
  let twiceArea = 0
  for (let i = 0; i < path.segments.length; i++) {
    const a = nodeAt(path, i)
    const b = nodeAt(path, i + 1)
    twiceArea += (a[0] - path.start[0]) * (b[1] - path.start[1]) - (b[0] - path.start[0]) * (a[1] - path.start[1])
  }
  return twiceArea >= 0
}

/** One segment in place of i − 1 and i, once the node between them is gone; undoes an insertion exactly. */
export function merged(path: Path, node: number): Segment {
  const first = segmentAt(path, node - 1)
  const second = segmentAt(path, node)
  if (kindOf(first) === 'line' && kindOf(second) === 'line') return { ...plain(first), to: second.to }
  const from = nodeAt(path, node - 1)
  const at = nodeAt(path, node)
  const asOneArc = mergedArc(from, at, first, second)
  if (asOneArc !== undefined) return { ...plain(first), to: second.to, bulge: asOneArc }
  const a = asKind(path, node - 1, 'curve')
  const b = asKind(path, node, 'curve')
  const c1 = a.c1 ?? from
  const c2 = b.c2 ?? second.to
  // Where a cubic was split, its handles at the new node are in the ratio of the two parts.
  const before = distanceBetween(a.c2 ?? at, at)
  const after = distanceBetween(at, b.c1 ?? at)
  const t = before + after > 0 ? Math.min(0.95, Math.max(0.05, before / (before + after))) : 0.5
  return { ...plain(first), to: second.to, c1: between(from, c1, 1 / t), c2: between(second.to, c2, 1 / (1 - t)) }
}

/** The bulge of two arcs that lie on one circle, joined. */
function mergedArc(from: Point, at: Point, first: Segment, second: Segment): number | undefined {
  if (!first.bulge || !second.bulge) return undefined
  const radius = (a: Point, b: Point, bulge: number) => (distanceBetween(a, b) * (1 + bulge * bulge)) / (4 * bulge)
  const r = radius(from, at, first.bulge)
  const quarter = Math.atan(first.bulge) + Math.atan(second.bulge)
  const bulge = Math.tan(quarter)
  // On one circle the chord of both has to fit the radius of each.
  const fits = (value: number) => Math.abs(value - r) < 1e-6 * Math.abs(r)
  return Math.abs(quarter) < 1.5 && fits(radius(at, second.to, second.bulge)) && fits(radius(from, second.to, bulge))
    ? bulge
    : undefined
}
