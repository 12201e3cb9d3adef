import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { atLeastZero, Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editSystem, replaced } from './places.ts'

/** How much of a product is at hand; 0 takes it off the list. */
export const setStock = defineEdit({
  id: 'setStock',
  label: 'Set stock',
  args: v.strictObject({ systemId: Id, product: Id, amountG: atLeastZero(1e9) }),
  apply: (spec, { systemId, product, amountG }) =>
    editSystem(spec, systemId, (system) => {
      const index = system.stock.findIndex((item) => item.product === product)
      const item = system.stock[index]
      if (amountG === 0) return ok({ ...system, stock: system.stock.filter((other) => other.product !== product) })
      const stock = item ? replaced(system.stock, index, { ...item, amountG }) : [...system.stock, { product, amountG }]
      return ok({ ...system, stock })
    }),
})
