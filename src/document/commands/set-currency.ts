import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { Currency } from '../schema/owner.ts'
import { defineEdit } from './define.ts'
import { changed, editSystem } from './places.ts'

/** How the owner writes the currency of the prices; without it they stand bare. Nothing is converted. */
export const setCurrency = defineEdit({
  id: 'setCurrency',
  label: 'Set currency',
  args: v.strictObject({ systemId: Id, currency: v.optional(Currency) }),
  apply: (spec, { systemId, currency }) => editSystem(spec, systemId, (system) => ok(changed(system, { currency }))),
})
