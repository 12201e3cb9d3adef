import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { depth } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { ReferenceSchema } from '../schema/spec.ts'
import { defineEdit } from './define.ts'
import { changed, editBody } from './places.ts'

/** What typed depths are measured from; stored depths don't change. */
export const setDepthReference = defineEdit({
  id: 'setDepthReference',
  label: 'Set what depths are measured from',
  args: v.strictObject({ bodyId: Id, reference: ReferenceSchema, tileLineM: v.exactOptional(depth) }),
  apply: (spec, { bodyId, reference, ...tileLine }) =>
    editBody(spec, bodyId, (body) => ok(changed(body, { depthsMeasuredFrom: reference, ...tileLine }))),
})
