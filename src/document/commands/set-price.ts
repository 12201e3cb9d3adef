import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id } from '../schema/numbers.ts'
import { Amount, Label } from '../schema/owner.ts'
import { defineEdit } from './define.ts'
import { orAbsent, substanceOf } from './owner-places.ts'
import { changed, editSystem } from './places.ts'

/** What one package of a product costs; without `price` it isn't known any more. */
export const setPrice = defineEdit({
  id: 'setPrice',
  label: 'Set price',
  args: v.strictObject({
    systemId: Id,
    product: Id,
    packageLabel: Label,
    price: v.optional(Amount),
  }),
  apply: (spec, { systemId, product, packageLabel, price }) =>
    editSystem(spec, systemId, (system) => {
      const others = (system.prices ?? []).filter(
        (each) => each.product !== product || each.packageLabel !== packageLabel,
      )
      if (price === undefined) return ok(changed(system, { prices: orAbsent(others) }))
      if (!substanceOf(system, product)) return fail(problem('no-such-part', 'product', { detail: 'such product' }))
      // Packages of an own product stand on its label; those of the generic ones are known where prices are added up.
      const label = system.ownProducts?.find(({ id }) => id === product)
      if (label?.packages && !label.packages.some((pack) => pack.label === packageLabel)) {
        return fail(problem('price-without-package', 'packageLabel', { product: label.label, detail: packageLabel }))
      }
      return ok({ ...system, prices: [...others, { product, packageLabel, price }] })
    }),
})
