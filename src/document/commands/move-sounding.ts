import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { PointSchema } from '../schema/geometry.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editFloor, replaced } from './places.ts'

/** Its depth goes with it. */
export const moveSounding = defineEdit({
  id: 'moveSounding',
  label: 'Move sounding',
  args: v.strictObject({ bodyId: Id, sounding: Index, to: PointSchema }),
  apply: (spec, { bodyId, sounding, to: [x, y] }) =>
    editFloor(spec, bodyId, 'soundings', (floor, assumed) => {
      const old = floor.points[sounding]
      if (!old) return fail(problem('no-such-part', 'sounding', { detail: `sounding ${sounding + 1}` }))
      if (floor.points.some((point, i) => i !== sounding && point[0] === x && point[1] === y))
        return fail(problem('sounding-here', 'to'))
      return ok([{ ...floor, points: replaced(floor.points, sounding, [x, y, old[2]] as const) }, assumed])
    }),
})
