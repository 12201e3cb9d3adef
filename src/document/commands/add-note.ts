import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { byMoment, freshId } from '../log.ts'
import { Id } from '../schema/numbers.ts'
import { NOTE } from '../schema/system.ts'
import type { NoteEntry } from '../types.ts'
import { defineEdit } from './define.ts'
import { editSystem } from './places.ts'

export const addNote = defineEdit({
  id: 'addNote',
  label: 'Add note',
  args: v.strictObject({ systemId: Id, id: v.optional(Id), ...NOTE }),
  apply: (spec, { systemId, id, ...note }) =>
    editSystem(spec, systemId, (system) => {
      const entry: NoteEntry = { kind: 'note', id: id ?? freshId(system.log), ...note }
      return ok({ ...system, log: byMoment([...system.log, entry]) })
    }),
})
