import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { type Path, type Point, pathLength } from '../../basin/index.ts'
import { between, distanceBetween, nodeAt, segmentAt, smoothAgain, withNodeMoved, withSegment } from '../path-edit.ts'
import { problem } from '../problems.ts'
import { Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editRingAt, LENGTH, RING } from './places.ts'

/** Scales the side about its first point, so that its form stays and its length is exact; its last point moves. */
export const setSegmentLength = defineEdit({
  id: 'setSegmentLength',
  label: 'Set length',
  args: v.strictObject({
    ...RING,
    segment: Index,
    lengthM: LENGTH,
  }),
  apply: (spec, { segment, lengthM, ...at }) =>
    editRingAt(spec, at, 'segment', segment, (path) => {
      const old = lengthOf(path, segment)
      if (!(old > 0)) return fail(problem('no-length', 'segment', { detail: 'side' }))
      const by = lengthM / old
      const from = nodeAt(path, segment)
      const side = segmentAt(path, segment)
      const grown = (p: Point) => between(from, p, by)
      const moved = withNodeMoved(path, segment + 1, grown(side.to))
      const scaledSide = {
        ...segmentAt(moved, segment),
        ...(side.c1 && side.c2 ? { c1: grown(side.c1), c2: grown(side.c2) } : {}),
      }
      return ok(smoothAgain(path, withSegment(moved, segment, scaledSide), [segment + 2]))
    }),
})

/** Length of one side [m]: of the path that it makes alone, less the line that closes it. */
function lengthOf(path: Path, segment: number): number {
  const from = nodeAt(path, segment)
  const side = segmentAt(path, segment)
  return pathLength({ start: from, segments: [side] }) - distanceBetween(from, side.to)
}
