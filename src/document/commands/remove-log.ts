import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editSystem } from './places.ts'

export const removeLog = defineEdit({
  id: 'removeLog',
  label: 'Remove from log',
  args: v.strictObject({ systemId: Id, id: Id }),
  apply: (spec, { systemId, id }) =>
    editSystem(spec, systemId, (system) =>
      system.log.some((entry) => entry.id === id)
        ? ok({ ...system, log: system.log.filter((entry) => entry.id !== id) })
        : fail(problem('no-such-part', 'id', { detail: 'such entry in the log' })),
    ),
})
