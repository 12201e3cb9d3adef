import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { depth, distance } from '../schema/geometry.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editFloor, replaced } from './places.ts'

/** Stations keep this much apart, whatever is dragged [m]. */
export const STATION_GAP_M = 0.01

/** A station stops before its neighbours: it can't be dragged past them. One that is only moved along says no depth, unless with `saysDepth`. */
export const moveStation = defineEdit({
  id: 'moveStation',
  label: 'Move station',
  args: v.strictObject({
    bodyId: Id,
    station: Index,
    sM: distance,
    depthM: depth,
    saysDepth: v.exactOptional(v.boolean()),
  }),
  apply: (spec, { bodyId, station: index, sM, depthM, saysDepth = false }) =>
    editFloor(spec, bodyId, 'profile', (floor, assumed) => {
      const old = floor.stations[index]
      if (!old) return fail(problem('no-such-part', 'station', { detail: `station ${index + 1}` }))
      const low = (floor.stations[index - 1]?.[0] ?? Number.NEGATIVE_INFINITY) + STATION_GAP_M
      const high = (floor.stations[index + 1]?.[0] ?? Number.POSITIVE_INFINITY) - STATION_GAP_M
      // Neighbours closer than that came with the document: then only the depth moves.
      const s = low <= high ? Math.min(high, Math.max(low, sM)) : old[0]
      return ok([
        { ...floor, stations: replaced(floor.stations, index, [s, depthM] as const) },
        !saysDepth && depthM === old[1] ? assumed : replaced(assumed, index, false),
      ])
    }),
})
