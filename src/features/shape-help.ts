import type { Problem } from '../base/index.ts'
import { type Path, type Point, transformPath } from '../basin/index.ts'
import { problem } from './problems.ts'
import type { FeatureHandle } from './types.ts'

/** A complaint where a number isn't one. */
export function finite(value: number, path: string): Problem | undefined {
  return Number.isFinite(value) ? undefined : problem('not-a-number', path)
}

/** A handle of a feature. */
export function grip<F>(
  id: string,
  label: string,
  at: (feature: F) => Point,
  moveTo: (feature: F, to: Point) => F,
): FeatureHandle<F> {
  return { id, label, at, moveTo }
}

/** A path moved by a distance. */
export function movedPath(path: Path, dx: number, dy: number): Path {
  return transformPath(path, { a: 1, b: 0, c: 0, d: 1, e: dx, f: dy })
}

/** A direction of length 1; along x where none is given. */
export function unit(direction: Point): Point {
  const length = Math.hypot(direction[0], direction[1])
  return length > 0 ? [direction[0] / length, direction[1] / length] : [1, 0]
}

/** A rectangle that starts at a point's line, runs a length toward a direction, and is as wide as told across it. */
export function rectangle(at: Point, toward: Point, lengthM: number, widthM: number): Path {
  const [ux, uy] = unit(toward)
  const hx = (-uy * widthM) / 2
  const hy = (ux * widthM) / 2
  const corner = (s: number, side: number): Point => [at[0] + s * ux + side * hx, at[1] + s * uy + side * hy]
  return {
    start: corner(0, -1),
    segments: [{ to: corner(lengthM, -1) }, { to: corner(lengthM, 1) }, { to: corner(0, 1) }, { to: corner(0, -1) }],
  }
}
