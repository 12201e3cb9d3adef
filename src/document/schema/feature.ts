import * as v from 'valibot'
import type { Feature } from '../../features/index.ts'
import { AxisSchema, depth, PathSchema, PointSchema, profileOf, radius, type SchemaOf } from './geometry.ts'
import { Index } from './numbers.ts'
import { objectOf } from './object.ts'

const WallBenchSchema = objectOf({
  kind: v.literal('bench'),
  along: objectOf({ fromSegment: Index, toSegment: Index }),
  widthM: radius,
  depthM: depth,
})
const FreeBenchSchema = objectOf({ kind: v.literal('bench'), path: PathSchema, depthM: depth })

/** A bench says by sides of the outline where it is, unless it has a footprint: complaints are of the form that was meant. */
const BenchSchema: typeof WallBenchSchema = {
  ...WallBenchSchema,
  '~run'(dataset, config) {
    const { value } = dataset
    const isFree = typeof value === 'object' && value !== null && 'path' in value && !('along' in value)
    return isFree
      ? (FreeBenchSchema['~run'](dataset, config) as unknown as ReturnType<(typeof WallBenchSchema)['~run']>)
      : WallBenchSchema['~run'](dataset, config)
  },
}

export const FeatureSchema: SchemaOf<Feature> = v.variant('kind', [
  objectOf({ kind: v.literal('shelf'), path: PathSchema, depthM: depth }),
  BenchSchema,
  // For the published schema; a bench with a footprint has been checked by then.
  FreeBenchSchema,
  objectOf({
    kind: v.literal('ramp'),
    path: PathSchema,
    axis: AxisSchema,
    fromDepthM: depth,
    toDepthM: depth,
  }),
  objectOf({
    kind: v.literal('steps'),
    path: PathSchema,
    axis: AxisSchema,
    treads: profileOf('treads-out-of-order'),
  }),
  objectOf({ kind: v.literal('roundSteps'), centre: PointSchema, treads: profileOf('treads-out-of-order') }),
])
