import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { firstPointOf } from '../floor-depths.ts'
import { problem } from '../problems.ts'
import { depth } from '../schema/geometry.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editFloor, replaced } from './places.ts'

export const setSoundingDepth = defineEdit({
  id: 'setSoundingDepth',
  label: 'Set depth of sounding',
  args: v.strictObject({ bodyId: Id, sounding: Index, depthM: depth }),
  apply: (spec, { bodyId, sounding, depthM }) =>
    editFloor(spec, bodyId, 'soundings', (floor, assumed) => {
      const old = floor.points[sounding]
      if (!old) return fail(problem('no-such-part', 'sounding', { detail: `sounding ${sounding + 1}` }))
      return ok([
        { ...floor, points: replaced(floor.points, sounding, [old[0], old[1], depthM] as const) },
        replaced(assumed, sounding + firstPointOf(floor), false),
      ])
    }),
})
