import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id } from '../schema/numbers.ts'
import { Amount, Label } from '../schema/owner.ts'
import { defineEdit } from './define.ts'
import { orAbsent, productsOf } from './owner-places.ts'
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
      const found = productsOf(system).find(product)
      if (!found.ok) return fail({ ...found.problem, path: 'product' })
      const { label, id, packages } = found.value.product
      if (!packages.some((pack) => pack.label === packageLabel)) {
        return fail(problem('price-without-package', 'packageLabel', { product: label, detail: packageLabel }))
      }
      return ok({ ...system, prices: [...others, { product: id, packageLabel, price }] })
    }),
})
