import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { atLeastZero, Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editSystem } from './places.ts'

export const setPlumbing = defineEdit({
  id: 'setPlumbing',
  label: 'Set plumbing volume',
  args: v.strictObject({ systemId: Id, plumbingM3: atLeastZero(1e6) }),
  apply: (spec, { systemId, plumbingM3 }) => editSystem(spec, systemId, (system) => ok({ ...system, plumbingM3 })),
})
