import type { ArcCurve } from './curve.ts'
import { HAIR } from './tolerance.ts'

/** Distances along a ray, nearest first; those that there aren't are infinite. */
export interface Meetings {
  first: number
  second: number
}

/**
 * Where a ray's line meets a stretch of an arc, on its side of the chord, for it turns by a quarter at most.
 * Equation: |v + n N|² = R², v from the centre to the ray's foot.
 * Accuracy: rounding of the radius; a stretch is taken a hair longer than it is where `isGenerous`.
 */
export function meetArc(
  curve: ArcCurve,
  t0: number,
  t1: number,
  ray: { readonly x: number; readonly y: number; readonly nx: number; readonly ny: number },
  isGenerous: boolean,
  out: Meetings,
): void {
  out.first = Infinity
  out.second = Infinity
  const vx = ray.x - curve.x0 + curve.radius * Math.sin(curve.heading)
  const vy = ray.y - curve.y0 - curve.radius * Math.cos(curve.heading)
  const along = vx * ray.nx + vy * ray.ny
  const off = vx * ray.ny - vy * ray.nx
  const half2 = (curve.radius - off) * (curve.radius + off)
  if (!(half2 >= 0)) return
  const half = Math.sqrt(half2)
  const middle = curve.heading + (curve.turn * (t0 + t1)) / 2
  const radius = Math.abs(curve.radius)
  const sign = Math.sign(curve.radius)
  const mx = sign * Math.sin(middle)
  const my = -sign * Math.cos(middle)
  const least = radius * (Math.cos((curve.turn * (t1 - t0)) / 2) - (isGenerous ? HAIR : 0))
  const near = -along - half
  const far = -along + half
  if ((vx + near * ray.nx) * mx + (vy + near * ray.ny) * my >= least) out.first = near
  if ((vx + far * ray.nx) * mx + (vy + far * ray.ny) * my >= least) {
    if (out.first < Infinity) out.second = far
    else out.first = far
  }
}
