import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { DeviceSchema } from '../schema/owner.ts'
import { defineEdit } from './define.ts'
import { editSystem } from './places.ts'

/** A feeder, skimmer, floater or bucket with what it has held so far: history is taken down as it was, allowed or not. */
export const addDevice = defineEdit({
  id: 'addDevice',
  label: 'Add device',
  args: v.strictObject({ systemId: Id, device: DeviceSchema }),
  apply: (spec, { systemId, device }) =>
    editSystem(spec, systemId, (system) => {
      const devices = [...(system.equipment.devices ?? []), device]
      return ok({ ...system, equipment: { ...system.equipment, devices } })
    }),
})
