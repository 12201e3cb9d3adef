import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { ReadingSetSchema } from '../schema/water.ts'
import { defineEdit } from './define.ts'
import { changed, editSystem } from './places.ts'

/** The water that the pool is filled and topped up with; without `set` it is unknown. */
export const setFill = defineEdit({
  id: 'setFill',
  label: 'Set fill water',
  args: v.strictObject({ systemId: Id, set: v.optional(ReadingSetSchema) }),
  apply: (spec, { systemId, set }) =>
    editSystem(spec, systemId, (system) => ok({ ...system, water: changed(system.water, { fill: set }) })),
})
