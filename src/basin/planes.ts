import type { Plane } from './types.ts'

/** Depth of a plane at a place. */
export function planeAt(plane: Plane, x: number, y: number): number {
  return plane.atOrigin + plane.dx * x + plane.dy * y
}

/** The same plane seen from another origin. */
function shifted(plane: Plane, originX: number, originY: number): Plane {
  return { atOrigin: planeAt(plane, originX, originY), dx: plane.dx, dy: plane.dy }
}

/** Planes seen from another origin; what was one plane stays one, for pieces of one seat share it. */
export function shiftedAll(planes: readonly Plane[], originX: number, originY: number): Plane[] {
  const known = new Map<Plane, Plane>()
  return planes.map((plane) => {
    const moved = known.get(plane) ?? shifted(plane, originX, originY)
    known.set(plane, moved)
    return moved
  })
}

/** Steepness: fall per unit of run. */
export function slopeOf(plane: Plane): number {
  return Math.hypot(plane.dx, plane.dy)
}
