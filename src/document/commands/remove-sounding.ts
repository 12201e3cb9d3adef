import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { firstPointOf } from '../floor-depths.ts'
import { problem } from '../problems.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editFloor, removed } from './places.ts'

export const removeSounding = defineEdit({
  id: 'removeSounding',
  label: 'Remove sounding',
  args: v.strictObject({ bodyId: Id, sounding: Index }),
  apply: (spec, { bodyId, sounding }) =>
    editFloor(spec, bodyId, 'soundings', (floor, assumed) =>
      sounding < floor.points.length
        ? ok([{ ...floor, points: removed(floor.points, sounding) }, removed(assumed, sounding + firstPointOf(floor))])
        : fail(problem('no-such-part', 'sounding', { detail: `sounding ${sounding + 1}` })),
    ),
})
