import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { readingsKept } from '../readings-kept.ts'
import { depth } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { FreeboardSchema } from '../schema/spec.ts'
import { defineEdit } from './define.ts'
import { changed, editBody } from './places.ts'

/** The height of the rim or the tile line put right: depths read from there stay as they were read. */
export const correctReference = defineEdit({
  id: 'correctReference',
  label: 'Correct what depths are measured from',
  args: v.strictObject({
    bodyId: Id,
    freeboardM: v.exactOptional(FreeboardSchema),
    // A tile line whose height isn't known is given as undefined.
    tileLineM: v.optional(depth),
  }),
  apply: (spec, { bodyId, ...heights }) =>
    editBody(spec, bodyId, (body) => ok(readingsKept(body, changed(body, heights)))),
})
