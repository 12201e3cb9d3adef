import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editSystem, removed } from './places.ts'

export const removeReadings = defineEdit({
  id: 'removeReadings',
  label: 'Remove readings',
  args: v.strictObject({ systemId: Id, index: Index }),
  apply: (spec, { systemId, index }) =>
    editSystem(spec, systemId, (system) =>
      index < system.water.readings.length
        ? ok({ ...system, water: { ...system.water, readings: removed(system.water.readings, index) } })
        : fail(problem('no-such-part', 'index', { detail: `set of readings ${index + 1}` })),
    ),
})
