import { never, type Problem } from '../base/index.ts'
import { FLAT } from './floor-flat.ts'
import type { FloorPlan } from './floor-kind.ts'
import { PROFILE } from './floor-profile.ts'
import { problem } from './problems.ts'
import type { Floor } from './types.ts'

/** What is wrong with a floor, if anything. */
export function checkFloor(floor: Floor): Problem | undefined {
  switch (floor.kind) {
    case 'flat':
      return FLAT.check(floor)
    case 'profile':
      return PROFILE.check(floor)
    case 'contours':
    case 'soundings':
    case 'dish':
      return problem('floor-not-ready', 'floor.kind')
    default:
      return never(floor, 'unknown floor')
  }
}

/** A floor laid out in the frame of a partition. */
export function planFloor(floor: Floor, originX: number, originY: number): FloorPlan {
  switch (floor.kind) {
    case 'flat':
      return FLAT.plan(floor, originX, originY)
    case 'profile':
      return PROFILE.plan(floor, originX, originY)
    case 'contours':
    case 'soundings':
    case 'dish':
      throw new Error('checked before')
    default:
      return never(floor, 'unknown floor')
  }
}
