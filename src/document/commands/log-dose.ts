import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { byMoment, freshId } from '../log.ts'
import { Id } from '../schema/numbers.ts'
import { DOSE } from '../schema/system.ts'
import type { DoseEntry } from '../types.ts'
import { defineEdit } from './define.ts'
import { editSystem } from './places.ts'

/** A dose that was really given. */
export const logDose = defineEdit({
  id: 'logDose',
  label: 'Log dose',
  args: v.strictObject({ systemId: Id, id: v.optional(Id), ...DOSE }),
  apply: (spec, { systemId, id, ...dose }) =>
    editSystem(spec, systemId, (system) => {
      const entry: DoseEntry = { kind: 'dose', id: id ?? freshId(system.log), ...dose }
      return ok({ ...system, log: byMoment([...system.log, entry]) })
    }),
})
