import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { withFloorKind } from '../other-floors.ts'
import { FLOOR_KINDS } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

/** Another kind of floor: its own where it had one before, else as near to this one as it can be, with its guesses marked. */
export const setFloorKind = defineEdit({
  id: 'setFloorKind',
  label: 'Change kind of floor',
  args: v.strictObject({ bodyId: Id, kind: v.picklist(FLOOR_KINDS) }),
  apply: (spec, { bodyId, kind }) => editBody(spec, bodyId, (body) => ok(withFloorKind(body, kind))),
})
