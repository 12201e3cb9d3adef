import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { mayHold } from '../../chemicals/index.ts'
import { byMoment } from '../log.ts'
import { problem } from '../problems.ts'
import { Id, Moment } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editDevice, productsOf } from './owner-places.ts'

/** Puts a product into a device, unless what the device has held before, or isn't known to have held, forbids it. */
export const holdInDevice = defineEdit({
  id: 'holdInDevice',
  label: 'Put into device',
  args: v.strictObject({ systemId: Id, deviceId: Id, product: Id, at: Moment }),
  apply: (spec, { systemId, deviceId, product, at }) =>
    editDevice(spec, systemId, deviceId, (device, system) => {
      const verdict = mayHold(device, product, productsOf(system))
      if (verdict.answer !== 'may') {
        const code = verdict.answer === 'never' ? 'device-may-not-hold' : 'device-history-unknown'
        return fail(problem(code, 'product', { detail: verdict.reason, instead: verdict.instead }))
      }
      return ok({ ...device, held: byMoment([...device.held, { product, at }]) })
    }),
})
