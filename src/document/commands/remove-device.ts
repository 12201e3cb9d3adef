import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { orAbsent } from './owner-places.ts'
import { changed, editSystem } from './places.ts'

export const removeDevice = defineEdit({
  id: 'removeDevice',
  label: 'Remove device',
  args: v.strictObject({ systemId: Id, deviceId: Id }),
  apply: (spec, { systemId, deviceId }) =>
    editSystem(spec, systemId, (system) => {
      const devices = system.equipment.devices ?? []
      if (!devices.some(({ id }) => id === deviceId)) {
        return fail(problem('no-such-part', 'deviceId', { detail: 'such device' }))
      }
      const rest = orAbsent(devices.filter(({ id }) => id !== deviceId))
      return ok({ ...system, equipment: changed(system.equipment, { devices: rest }) })
    }),
})
