import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { deepenedFloor } from '../floor-depths.ts'
import { depth } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

/** Every depth of the floor by as much, deeper or (negative) shallower; features stay, and what nobody has read is still assumed. */
export const shiftDepths = defineEdit({
  id: 'shiftDepths',
  label: 'Lower the floor',
  args: v.strictObject({ bodyId: Id, byM: depth }),
  apply: (spec, { bodyId, byM }) =>
    editBody(spec, bodyId, (body) => ok({ ...body, floor: deepenedFloor(body.floor, byM) })),
})
