import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { scaledPlan } from '../affine.ts'
import { between, Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

/** The plan, larger or smaller about its centre; depths stay. */
export const scaleUniform = defineEdit({
  id: 'scaleUniform',
  label: 'Scale plan',
  args: v.strictObject({ bodyId: Id, factor: between(1e-4, 1e4) }),
  apply: (spec, { bodyId, factor }) => editBody(spec, bodyId, (body) => ok(scaledPlan(body, factor))),
})
