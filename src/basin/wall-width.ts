import type { Partition } from './partition-types.ts'

/** Plan distance from the shore beyond which the wall changes nothing; 0 where it is vertical [m]. */
export function wallWidth(p: Partition): number {
  const { wall } = p.shape
  if (wall.kind === 'vertical') return 0
  if (wall.kind === 'cove') return Math.min(wall.radiusM, p.extentM)
  const deepest = p.cells.reduce((most, cell) => Math.max(most, cell.maxDepthM), 0)
  // No place is further from the shore than the basin is wide.
  return Math.min(wall.run * deepest, p.extentM)
}
