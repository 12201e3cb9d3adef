import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { PathSchema } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

export const setOutline = defineEdit({
  id: 'setOutline',
  label: 'Change outline',
  args: v.strictObject({ bodyId: Id, outline: PathSchema }),
  apply: (spec, { bodyId, outline }) => editBody(spec, bodyId, (body) => ok({ ...body, outline })),
})
