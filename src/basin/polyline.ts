import type { Point } from './types.ts'

/** Length along points, from the first to the last [m]. */
export function lengthAlong(points: readonly Point[]): number {
  let sum = 0
  for (let i = 1; i < points.length; i++)
    sum += Math.hypot(points[i]![0] - points[i - 1]![0], points[i]![1] - points[i - 1]![1])
  return sum
}

/** Area within points that go round, positive counter-clockwise [m²]. */
export function areaWithin(points: readonly Point[]): number {
  const [ox, oy] = points[0] ?? [0, 0]
  let sum = 0
  // From the first point, so that far from the origin no digits are lost.
  for (let i = 1; i + 1 < points.length; i++) {
    const [ax, ay] = points[i]!
    const [bx, by] = points[i + 1]!
    sum += (ax - ox) * (by - oy) - (bx - ox) * (ay - oy)
  }
  return sum / 2
}
