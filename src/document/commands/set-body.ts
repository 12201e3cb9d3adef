import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { depthsOfFloor } from '../floor-depths.ts'
import { Id } from '../schema/numbers.ts'
import { BodyChangesSchema } from '../schema/spec.ts'
import type { Body } from '../types.ts'
import { defineEdit } from './define.ts'
import { changed, editBody, without } from './places.ts'

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
      const saysDepths = changes.floor !== undefined && said(changes.floor) !== said(body.floor)
      return ok(saysDepths ? without(next, 'depthsAssumed') : next)
    }),
})

/** A floor that is only moved or stretched says no depth that wasn't there. */
function said(floor: Body['floor']): string {
  return JSON.stringify(depthsOfFloor(floor))
}
