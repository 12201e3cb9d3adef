import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editFloor, removed } from './places.ts'

export const removeContour = defineEdit({
  id: 'removeContour',
  label: 'Remove depth line',
  args: v.strictObject({ bodyId: Id, contour: Index }),
  apply: (spec, { bodyId, contour }) =>
    editFloor(spec, bodyId, 'contours', (floor, assumed) =>
      contour < floor.rings.length
        ? ok([{ ...floor, rings: removed(floor.rings, contour) }, removed(assumed, contour + 1)])
        : fail(problem('no-such-part', 'contour', { detail: `depth line ${contour + 1}` })),
    ),
})
