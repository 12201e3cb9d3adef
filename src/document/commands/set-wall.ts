import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { WallSchema } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

export const setWall = defineEdit({
  id: 'setWall',
  label: 'Change wall',
  args: v.strictObject({ bodyId: Id, wall: WallSchema }),
  apply: (spec, { bodyId, wall }) => editBody(spec, bodyId, (body) => ok({ ...body, wall })),
})
