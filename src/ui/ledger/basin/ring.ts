import type { Path, Point, Segment } from '../../../basin/index.ts'

export interface RingNode {
  readonly at: Point
  /** How it goes on from here to the next point. */
  readonly next: 'line' | 'arc' | 'curve'
}

function kindOf(segment: Segment | undefined): RingNode['next'] {
  if (!segment) return 'line'
  if (segment.c1 && segment.c2) return 'curve'
  return segment.bulge !== undefined && segment.bulge !== 0 ? 'arc' : 'line'
}

/** The points of a closed path, each once, with what runs from it to the next. */
export function nodesOf(path: Path): readonly RingNode[] {
  const last = path.segments[path.segments.length - 1]?.to
  const isClosed = last !== undefined && last[0] === path.start[0] && last[1] === path.start[1]
  const points = [path.start, ...path.segments.map((segment) => segment.to)]
  return (isClosed ? points.slice(0, -1) : points).map((at, i) => ({ at, next: kindOf(path.segments[i]) }))
}
