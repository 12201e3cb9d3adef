import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { assumedDepths, withFloor } from '../assumed-depths.ts'
import { depthsOfFloor } from '../floor-depths.ts'
import { Id } from '../schema/numbers.ts'
import { BodyChangesSchema } from '../schema/spec.ts'
import type { Body } from '../types.ts'
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

/** A floor that is only moved or stretched says no depth that wasn't there; one of other depths says those that differ. */
function stillAssumed(before: Body, floor: Body['floor']): readonly boolean[] {
  const [was, now] = [depthsOfFloor(before.floor), depthsOfFloor(floor)]
  const isSameKind = before.floor.kind === floor.kind && was.length === now.length
  return assumedDepths(before).map((is, i) => is && isSameKind && was[i] === now[i])
}
