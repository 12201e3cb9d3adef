import { pointOn } from './path-figures.ts'
import type { Path, Point, Segment } from './types.ts'

/** A plane motion: x' = a x + c y + e, y' = b x + d y + f. Move, turn, mirror and even scale only. */
export interface Transform {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  readonly e: number
  readonly f: number
}

/** The same path with a new point on a segment (or on the closing line, index = number of segments). */
export function splitSegment(path: Path, segmentIndex: number, t: number): Path {
  const middle = pointOn(path, segmentIndex, t)
  const segment = path.segments[segmentIndex]
  if (!segment) return { ...path, segments: [...path.segments, { to: middle }] }
  const from = segmentIndex === 0 ? path.start : path.segments[segmentIndex - 1]!.to
  const parts = splitOne(from, segment, t, middle)
  return {
    ...path,
    segments: [...path.segments.slice(0, segmentIndex), ...parts, ...path.segments.slice(segmentIndex + 1)],
  }
}

/** A segment from a point as two that meet at its place t, which is `middle`. */
export function splitOne(from: Point, segment: Segment, t: number, middle: Point): Segment[] {
  if (segment.c1 && segment.c2) {
    // De Casteljau.
    const p01 = mix(from, segment.c1, t)
    const p12 = mix(segment.c1, segment.c2, t)
    const p23 = mix(segment.c2, segment.to, t)
    const p012 = mix(p01, p12, t)
    const p123 = mix(p12, p23, t)
    return [
      { to: mix(p012, p123, t), c1: p01, c2: p012 },
      { to: segment.to, c1: p123, c2: p23 },
    ]
  }
  if (segment.bulge) {
    const quarter = Math.atan(segment.bulge)
    return [
      { to: middle, bulge: Math.tan(quarter * t) },
      { to: segment.to, bulge: Math.tan(quarter * (1 - t)) },
    ]
  }
  return [{ to: middle }, { to: segment.to }]
}

function mix(p: Point, q: Point, t: number): Point {
  return [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]
}

/** The same path travelled the other way. */
export function reversePath(path: Path): Path {
  const { start, segments } = path
  const points = [start, ...segments.map((s) => s.to)]
  const last = points[points.length - 1]!
  const reversed = segments
    .map((segment, i): Segment => {
      const to = points[i]!
      if (segment.c1 && segment.c2) return { to, c1: segment.c2, c2: segment.c1 }
      return segment.bulge ? { to, bulge: -segment.bulge } : { to }
    })
    .reverse()
  return { start: last, segments: reversed }
}

/** A path moved, turned, mirrored or scaled evenly; a bulge changes its sign in a mirror. */
export function transformPath(path: Path, m: Transform): Path {
  const map = ([x, y]: Point): Point => [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f]
  const mirrored = m.a * m.d - m.b * m.c < 0
  return {
    start: map(path.start),
    segments: path.segments.map((segment): Segment => {
      const to = map(segment.to)
      if (segment.c1 && segment.c2) return { to, c1: map(segment.c1), c2: map(segment.c2) }
      return segment.bulge ? { to, bulge: mirrored ? -segment.bulge : segment.bulge } : { to }
    }),
  }
}
