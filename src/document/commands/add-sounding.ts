import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { depth, PointSchema } from '../schema/geometry.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editFloor } from './places.ts'

export const addSounding = defineEdit({
  id: 'addSounding',
  label: 'Add sounding',
  args: v.strictObject({ bodyId: Id, at: PointSchema, depthM: depth }),
  apply: (spec, { bodyId, at: [x, y], depthM }) =>
    editFloor(spec, bodyId, 'soundings', (floor) =>
      floor.points.some((point) => point[0] === x && point[1] === y)
        ? fail(problem('sounding-here', 'at'))
        : ok({ ...floor, points: [...floor.points, [x, y, depthM] as const] }),
    ),
})
