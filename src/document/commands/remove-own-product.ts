import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { withoutOwnProduct } from './owner-places.ts'
import { editSystem } from './places.ts'

/** Its stock, its prices and its place among the chosen products go with it; what was given or held of it keeps it. */
export const removeOwnProduct = defineEdit({
  id: 'removeOwnProduct',
  label: 'Remove own product',
  args: v.strictObject({ systemId: Id, id: Id }),
  apply: (spec, { systemId, id }) =>
    editSystem(spec, systemId, (system) => {
      if (!system.ownProducts?.some((each) => each.id === id)) {
        return fail(problem('no-such-part', 'id', { detail: 'such product of your own' }))
      }
      if (system.log.some((entry) => entry.kind === 'dose' && entry.product === id)) {
        return fail(problem('product-in-use', 'id', { detail: 'the log has doses of it' }))
      }
      const device = system.equipment.devices?.find(({ held }) => held.some(({ product }) => product === id))
      if (device) return fail(problem('product-in-use', 'id', { detail: `${device.name} has held it` }))
      return ok(withoutOwnProduct(system, id))
    }),
})
