import { nearestOn, type Path, pointOn } from '../basin/index.ts'
import type { Feature } from '../features/index.ts'
import { closed, nodeCount } from './path-edit.ts'
import { piecesOf } from './segment-kinds.ts'

/** Which sides of a new outline a side of the old one has become: the first and the last of them. */
export type Sides = (side: number) => readonly [first: number, last: number]

/** Sides after one of them was split in two. */
export function sidesAfterSplit(split: number): Sides {
  return (side) => (side < split ? [side, side] : side === split ? [side, side + 1] : [side + 1, side + 1])
}

/** Sides of an outline of `count` nodes after one node was taken away and the sides beside it joined. */
export function sidesAfterRemoval(node: number, count: number): Sides {
  // Without the first node the path starts at the second, and what was joined comes last.
  if (node === 0) return (side) => (side === 0 ? [count - 2, count - 2] : [side - 1, side - 1])
  return (side) => (side < node ? [side, side] : [side - 1, side - 1])
}

/** Sides of an outline whose arcs became curves, some of several pieces. */
export function sidesAsCurves(outline: Path): Sides {
  const firsts = [0]
  for (const segment of closed(outline).segments) firsts.push((firsts.at(-1) ?? 0) + piecesOf(segment))
  return (side) => [firsts[side] ?? side, (firsts[side + 1] ?? side + 1) - 1]
}

/** Sides of an outline whose line was laid anew: what lies nearest to the middle of the old side. */
export function sidesNearest(before: Path, after: Path): Sides {
  return (side) => {
    const [x, y] = pointOn(before, side, 0.5)
    const { segmentIndex } = nearestOn(after, x, y)
    const nearest = Math.min(segmentIndex, nodeCount(closed(after)) - 1)
    return [nearest, nearest]
  }
}

/** The features of an outline whose sides were renumbered: a bench along the wall stays where it is. */
export function withSides(features: readonly Feature[], outline: Path, sides: Sides): readonly Feature[] {
  if (!features.some((feature) => 'along' in feature)) return features
  const count = nodeCount(closed(outline))
  return features.map((feature) => {
    if (!('along' in feature)) return feature
    const { fromSegment, toSegment } = feature.along
    if (fromSegment >= count || toSegment >= count) return feature
    const isAllRound = (((toSegment - fromSegment) % count) + count) % count === count - 1
    const last = Math.max(...Array.from({ length: count }, (_, i) => sides(i)[1]))
    const along = isAllRound
      ? { fromSegment: 0, toSegment: last }
      : { fromSegment: sides(fromSegment)[0], toSegment: sides(toSegment)[1] }
    return { ...feature, along: { ...feature.along, ...along } }
  })
}
