import { type BasinShape, type Partition, type Path, type Point, partition } from '../../src/basin/index.ts'
import { type Feature, patchesOf } from '../../src/features/index.ts'

/** A shape with plain defaults: 1.5 m deep all over, upright walls, 0.15 m of freeboard. */
export function shape(
  outline: Path,
  parts: Partial<Omit<BasinShape, 'outline' | 'patches'>> & { features?: readonly Feature[] } = {},
): BasinShape {
  const { features = [], ...rest } = parts
  const patches = patchesOf(features, outline)
  if (!patches.ok) throw new Error(JSON.stringify(patches.problem))
  return {
    outline,
    islands: [],
    floor: { kind: 'flat', depthM: 1.5 },
    wall: { kind: 'vertical' },
    freeboardM: 0.15,
    ...rest,
    patches: patches.value,
  }
}

/** The partition of a shape that has to be sound. */
export function divided(s: BasinShape): Partition {
  const result = partition(s)
  if (!result.ok) throw new Error(JSON.stringify(result.problem))
  return result.value
}

export function polygon(...points: Point[]): Path {
  return { start: points[0]!, segments: points.slice(1).map((to) => ({ to })) }
}

export function box(x0: number, y0: number, x1: number, y1: number): Path {
  return polygon([x0, y0], [x1, y0], [x1, y1], [x0, y1])
}

export function circle(x: number, y: number, r: number): Path {
  return {
    start: [x + r, y],
    segments: [
      { to: [x - r, y], bulge: 1 },
      { to: [x + r, y], bulge: 1 },
    ],
  }
}

/** An arc that runs on into lines at blunt corners, where a ray is ended now by one and now by the other of two shores, and a cubic. */
export const BENT: Path = {
  start: [0, 0],
  segments: [
    { to: [4, 0.3], bulge: -0.2 },
    { to: [5.2, 3], bulge: 0.5 },
    { to: [3, 2.6] },
    { to: [2.8, 3.9] },
    { to: [0, 3], c1: [2.5, 5], c2: [1, 3.5] },
    { to: [0, 0] },
  ],
}

/** A freeform outline of four cubics, smooth but for nothing. */
export const BEAN: Path = {
  start: [0, 2.2],
  segments: [
    { to: [4, 4.6], c1: [0, 4], c2: [1.8, 5] },
    { to: [8, 3.8], c1: [5.65, 4.3], c2: [6.4, 3.6] },
    { to: [7.6, 0.2], c1: [10.4, 4.1], c2: [10.6, 0.6] },
    { to: [0, 2.2], c1: [4.6, -0.2], c2: [0, 0] },
  ],
}

/** A pool as people draw them: freeform, sloping, with a shelf, a flight and round steps. */
export const DEMO: BasinShape = shape(BEAN, {
  floor: {
    kind: 'profile',
    axis: { from: [0, 2], to: [9, 2.5] },
    stations: [
      [0.5, 1],
      [4, 1.3],
      [6, 2],
      [9, 2.1],
    ],
  },
  features: [
    { kind: 'shelf', path: box(3, 3.4, 5, 6), depthM: 0.35 },
    {
      kind: 'steps',
      path: box(-1, 1.2, 1.2, 3.2),
      axis: { from: [0, 2.2], to: [1.2, 2.2] },
      treads: [
        [0, 0.25],
        [0.5, 0.5],
        [0.85, 0.75],
      ],
    },
    {
      kind: 'roundSteps',
      centre: [9.3, 2.4],
      treads: [
        [0.6, 0.3],
        [0.9, 0.6],
        [1.2, 0.9],
      ],
    },
  ],
})

export function relative(a: number, b: number): number {
  return Math.abs(a - b) / Math.max(Math.abs(b), 1e-12)
}

/** Points turned about the origin [rad]. */
export const turnedBy =
  (turn: number) =>
  (x: number, y: number): Point => [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)]
