import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id, Index } from '../schema/numbers.ts'
import { EstimateSchema } from '../schema/system.ts'
import { defineEdit } from './define.ts'
import { editSystem, replaced } from './places.ts'

/** Without an index it replaces the last estimate from the same source, or is added. */
export const setVolumeEstimate = defineEdit({
  id: 'setVolumeEstimate',
  label: 'Set volume',
  args: v.strictObject({ systemId: Id, estimate: EstimateSchema, index: v.optional(Index) }),
  apply: (spec, { systemId, estimate, index }) =>
    editSystem(spec, systemId, (system) => {
      const { volumeEstimates } = system
      if (index !== undefined && index >= volumeEstimates.length) {
        return fail(problem('no-such-part', 'index', { detail: `estimate ${index + 1}` }))
      }
      const at = index ?? volumeEstimates.findLastIndex(({ from }) => from === estimate.from)
      return ok({
        ...system,
        volumeEstimates: at < 0 ? [...volumeEstimates, estimate] : replaced(volumeEstimates, at, estimate),
      })
    }),
})
