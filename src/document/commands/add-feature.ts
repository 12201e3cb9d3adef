import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { FeatureSchema } from '../schema/feature.ts'
import { Id } from '../schema/numbers.ts'
import { defineEdit } from './define.ts'
import { editBody } from './places.ts'

export const addFeature = defineEdit({
  id: 'addFeature',
  label: 'Add feature',
  args: v.strictObject({ bodyId: Id, feature: FeatureSchema }),
  apply: (spec, { bodyId, feature }) =>
    editBody(spec, bodyId, (body) => ok({ ...body, features: [...body.features, feature] })),
})
