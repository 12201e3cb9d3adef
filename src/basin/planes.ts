import type { Plane } from './types.ts'

/** Depth of a plane at a place. */
export function planeAt(plane: Plane, x: number, y: number): number {
  return plane.atOrigin + plane.dx * x + plane.dy * y
}

/** The same plane seen from another origin. */
export function shifted(plane: Plane, originX: number, originY: number): Plane {
  return { atOrigin: planeAt(plane, originX, originY), dx: plane.dx, dy: plane.dy }
}

/** Steepness: fall per unit of run. */
export function slopeOf(plane: Plane): number {
  return Math.hypot(plane.dx, plane.dy)
}
