import * as v from 'valibot'
import type { Feature } from '../../features/index.ts'
import { AxisSchema, depth, PathSchema, PointSchema, profileOf, type SchemaOf } from './geometry.ts'
import { objectOf } from './object.ts'

export const FeatureSchema: SchemaOf<Feature> = v.variant('kind', [
  objectOf({ kind: v.literal('shelf'), path: PathSchema, depthM: depth }),
  objectOf({
    kind: v.literal('steps'),
    path: PathSchema,
    axis: AxisSchema,
    treads: profileOf('treads-out-of-order'),
  }),
  objectOf({ kind: v.literal('roundSteps'), centre: PointSchema, treads: profileOf('treads-out-of-order') }),
])
