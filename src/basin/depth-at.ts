import { cellDepth, cellSlope } from './cell-depth.ts'
import { isInside } from './faces.ts'
import type { Cell, Partition } from './partition-types.ts'
import type { DepthSample } from './types.ts'
import { wallAt } from './wall-depth.ts'

/** The cell that holds a place of the partition's frame, −1 on dry land. */
export function cellAt(p: Partition, x: number, y: number): number {
  for (let i = 0; i < p.cells.length; i++) if (holds(p, p.cells[i]!, x, y)) return i
  return -1
}

function holds(p: Partition, cell: Cell, x: number, y: number): boolean {
  // An arc or cubic stretch lies in the box of its ends, for it rises or falls throughout.
  if (x < cell.minX || x > cell.maxX || y < cell.minY || y > cell.maxY) return false
  let inside = false
  for (const loop of cell.loops) if (isInside(loop, p.edges, p.nodeX, p.nodeY, x, y)) inside = !inside
  return inside
}

/** Depth [m below the datum], part and slope at a place of the plan; nothing on dry land. */
export function depthAt(p: Partition, x: number, y: number): DepthSample | undefined {
  const lx = x - p.originX
  const ly = y - p.originY
  const index = cellAt(p, lx, ly)
  if (index < 0) return undefined
  const cell = p.cells[index]!
  const wall = wallAt(p, cell, lx, ly)
  if (wall) return { depthM: wall.depthM, part: wall.part, slope: wall.slope }
  const sample = { depthM: cellDepth(cell, lx, ly), part: cell.part, slope: cellSlope(cell, lx, ly) }
  return cell.feature >= 0 ? { ...sample, feature: cell.feature } : sample
}
