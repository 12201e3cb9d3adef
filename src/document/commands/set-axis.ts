import * as v from 'valibot'
import { AxisSchema } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody, mapped, profileOf } from './places.ts'

/** Moves A and A′. The stations keep their distances from A, or with `stretchesStations` their place between the ends. */
export const setAxis = defineEdit({
  id: 'setAxis',
  label: 'Move section line',
  args: v.strictObject({ bodyId: Id, axis: AxisSchema, stretchesStations: v.optional(v.boolean()) }),
  apply: (spec, { bodyId, axis, stretchesStations }) =>
    editBody(spec, bodyId, (body) =>
      mapped(profileOf(body), (floor) => {
        const by = stretchesStations ? lengthOf(axis) / lengthOf(floor.axis) : 1
        return { ...body, floor: { ...floor, axis, stations: floor.stations.map(([s, d]) => [s * by, d] as const) } }
      }),
    ),
})

function lengthOf({
  from,
  to,
}: {
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
}): number {
  return Math.hypot(to[0] - from[0], to[1] - from[1])
}
