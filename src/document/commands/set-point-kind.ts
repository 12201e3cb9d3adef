import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import type { Path, Point } from '../../basin/index.ts'
import {
  arrivingDirection,
  between,
  leavingDirection,
  nodeAt,
  scaled,
  segmentAt,
  withHandleAlong,
  withSegment,
} from '../path-edit.ts'
import { Index } from '../schema/numbers.ts'
import { asKind } from '../segment-kinds.ts'
import { defineEdit } from './define.ts'
import { editRingAt, RING } from './places.ts'

export const setPointKind = defineEdit({
  id: 'setPointKind',
  label: 'Change point',
  args: v.strictObject({ ...RING, node: Index, kind: v.picklist(['corner', 'smooth']) }),
  apply: (spec, { node, kind, ...at }) =>
    editRingAt(spec, at, 'node', node, (path) => ok(kind === 'smooth' ? smoothed(path, node) : cornered(path, node))),
})

/** A curve follows the line or arc beside it; two curves meet halfway; two others become curves first. */
function smoothed(path: Path, node: number): Path {
  const arrives = segmentAt(path, node - 1).c2 !== undefined
  const leaves = segmentAt(path, node).c1 !== undefined
  if (arrives && !leaves) return withHandleAlong(path, node, 'c2', scaled(leavingDirection(path, node), -1))
  if (leaves && !arrives) return withHandleAlong(path, node, 'c1', arrivingDirection(path, node - 1))
  const first = withSegment(path, node - 1, asKind(path, node - 1, 'curve'))
  const both = withSegment(first, node, asKind(first, node, 'curve'))
  const along = halfway(both, node)
  return withHandleAlong(withHandleAlong(both, node, 'c1', along), node, 'c2', scaled(along, -1))
}

function halfway(path: Path, node: number): Point {
  const a = arrivingDirection(path, node - 1)
  const b = leavingDirection(path, node)
  const sum: Point = [a[0] + b[0], a[1] + b[1]]
  const size = Math.hypot(sum[0], sum[1])
  // A spike has no direction of its own: across it then.
  return size > 1e-6 ? [sum[0] / size, sum[1] / size] : [-a[1], a[0]]
}

/** The handles point at the neighbours, so that the corner shows. */
function cornered(path: Path, node: number): Path {
  const at = nodeAt(path, node)
  let result = path
  const before = segmentAt(path, node - 1)
  if (before.c2) result = withSegment(result, node - 1, { ...before, c2: between(at, nodeAt(path, node - 1), 1 / 3) })
  const after = segmentAt(result, node)
  if (after.c1) result = withSegment(result, node, { ...after, c1: between(at, nodeAt(path, node + 1), 1 / 3) })
  return result
}
