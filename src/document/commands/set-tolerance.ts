import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { ToleranceSchema } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

export const setTolerance = defineEdit({
  id: 'setTolerance',
  label: 'Set accuracy',
  args: v.strictObject({ bodyId: Id, tolerance: ToleranceSchema }),
  apply: (spec, { bodyId, tolerance }) => editBody(spec, bodyId, (body) => ok({ ...body, tolerance })),
})
