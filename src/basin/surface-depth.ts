import { coveAt } from './cove-depth.ts'
import type { Cell, Partition } from './partition-types.ts'
import { planeAt } from './planes.ts'

export interface DepthPart {
  readonly depthM: number
  readonly part: 'floor' | 'feature'
  /** True where the cove of the wall makes the depth. */
  readonly coved: boolean
  /** The stretch of shore that the cove stands at, −1 where there is none. */
  readonly by: number
}

/** Depth and part at a place of the partition's frame, taken as a point of a given cell (also on its edge). */
export function depthIn(p: Partition, cell: Cell, x: number, y: number): DepthPart {
  const cove = coveAt(p, cell, x, y)
  if (cove) return { depthM: cove.depthM, part: 'floor', coved: true, by: cove.by }
  return { depthM: planeAt(cell.plane, x, y), part: cell.part, coved: false, by: -1 }
}
