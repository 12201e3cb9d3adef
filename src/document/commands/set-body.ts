import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { stillAssumed, withFloor } from '../assumed-depths.ts'
import { Id } from '../schema/numbers.ts'
import { BodyChangesSchema } from '../schema/spec.ts'
import { defineEdit } from './define.ts'
import { changed, editBody } from './places.ts'

/**
 * Several parts of a body in one edit. A key that is given as undefined is taken away; one that isn't given stays. The id
 * is what the rest of the document knows the body by, and stays.
 */
export const setBody = defineEdit({
  id: 'setBody',
  label: 'Change basin',
  args: v.strictObject({ bodyId: Id, body: BodyChangesSchema }),
  apply: (spec, { bodyId, body: changes }) =>
    editBody(spec, bodyId, (body) => {
      const next = { ...changed(body, changes), id: body.id }
      if (changes.floor === undefined || 'depthsAssumed' in changes) return ok(next)
      return ok(withFloor(next, changes.floor, stillAssumed(body, changes.floor)))
    }),
})
