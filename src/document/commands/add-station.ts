import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import type { ProfileFloor } from '../../basin/index.ts'
import { problem } from '../problems.ts'
import { depth, distance } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { STATION_GAP_M } from './move-station.ts'
import { editFloor } from './places.ts'

/** Without a depth the station lies on the floor as it is, and is as well known as the stations beside it. */
export const addStation = defineEdit({
  id: 'addStation',
  label: 'Add station',
  args: v.strictObject({ bodyId: Id, sM: distance, depthM: v.optional(depth) }),
  apply: (spec, { bodyId, sM, depthM }) =>
    editFloor(spec, bodyId, 'profile', (floor, assumed) => {
      if (floor.stations.some(([s]) => Math.abs(s - sM) < STATION_GAP_M))
        return fail(problem('stations-too-close', 'sM'))
      const station = [sM, depthM ?? depthAt(floor, sM)] as const
      const after = floor.stations.filter(([s]) => s < sM).length
      const isAssumed = depthM === undefined && (assumed[after - 1] === true || assumed[after] === true)
      return ok([
        { ...floor, stations: floor.stations.toSpliced(after, 0, station) },
        assumed.toSpliced(after, 0, isAssumed),
      ])
    }),
})

function depthAt(floor: ProfileFloor, sM: number): number {
  const after = floor.stations.findIndex(([s]) => s > sM)
  const [b, a] = [floor.stations[after], floor.stations[after - 1]]
  if (after < 0) return floor.stations.at(-1)?.[1] ?? 0
  if (!a || !b) return b?.[1] ?? 0
  return a[1] + ((b[1] - a[1]) * (sM - a[0])) / (b[0] - a[0])
}
