import { cellDepth } from './cell-depth.ts'
import type { Cell, Partition } from './partition-types.ts'
import { wallAt } from './wall-depth.ts'

export interface DepthPart {
  readonly depthM: number
  readonly part: 'floor' | 'feature' | 'wall'
  /** True where the wall makes the depth. */
  readonly walled: boolean
  /** The stretch of shore that the wall stands at, −1 where it doesn't make the depth. */
  readonly by: number
}

/** Depth and part at a place of the partition's frame, taken as a point of a given cell (also on its edge). */
export function depthIn(p: Partition, cell: Cell, x: number, y: number): DepthPart {
  const wall = wallAt(p, cell, x, y)
  if (wall) return { depthM: wall.depthM, part: wall.part, walled: true, by: wall.by }
  return { depthM: cellDepth(cell, x, y), part: cell.part, walled: false, by: -1 }
}
