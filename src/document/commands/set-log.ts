import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { byMoment } from '../log.ts'
import { problem } from '../problems.ts'
import { atLeastZero, Id, Moment, Text } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { changed, editSystem, replaced } from './places.ts'

/** Changes an entry: of a note only its moment and text, of a dose only what a dose has. */
export const setLog = defineEdit({
  id: 'setLog',
  label: 'Change log',
  args: v.strictObject({
    systemId: Id,
    id: Id,
    entry: v.strictObject({
      at: v.exactOptional(Moment),
      product: v.exactOptional(Id),
      amountG: v.exactOptional(atLeastZero(1e9)),
      text: v.exactOptional(Text),
    }),
  }),
  apply: (spec, { systemId, id, entry: { text, ...dose } }) =>
    editSystem(spec, systemId, (system) => {
      const index = system.log.findIndex((entry) => entry.id === id)
      const entry = system.log[index]
      if (!entry) return fail(problem('no-such-part', 'id', { detail: 'such entry in the log' }))
      const note = { ...(dose.at === undefined ? {} : { at: dose.at }), ...(text === undefined ? {} : { text }) }
      const edited = changed(entry, entry.kind === 'dose' ? dose : note)
      return ok({ ...system, log: byMoment(replaced(system.log, index, edited)) })
    }),
})
