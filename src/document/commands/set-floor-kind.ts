import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { floorAs } from '../floor-kinds.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

/** Another kind of floor, as near to the one before as it can be. Depths that nobody said stay marked as assumed. */
export const setFloorKind = defineEdit({
  id: 'setFloorKind',
  label: 'Change kind of floor',
  args: v.strictObject({ bodyId: Id, kind: v.picklist(['flat', 'profile', 'contours', 'soundings', 'dish']) }),
  apply: (spec, { bodyId, kind }) => editBody(spec, bodyId, (body) => ok({ ...body, floor: floorAs(kind, body) })),
})
