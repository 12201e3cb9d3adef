import { never, type Problem } from '../base/index.ts'
import { problem } from './problems.ts'
import type { Wall } from './types.ts'

/** What is wrong with a wall, if anything. */
export function checkWall(wall: Wall): Problem | undefined {
  switch (wall.kind) {
    case 'vertical':
      return undefined
    case 'cove':
      if (!Number.isFinite(wall.radiusM)) return problem('not-a-number', 'wall.radiusM')
      return wall.radiusM > 0 ? undefined : problem('radius-not-positive', 'wall.radiusM')
    case 'battered':
      return problem('wall-not-ready', 'wall.kind')
    default:
      return never(wall, 'unknown wall')
  }
}
