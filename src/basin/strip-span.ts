import type { Cell, Partition } from './partition-types.ts'
import { planeAt } from './planes.ts'
import { hollowAlong } from './ray-hollow.ts'
import type { StripPiece, StripRay } from './strip-types.ts'
import type { RaySpan } from './wall-kind.ts'

/** Lays a stretch of a piece's ray over the cell that it crosses there, between its crossings; false where that is dry land. */
export function laySpan(p: Partition, piece: StripPiece, ray: StripRay, i: number, span: RaySpan): boolean {
  span.from = i === 0 ? 0 : ray.at[i - 1]!
  span.to = ray.at[i] ?? ray.end
  const cell = p.cells[piece.cells[i]!]
  if (!cell) return false
  layOver(p, cell, ray.x, ray.y, ray.nx, ray.ny, span)
  return true
}

/** Writes the depths of floor and of what rules in a cell along a ray into a stretch; its ends are the caller's. */
export function layOver(p: Partition, cell: Cell, x: number, y: number, nx: number, ny: number, span: RaySpan): void {
  const { plane: floor, law: hollow } = p.floor.pieces[cell.strip]!
  span.hollow = hollow && hollowAlong(hollow, { x, y, nx, ny })
  span.f0 = planeAt(floor, x, y)
  span.f1 = floor.dx * nx + floor.dy * ny
  span.isFeature = cell.patch >= 0
  span.k0 = span.isFeature ? planeAt(cell.plane, x, y) : span.f0
  span.k1 = span.isFeature ? cell.plane.dx * nx + cell.plane.dy * ny : span.f1
}
