import * as v from 'valibot'
import { Id } from '../schema/numbers.ts'
import { stretched } from '../stretch.ts'
import { defineEdit } from './define.ts'
import { editBody, LENGTH } from './places.ts'

/** One overall dimension, typed: x across the sheet, y up it. */
export const stretchOutline = defineEdit({
  id: 'stretchOutline',
  label: 'Set overall length',
  args: v.strictObject({ bodyId: Id, axis: v.picklist(['x', 'y']), lengthM: LENGTH }),
  apply: (spec, { bodyId, axis, lengthM }) => editBody(spec, bodyId, (body) => stretched(body, axis, lengthM)),
})
