import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { PURPOSES } from '../schema/system.ts'
import { defineEdit } from './define.ts'
import { changed, editSystem } from './places.ts'

/** Which product serves a purpose; without one the regime's own does. */
export const setProduct = defineEdit({
  id: 'setProduct',
  label: 'Choose product',
  args: v.strictObject({ systemId: Id, purpose: v.picklist(PURPOSES), product: v.optional(Id) }),
  apply: (spec, { systemId, purpose, product }) =>
    editSystem(spec, systemId, (system) =>
      ok({
        ...system,
        regime: { ...system.regime, products: changed(system.regime.products, { [purpose]: product }) },
      }),
    ),
})
