import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { byMoment, freshId } from '../log.ts'
import { Id, Moment, Text } from '../schema/numbers.ts'
import type { NoteEntry } from '../types.ts'
import { defineEdit } from './define.ts'
import { editSystem } from './places.ts'

/**
 * Ticks a line of a plan that doses nothing: a note that names it, which programs that know no ticks still read as a note.
 * A line that stands for several days has one for each.
 */
export const tickLine = defineEdit({
  id: 'tickLine',
  label: 'Tick off',
  args: v.strictObject({ systemId: Id, id: v.optional(Id), line: Id, at: Moment, text: Text }),
  apply: (spec, { systemId, id, line, at, text }) =>
    editSystem(spec, systemId, (system) => {
      const entry: NoteEntry = { kind: 'note', id: id ?? freshId(system.log), at, text, line }
      return ok({ ...system, log: byMoment([...system.log, entry]) })
    }),
})
