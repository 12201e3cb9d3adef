import * as v from 'valibot'
import { PointSchema } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody, mapped, profileOf } from './places.ts'

/** One end of A–A′; the stations keep their distances from A. */
export const moveAxis = defineEdit({
  id: 'moveAxis',
  label: 'Move section line',
  args: v.strictObject({ bodyId: Id, end: v.picklist(['from', 'to']), to: PointSchema }),
  apply: (spec, { bodyId, end, to }) =>
    editBody(spec, bodyId, (body) =>
      mapped(profileOf(body), (floor) => ({ ...body, floor: { ...floor, axis: { ...floor.axis, [end]: to } } })),
    ),
})
