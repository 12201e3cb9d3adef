import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { TARGET_KEYS } from '../schema/water.ts'
import { defineEdit } from './define.ts'
import { editSystem, without } from './places.ts'

/** Back to what surface and regime say. */
export const resetTarget = defineEdit({
  id: 'resetTarget',
  label: 'Reset target',
  args: v.strictObject({ systemId: Id, key: v.picklist(TARGET_KEYS) }),
  apply: (spec, { systemId, key }) =>
    editSystem(spec, systemId, (system) =>
      ok({ ...system, water: { ...system.water, targets: without(system.water.targets, key) } }),
    ),
})
