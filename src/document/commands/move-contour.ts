import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { movedPath, shift } from '../affine.ts'
import { distance } from '../schema/geometry.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editContourOf } from './places.ts'

/** The whole depth line, as it is, somewhere else. */
export const moveContour = defineEdit({
  id: 'moveContour',
  label: 'Move depth line',
  args: v.strictObject({ bodyId: Id, contour: Index, dxM: distance, dyM: distance }),
  apply: (spec, { bodyId, contour, dxM, dyM }) =>
    editContourOf(spec, bodyId, contour, (ring) => ok({ ...ring, path: movedPath(ring.path, shift(dxM, dyM)) })),
})
