import { never, type Problem, type Result } from '../base/index.ts'
import { CONTOURS } from './floor-contours.ts'
import { DISH } from './floor-dish.ts'
import { FLAT } from './floor-flat.ts'
import type { FloorPlan, FloorSite } from './floor-kind.ts'
import { PROFILE } from './floor-profile.ts'
import { SOUNDINGS } from './floor-soundings.ts'
import type { Floor } from './types.ts'

/** What is wrong with a floor, if anything. */
export function checkFloor(floor: Floor): Problem | undefined {
  switch (floor.kind) {
    case 'flat':
      return FLAT.check(floor)
    case 'profile':
      return PROFILE.check(floor)
    case 'contours':
      return CONTOURS.check(floor)
    case 'soundings':
      return SOUNDINGS.check(floor)
    case 'dish':
      return DISH.check(floor)
    default:
      return never(floor, 'unknown floor')
  }
}

/** True where a floor has to be fitted to the shores, triangle by triangle. */
export function isFitted({ kind }: Floor): boolean {
  return kind === 'contours' || kind === 'soundings'
}

/** A floor laid out in its place, or what keeps it from lying there. */
export function planFloor(floor: Floor, site: FloorSite): Result<FloorPlan> {
  switch (floor.kind) {
    case 'flat':
      return FLAT.plan(floor, site)
    case 'profile':
      return PROFILE.plan(floor, site)
    case 'contours':
      return CONTOURS.plan(floor, site)
    case 'soundings':
      return SOUNDINGS.plan(floor, site)
    case 'dish':
      return DISH.plan(floor, site)
    default:
      return never(floor, 'unknown floor')
  }
}
