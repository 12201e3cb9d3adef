import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { byMoment } from '../log.ts'
import { Id } from '../schema/numbers.ts'
import { ReadingSetSchema } from '../schema/water.ts'
import { defineEdit } from './define.ts'
import { editSystem } from './places.ts'

/** Readings stay in the order of their moments, the newest last. */
export const addReadings = defineEdit({
  id: 'addReadings',
  label: 'Add readings',
  args: v.strictObject({ systemId: Id, set: ReadingSetSchema }),
  apply: (spec, { systemId, set }) =>
    editSystem(spec, systemId, (system) =>
      ok({ ...system, water: { ...system.water, readings: byMoment([...system.water.readings, set]) } }),
    ),
})
