import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { byMoment } from '../log.ts'
import { problem } from '../problems.ts'
import { Id, Index } from '../schema/numbers.ts'
import { ReadingSetSchema } from '../schema/water.ts'
import { defineEdit } from './define.ts'
import { editSystem, replaced } from './places.ts'

export const updateReadings = defineEdit({
  id: 'updateReadings',
  label: 'Change readings',
  args: v.strictObject({ systemId: Id, index: Index, set: ReadingSetSchema }),
  apply: (spec, { systemId, index, set }) =>
    editSystem(spec, systemId, (system) =>
      index < system.water.readings.length
        ? ok({ ...system, water: { ...system.water, readings: byMoment(replaced(system.water.readings, index, set)) } })
        : fail(problem('no-such-part', 'index', { detail: `set of readings ${index + 1}` })),
    ),
})
