import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id } from '../schema/numbers.ts'
import { stretched } from '../stretch.ts'
import { defineEdit } from './define.ts'
import { editBody, LENGTH } from './places.ts'

/** One or both known lengths of a sketch, across and up the sheet; with both it is a drawing. */
export const scaleSketch = defineEdit({
  id: 'scaleSketch',
  label: 'Scale sketch',
  args: v.strictObject({ bodyId: Id, lengthM: v.optional(LENGTH), widthM: v.optional(LENGTH) }),
  apply: (spec, { bodyId, lengthM, widthM }) =>
    editBody(spec, bodyId, (body) => {
      if (body.sketch === undefined) return fail(problem('not-a-sketch', 'bodyId'))
      const first = lengthM === undefined ? ok(body) : stretched(body, 'x', lengthM)
      return first.ok && widthM !== undefined ? stretched(first.value, 'y', widthM) : first
    }),
})
