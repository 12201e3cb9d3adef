import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { smoothAgain, withNodeMoved } from '../path-edit.ts'
import { PointSchema } from '../schema/geometry.ts'
import { Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editRingAt, RING } from './places.ts'

/** The point's own handles travel with it; where a curve met a line or an arc smoothly, it does so again. */
export const movePoint = defineEdit({
  id: 'movePoint',
  label: 'Move point',
  args: v.strictObject({ ...RING, node: Index, to: PointSchema }),
  apply: (spec, { node, to, ...at }) =>
    editRingAt(spec, at, 'node', node, (path) =>
      ok(smoothAgain(path, withNodeMoved(path, node, to), [node - 1, node, node + 1])),
    ),
})
