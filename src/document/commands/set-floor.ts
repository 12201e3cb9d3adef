import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { FloorSchema } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody, without } from './places.ts'

export const setFloor = defineEdit({
  id: 'setFloor',
  label: 'Change floor',
  args: v.strictObject({ bodyId: Id, floor: FloorSchema }),
  apply: (spec, { bodyId, floor }) =>
    editBody(spec, bodyId, (body) => ok({ ...without(body, 'depthsAssumed'), floor })),
})
