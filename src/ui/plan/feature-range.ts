import { type Body, depthToReference, LIMITS } from '../../document/index.ts'
import type { Feature, FeatureField } from '../../features/index.ts'
import { LONGEST_M } from '../fields/index.ts'

/** Between one tread and the next [m]. */
const LEAST_GOING_M = 0.01

/** What may be typed for a length of a feature, depths from whatever the body's are measured from [m]. */
export function featureRange(
  { id, isDepth }: Pick<FeatureField<Feature>, 'id' | 'isDepth'>,
  body: Body,
): { readonly min: number; readonly max: number } {
  if (isDepth) return { min: depthToReference(body, -LIMITS.depthM), max: depthToReference(body, LIMITS.depthM) }
  // A flight that climbs has a drop below zero.
  const min = id === 'riseM' ? -LONGEST_M : id === 'goingM' ? LEAST_GOING_M : 0
  return { min, max: LONGEST_M }
}
