import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editFloor, removed } from './places.ts'

export const removeStation = defineEdit({
  id: 'removeStation',
  label: 'Remove station',
  args: v.strictObject({ bodyId: Id, station: Index }),
  apply: (spec, { bodyId, station }) =>
    editFloor(spec, bodyId, 'profile', (floor, assumed) => {
      if (station >= floor.stations.length)
        return fail(problem('no-such-part', 'station', { detail: `station ${station + 1}` }))
      if (floor.stations.length === 1) return fail(problem('last-station', 'station'))
      return ok([{ ...floor, stations: removed(floor.stations, station) }, removed(assumed, station)])
    }),
})
