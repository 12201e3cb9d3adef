import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { depth } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

export const setLevel = defineEdit({
  id: 'setLevel',
  label: 'Set water level',
  args: v.strictObject({ bodyId: Id, levelM: depth }),
  apply: (spec, { bodyId, levelM }) => editBody(spec, bodyId, (body) => ok({ ...body, levelM })),
})
