import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { LabelledProductSchema } from '../schema/owner.ts'
import { defineEdit } from './define.ts'
import { editSystem } from './places.ts'

/** A product from its label. A strength that its substance can't have is refused, with the reason. */
export const addOwnProduct = defineEdit({
  id: 'addOwnProduct',
  label: 'Add own product',
  args: v.strictObject({ systemId: Id, product: LabelledProductSchema }),
  apply: (spec, { systemId, product }) =>
    editSystem(spec, systemId, (system) => ok({ ...system, ownProducts: [...(system.ownProducts ?? []), product] })),
})
