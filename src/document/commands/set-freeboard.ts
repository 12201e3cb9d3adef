import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { FreeboardSchema } from '../schema/spec.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

export const setFreeboard = defineEdit({
  id: 'setFreeboard',
  label: 'Set rim height',
  args: v.strictObject({ bodyId: Id, freeboardM: FreeboardSchema }),
  apply: (spec, { bodyId, freeboardM }) => editBody(spec, bodyId, (body) => ok({ ...body, freeboardM })),
})
