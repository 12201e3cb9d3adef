import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { movedFeature, shift } from '../affine.ts'
import { problem } from '../problems.ts'
import { distance } from '../schema/geometry.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody, replaced } from './places.ts'

export const moveFeature = defineEdit({
  id: 'moveFeature',
  label: 'Move feature',
  args: v.strictObject({ bodyId: Id, index: Index, dxM: distance, dyM: distance }),
  apply: (spec, { bodyId, index, dxM, dyM }) =>
    editBody(spec, bodyId, (body) => {
      const feature = body.features[index]
      if (!feature) return fail(problem('no-such-part', 'index', { detail: `feature ${index + 1}` }))
      return ok({ ...body, features: replaced(body.features, index, movedFeature(feature, shift(dxM, dyM))) })
    }),
})
