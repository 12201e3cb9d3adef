import { FEATURES, type Feature } from '../features/index.ts'
import { areAllAssumed } from './assumed-depths.ts'
import { depthToReference } from './depths.ts'
import { deepenedFloor } from './floor-depths.ts'
import type { Body } from './types.ts'

/**
 * A body whose rim or tile line is put right: every depth still reads as it was read from there, though that lies higher or lower
 * over the nominal waterline than was thought. Depths that nobody has read keep their place in the water.
 */
export function readingsKept(before: Body, corrected: Body): Body {
  const byM = depthToReference(before, 0) - depthToReference(corrected, 0)
  return byM === 0 || areAllAssumed(before) ? corrected : deepened(corrected, byM)
}

/** A body with all depths of its floors and of what stands on them deeper by as much [m]; what was only assumed still is. */
export function deepened(body: Body, byM: number): Body {
  const { floor, features, otherFloors } = body
  return {
    ...body,
    floor: deepenedFloor(floor, byM),
    features: features.map((feature) => lowered(feature, byM)),
    ...(otherFloors && {
      otherFloors: otherFloors.map((kept) => ({ ...kept, floor: deepenedFloor(kept.floor, byM) })),
    }),
  }
}

function lowered(feature: Feature, byM: number): Feature {
  const depths = FEATURES.get(feature.kind)?.fields.filter((field) => field.isDepth) ?? []
  return depths.reduce((now, field) => field.set(now, field.get(feature) + byM), feature)
}
