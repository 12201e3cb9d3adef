import { assumedDepths, type Body, deepenedFloor, depthToReference } from '../../../document/index.ts'
import { FEATURES, type Feature } from '../../../features/index.ts'

/** Whether any depth was read by somebody. */
export const isSounded = (body: Body): boolean => !assumedDepths(body).every(Boolean)

/**
 * The changes of a body with which every depth still reads as it was read, though the rim, tile line or water that it was read from
 * lies higher or lower over the nominal waterline than was thought. Depths that nobody has read keep their place in the water.
 */
export function readingsKept(
  body: Body,
  corrected: Pick<Partial<Body>, 'freeboardM' | 'tileLineM' | 'levelM'>,
): Partial<Body> {
  const byM = depthToReference(body, 0) - depthToReference({ ...body, ...corrected }, 0)
  return byM !== 0 && isSounded(body) ? { ...corrected, ...deepened(body, byM) } : corrected
}

/** All depths of a body that are read from its reference, deeper by as much; what was only assumed still is [m]. */
export function deepened(body: Body, byM: number): Partial<Body> {
  const { floor, features, otherFloors, depthsAssumed } = body
  return {
    floor: deepenedFloor(floor, byM),
    features: features.map((feature) => lowered(feature, byM)),
    depthsAssumed,
    ...(otherFloors
      ? { otherFloors: otherFloors.map((kept) => ({ ...kept, floor: deepenedFloor(kept.floor, byM) })) }
      : {}),
  }
}

function lowered(feature: Feature, byM: number): Feature {
  const depths = FEATURES.get(feature.kind)?.fields.filter((field) => field.isDepth) ?? []
  return depths.reduce((now, field) => field.set(now, field.get(feature) + byM), feature)
}
