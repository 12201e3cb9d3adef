import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { problem } from '../problems.ts'
import { FeatureSchema } from '../schema/feature.ts'
import { Id, Index } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody, replaced } from './places.ts'

export const setFeature = defineEdit({
  id: 'setFeature',
  label: 'Change feature',
  args: v.strictObject({ bodyId: Id, index: Index, feature: FeatureSchema }),
  apply: (spec, { bodyId, index, feature }) =>
    editBody(spec, bodyId, (body) =>
      index < body.features.length
        ? ok({ ...body, features: replaced(body.features, index, feature) })
        : fail(problem('no-such-part', 'index', { detail: `feature ${index + 1}` })),
    ),
})
