import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { DishFormSchema, depth, PointSchema, radius } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody, editFloor } from './places.ts'

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
    changes.depthM === undefined
      ? editBody(spec, bodyId, (body) =>
          body.floor.kind === 'dish'
            ? ok({ ...body, floor: { ...body.floor, ...changes } })
            : fail(problem('not-a-dish', 'bodyId')),
        )
      : editFloor(spec, bodyId, 'dish', (floor) => ok({ ...floor, ...changes })),
})
