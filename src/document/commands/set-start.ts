import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { Id, Moment } from '../schema/numbers.ts'
import { StartModeId, StartValuesSchema } from '../schema/owner.ts'
import { defineEdit } from './define.ts'
import { changed, editSystem } from './places.ts'
import { startValuesTrouble } from './start-places.ts'

/** How the pool starts, and since when. Values that were told before stay, unless others are given: another start may ask for the same. */
export const setStart = defineEdit({
  id: 'setStart',
  label: 'Choose start',
  args: v.strictObject({ systemId: Id, mode: StartModeId, at: Moment, values: v.exactOptional(StartValuesSchema) }),
  apply: (spec, { systemId, mode, at, values }) =>
    editSystem(spec, systemId, (system) => {
      const trouble = startValuesTrouble(mode, values ?? {})
      if (trouble) return fail(trouble)
      return ok({
        ...system,
        start: changed(system.start ?? { mode, at }, { mode, at, ...(values ? { values } : {}) }),
      })
    }),
})
