import type { Cell, Partition } from './partition-types.ts'
import { planeAt, slopeOf } from './planes.ts'
import { lawAt, lawGradient } from './radial-law.ts'

/** Depth of what rules in a cell at a place of the frame, without the wall's own part [m]. */
export function cellDepth(cell: Cell, x: number, y: number): number {
  return cell.law === undefined ? planeAt(cell.plane, x, y) : lawAt(cell.law, x, y)
}

/** Depth of the floor below a cell at a place of the frame, whatever rules there [m]. */
export function floorDepth(p: Partition, cell: Cell, x: number, y: number): number {
  const { plane, law } = p.floor.pieces[cell.strip]!
  return law === undefined ? planeAt(plane, x, y) : lawAt(law, x, y)
}

/** Gradient of that floor. */
export function floorGradient(p: Partition, cell: Cell, x: number, y: number): [dx: number, dy: number] {
  const { plane, law } = p.floor.pieces[cell.strip]!
  return law === undefined ? [plane.dx, plane.dy] : lawGradient(law, x, y)
}

/** Gradient of what rules. */
export function cellGradient(cell: Cell, x: number, y: number): [dx: number, dy: number] {
  return cell.law === undefined ? [cell.plane.dx, cell.plane.dy] : lawGradient(cell.law, x, y)
}

/** Steepness there: fall per unit of run. */
export function cellSlope(cell: Cell, x: number, y: number): number {
  return cell.law === undefined ? slopeOf(cell.plane) : Math.hypot(...lawGradient(cell.law, x, y))
}
