import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editSystem, removed } from './places.ts'

/** Without an index, the last one. */
export const removeVolumeEstimate = defineEdit({
  id: 'removeVolumeEstimate',
  label: 'Remove volume',
  args: v.strictObject({ systemId: Id, index: v.optional(Index) }),
  apply: (spec, { systemId, index }) =>
    editSystem(spec, systemId, (system) => {
      const at = index ?? system.volumeEstimates.length - 1
      if (!system.volumeEstimates[at]) return fail(problem('no-such-part', 'index', { detail: `estimate ${at + 1}` }))
      return ok({ ...system, volumeEstimates: removed(system.volumeEstimates, at) })
    }),
})
