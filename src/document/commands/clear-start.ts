import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { changed, editSystem } from './places.ts'

/** No start is under way: the usual targets hold, and no schedule is shown. What was ticked off stays in the log. */
export const clearStart = defineEdit({
  id: 'clearStart',
  label: 'End start',
  args: v.strictObject({ systemId: Id }),
  apply: (spec, { systemId }) => editSystem(spec, systemId, (system) => ok(changed(system, { start: undefined }))),
})
