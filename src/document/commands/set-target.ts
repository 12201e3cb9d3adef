import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { BandSchema, TARGET_KEYS } from '../schema/water.ts'
import { defineEdit } from './define.ts'
import { editSystem } from './places.ts'

export const setTarget = defineEdit({
  id: 'setTarget',
  label: 'Set target',
  args: v.strictObject({ systemId: Id, key: v.picklist(TARGET_KEYS), band: BandSchema }),
  apply: (spec, { systemId, key, band }) =>
    editSystem(spec, systemId, (system) =>
      ok({ ...system, water: { ...system.water, targets: { ...system.water.targets, [key]: band } } }),
    ),
})
