import type { Path, Point } from '../../../basin/index.ts'
import { closed, kindOf, type SegmentKind } from '../../../document/index.ts'

export interface RingNode {
  readonly at: Point
  /** How it goes on from here to the next point. */
  readonly next: SegmentKind
}

/** The points of a closed path, each once, with what runs from it to the next. */
export function nodesOf(path: Path): readonly RingNode[] {
  const { start, segments } = closed(path)
  return segments.map((segment, i) => ({ at: segments[i - 1]?.to ?? start, next: kindOf(segment) }))
}
