import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id } from '../schema/numbers.ts'
import { LABEL_CHANGES } from '../schema/owner.ts'
import { defineEdit } from './define.ts'
import { withPrices } from './owner-places.ts'
import { changed, editSystem, replaced } from './places.ts'

/** A key that is given as undefined is unknown from then on; one that isn't given stays. Prices of packages that are gone go. */
export const setOwnProduct = defineEdit({
  id: 'setOwnProduct',
  label: 'Change own product',
  args: v.strictObject({ systemId: Id, id: Id, product: v.strictObject(LABEL_CHANGES) }),
  apply: (spec, { systemId, id, product }) =>
    editSystem(spec, systemId, (system) => {
      const list = system.ownProducts ?? []
      const index = list.findIndex((each) => each.id === id)
      const old = list[index]
      if (!old) return fail(problem('no-such-part', 'id', { detail: 'such product of your own' }))
      const edited = changed(old, product)
      const labels = edited.packages?.map(({ label }) => label)
      return ok(
        withPrices(
          { ...system, ownProducts: replaced(list, index, edited) },
          (price) => price.product !== id || !labels || labels.includes(price.packageLabel),
        ),
      )
    }),
})
