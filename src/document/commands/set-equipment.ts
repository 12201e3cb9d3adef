import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { EQUIPMENT, HelpersSchema } from '../schema/system.ts'
import { defineEdit } from './define.ts'
import { changed, editSystem } from './places.ts'

/** A key that is given as undefined is unknown from then on; one that isn't given stays. */
export const setEquipment = defineEdit({
  id: 'setEquipment',
  label: 'Change equipment',
  args: v.strictObject({ systemId: Id, ...EQUIPMENT, helpers: v.exactOptional(HelpersSchema) }),
  apply: (spec, { systemId, ...changes }) =>
    editSystem(spec, systemId, (system) => ok({ ...system, equipment: changed(system.equipment, changes) })),
})
