import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { DishFormSchema, depth, PointSchema, radius } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editFloor, replaced } from './places.ts'

/** What isn't given stays. A hollow that is only moved or widened says no depth that wasn't there. */
export const setDish = defineEdit({
  id: 'setDish',
  label: 'Change dished floor',
  args: v.strictObject({
    bodyId: Id,
    form: v.exactOptional(DishFormSchema),
    centre: v.exactOptional(PointSchema),
    radiusM: v.exactOptional(radius),
    depthM: v.exactOptional(depth),
  }),
  apply: (spec, { bodyId, ...changes }) =>
    editFloor(spec, bodyId, 'dish', (floor, assumed) =>
      ok([{ ...floor, ...changes }, changes.depthM === undefined ? assumed : replaced(assumed, 1, false)]),
    ),
})
