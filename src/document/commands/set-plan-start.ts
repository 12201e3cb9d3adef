import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id, Moment } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { changed, editSystem } from './places.ts'

/** When the opening starts, so that its days are the same for everyone who has the link; without `at` it is open. */
export const setPlanStart = defineEdit({
  id: 'setPlanStart',
  label: 'Set start of the opening',
  args: v.strictObject({ systemId: Id, at: v.optional(Moment) }),
  apply: (spec, { systemId, at }) => editSystem(spec, systemId, (system) => ok(changed(system, { planStartAt: at }))),
})
