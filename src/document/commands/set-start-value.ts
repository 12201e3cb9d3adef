import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { finite, Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { changed, editSystem } from './places.ts'
import { startValuesTrouble } from './start-places.ts'

/** One value that the start asks for, in canonical units; without `value` it isn't known any more. */
export const setStartValue = defineEdit({
  id: 'setStartValue',
  label: 'Set value of the start',
  args: v.strictObject({ systemId: Id, key: Id, value: v.optional(finite) }),
  apply: (spec, { systemId, key, value }) =>
    editSystem(spec, systemId, (system) => {
      const { start } = system
      if (!start) return fail(problem('start-not-chosen', 'key'))
      const trouble = value === undefined ? undefined : startValuesTrouble(start.mode, { [key]: value })
      if (trouble) return fail(trouble)
      const values = changed(start.values ?? {}, { [key]: value })
      const told = Object.keys(values).length > 0 ? values : undefined
      return ok({ ...system, start: changed(start, { values: told }) })
    }),
})
