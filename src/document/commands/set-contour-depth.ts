import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { depth } from '../schema/geometry.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editContourOf } from './places.ts'

export const setContourDepth = defineEdit({
  id: 'setContourDepth',
  label: 'Set depth of line',
  args: v.strictObject({ bodyId: Id, contour: Index, depthM: depth }),
  apply: (spec, { bodyId, contour, depthM }) =>
    editContourOf(spec, bodyId, contour, (ring) => ok({ ...ring, depthM }), true),
})
