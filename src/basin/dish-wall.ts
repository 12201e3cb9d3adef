import type { Problem } from '../base/index.ts'
import type { Partition } from './partition-types.ts'
import { problem } from './problems.ts'
import { nearestShore } from './shore-distance.ts'
import type { Foot } from './span.ts'
import { wallWidth } from './wall-width.ts'

const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** The complaint that a hollow reaches into the strip that a wall shapes; the wall's rays know planes only. */
export function dishMeetsWall(p: Partition): Problem | undefined {
  const law = p.floor.pieces[1]?.law
  if (!law || !p.cells.some((cell) => cell.law === law)) return undefined
  const widthM = wallWidth(p)
  if (widthM === 0 || nearestShore(p, law.x, law.y, law.radiusM + widthM, foot) < 0) return undefined
  return problem('dish-meets-wall', 'floor', [[foot.x + p.originX, foot.y + p.originY]])
}
