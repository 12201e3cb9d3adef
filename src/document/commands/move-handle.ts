import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import type { Path, Point } from '../../basin/index.ts'
import {
  add,
  arrivingDirection,
  distanceBetween,
  isSmooth,
  leavingDirection,
  nodeAt,
  scaled,
  segmentAt,
  withHandleAlong,
  withSegment,
} from '../path-edit.ts'
import { problem } from '../problems.ts'
import { PointSchema } from '../schema/geometry.ts'
import { Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editRingAt, RING } from './places.ts'

/** Without `keepsSmooth`, a smooth point stays smooth and a corner stays a corner. */
export const moveHandle = defineEdit({
  id: 'moveHandle',
  label: 'Bend curve',
  args: v.strictObject({
    ...RING,
    segment: Index,
    which: v.picklist(['c1', 'c2']),
    to: PointSchema,
    keepsSmooth: v.optional(v.boolean()),
  }),
  apply: (spec, { segment, which, to, keepsSmooth, ...at }) =>
    editRingAt(spec, at, 'segment', segment, (path) => {
      if (segmentAt(path, segment)[which] === undefined) return fail(problem('not-a-curve', 'segment'))
      const node = which === 'c1' ? segment : segment + 1
      return ok(
        (keepsSmooth ?? isSmooth(path, node))
          ? bentSmoothly(path, segment, which, to, node)
          : bent(path, segment, which, to),
      )
    }),
})

function bent(path: Path, segment: number, which: 'c1' | 'c2', to: Point): Path {
  return withSegment(path, segment, { ...segmentAt(path, segment), [which]: to })
}

function bentSmoothly(path: Path, segment: number, which: 'c1' | 'c2', to: Point, node: number): Path {
  const here = nodeAt(path, node)
  const other = which === 'c1' ? 'c2' : 'c1'
  const isOtherCurved = segmentAt(path, which === 'c1' ? node - 1 : node)[other] !== undefined
  if (isOtherCurved) {
    const reach = distanceBetween(here, to)
    if (reach === 0) return bent(path, segment, which, to)
    const opposite: Point = [(here[0] - to[0]) / reach, (here[1] - to[1]) / reach]
    return withHandleAlong(bent(path, segment, which, to), node, other, opposite)
  }
  // Beside a line or an arc only the handle's length is free.
  const along = which === 'c1' ? arrivingDirection(path, node - 1) : scaled(leavingDirection(path, node), -1)
  const reach = Math.max(0, (to[0] - here[0]) * along[0] + (to[1] - here[1]) * along[1])
  return bent(path, segment, which, add(here, scaled(along, reach)))
}
