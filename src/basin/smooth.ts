import { NEARLY } from './tolerance.ts'
import type { Point, Segment } from './types.ts'

/**
 * Cubic segments through points, smooth in direction and curvature; closed goes on from the last point to the first.
 * Method: interpolating cubic spline over centripetal knots (step = √distance), tridiagonal for the slopes, periodic by
 *   Sherman–Morrison where closed, natural ends where open. Fewer than three points give lines.
 * Source: Lee, Choosing nodes in parametric curve interpolation, CAD 21 (1989); spline equations from memory.
 */
export function smoothThrough(points: readonly Point[], closed: boolean): Segment[] {
  const n = points.length
  if (n < 3) return points.slice(1).map((to) => ({ to }))
  const count = closed ? n : n - 1
  const step = Array.from({ length: count }, (_, i) => {
    const a = points[i]!
    const b = points[(i + 1) % n]!
    return Math.sqrt(Math.hypot(b[0] - a[0], b[1] - a[1])) || NEARLY
  })
  const mx = slopes(
    points.map((p) => p[0]),
    step,
    closed,
  )
  const my = slopes(
    points.map((p) => p[1]),
    step,
    closed,
  )
  return Array.from({ length: count }, (_, i): Segment => {
    const k = (i + 1) % n
    const third = step[i]! / 3
    return {
      to: points[k]!,
      c1: [points[i]![0] + third * mx[i]!, points[i]![1] + third * my[i]!],
      c2: [points[k]![0] - third * mx[k]!, points[k]![1] - third * my[k]!],
    }
  })
}

function slopes(value: readonly number[], step: readonly number[], closed: boolean): number[] {
  const n = value.length
  const lower = new Array<number>(n).fill(0)
  const middle = new Array<number>(n).fill(0)
  const upper = new Array<number>(n).fill(0)
  const right = new Array<number>(n).fill(0)
  const rate = step.map((h, i) => (value[(i + 1) % n]! - value[i]!) / h)
  for (let i = closed ? 0 : 1; i < (closed ? n : n - 1); i++) {
    const before = step[(i + step.length - 1) % step.length]!
    const after = step[i]!
    lower[i] = after
    middle[i] = 2 * (before + after)
    upper[i] = before
    right[i] = 3 * (after * rate[(i + rate.length - 1) % rate.length]! + before * rate[i]!)
  }
  if (!closed) {
    middle[0] = 2
    upper[0] = 1
    right[0] = 3 * rate[0]!
    lower[n - 1] = 1
    middle[n - 1] = 2
    right[n - 1] = 3 * rate[n - 2]!
    return tridiagonal(lower, middle, upper, right)
  }
  // The two corner elements by a rank-one correction.
  const gamma = -middle[0]!
  const corner = upper[n - 1]! * lower[0]!
  const trimmed = [...middle]
  trimmed[0]! -= gamma
  trimmed[n - 1]! -= corner / gamma
  const u = new Array<number>(n).fill(0)
  u[0] = gamma
  u[n - 1] = upper[n - 1]!
  const x = tridiagonal(lower, trimmed, upper, right)
  const z = tridiagonal(lower, trimmed, upper, u)
  const ratio = lower[0]! / gamma
  const factor = (x[0]! + ratio * x[n - 1]!) / (1 + z[0]! + ratio * z[n - 1]!)
  return x.map((value, i) => value - factor * z[i]!)
}

function tridiagonal(
  lower: readonly number[],
  middle: readonly number[],
  upper: readonly number[],
  right: readonly number[],
): number[] {
  const n = right.length
  const c = new Array<number>(n)
  const d = new Array<number>(n)
  c[0] = upper[0]! / middle[0]!
  d[0] = right[0]! / middle[0]!
  for (let i = 1; i < n; i++) {
    const m = middle[i]! - lower[i]! * c[i - 1]!
    c[i] = upper[i]! / m
    d[i] = (right[i]! - lower[i]! * d[i - 1]!) / m
  }
  for (let i = n - 2; i >= 0; i--) d[i]! -= c[i]! * d[i + 1]!
  return d
}
