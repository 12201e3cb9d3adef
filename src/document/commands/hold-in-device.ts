import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { objection, unknownSubstance } from '../../chemicals/index.ts'
import { byMoment } from '../log.ts'
import { problem } from '../problems.ts'
import { Id, Moment } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editDevice, substanceOf } from './owner-places.ts'

/**
 * Puts a product into a device, unless what the device has held before, or isn't known to have held, forbids it. Whether the
 * kind of device suits the product is asked before, where the whole table of products is at hand.
 */
export const holdInDevice = defineEdit({
  id: 'holdInDevice',
  label: 'Put into device',
  args: v.strictObject({ systemId: Id, deviceId: Id, product: Id, at: Moment }),
  apply: (spec, { systemId, deviceId, product, at }) =>
    editDevice(spec, systemId, deviceId, (device, system) => {
      const next = substanceOf(system, product)
      const against = next ? objection(device, next, (id) => substanceOf(system, id)) : unknownSubstance(product)
      if (against) {
        const code = against.answer === 'never' ? 'device-may-not-hold' : 'device-history-unknown'
        return fail(problem(code, 'product', { detail: against.reason, instead: against.instead }))
      }
      return ok({ ...device, held: byMoment([...device.held, { product, at }]) })
    }),
})
