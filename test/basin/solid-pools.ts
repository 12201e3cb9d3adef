import { type BasinShape, type Path, type Point, STARTING_OUTLINES } from '../../src/basin/index.ts'
import { BEAN, box, circle, DEMO, polygon, shape } from './shapes.ts'

/** A pool that the solid modeller builds too, and how fine it has to be for the agreement that is asked for. */
export interface SolidPool {
  readonly name: string
  readonly shape: BasinShape
  readonly slices: number
}

function started(id: string, parameters: Record<string, number> = {}): Path {
  const made = STARTING_OUTLINES.get(id)?.make(parameters)
  if (!made?.ok) throw new Error(id)
  return made.value
}

const slope = (from: Point, to: Point, ...stations: [number, number][]) =>
  ({ kind: 'profile', axis: { from, to }, stations }) as const

const ROUND_STEPS = (centre: Point) =>
  ({
    kind: 'roundSteps',
    centre,
    treads: [
      [0.6, 0.3],
      [0.9, 0.6],
      [1.2, 0.9],
    ],
  }) as const

const regular = (count: number, r: number): Path =>
  polygon(
    ...Array.from({ length: count }, (_, i): Point => {
      const a = (2 * Math.PI * i) / count
      return [r * Math.cos(a), r * Math.sin(a)]
    }),
  )

/** A bowl d = 2 − (x² + y²)/36: 1 m deep where a round of 6 m has its corners. */
const BOWL = (
  [
    [0.3, -0.2],
    [2, 1],
    [-1.5, 2.5],
    [-3, -1],
    [0.5, -3.5],
    [3.4, -1.8],
    [-0.7, 0.9],
  ] as const
).map(([x, y]) => [x, y, 2 - (x * x + y * y) / 36] as const)

export const SOLID_POOLS: readonly SolidPool[] = [
  { name: 'freeform, sloped, with shelf, flight and round steps', shape: DEMO, slices: 1 },
  {
    name: 'round, sloped, with an island and overlapping shelves',
    shape: shape(circle(0, 0, 4), {
      islands: [circle(0.8, 0.3, 0.9)],
      floor: slope([-4, -1], [4, 1], [0, 1], [3, 1.2], [6, 2.2]),
      features: [
        { kind: 'shelf', path: box(-5, -5, -2, 5), depthM: 0.4 },
        { kind: 'shelf', path: circle(-2, 2, 1.5), depthM: 0.7 },
        { kind: 'shelf', path: BEAN, depthM: 1.5 },
      ],
    }),
    slices: 1,
  },
  {
    name: 'oblong with a beach ramp and a seat',
    shape: shape(box(0, 0, 9, 4), {
      floor: slope([0, 0], [9, 0], [2, 1], [8, 2]),
      features: [
        {
          kind: 'ramp',
          path: box(-1, -1, 3, 5),
          axis: { from: [0, 2], to: [3, 2.4] },
          fromDepthM: 0,
          toDepthM: 0.9,
        },
        { kind: 'shelf', path: box(8.5, 0, 9, 4), depthM: 0.45 },
      ],
    }),
    slices: 1,
  },
  {
    name: 'stadium, coved, with shelf and round steps',
    shape: shape(started('stadium', { lengthM: 9, widthM: 4 }), {
      floor: { kind: 'flat', depthM: 1.6 },
      wall: { kind: 'cove', radiusM: 0.4 },
      features: [{ kind: 'shelf', path: box(-0.5, -0.5, 2, 1.3), depthM: 0.5 }, ROUND_STEPS([8.2, 3])],
    }),
    slices: 12,
  },
  {
    name: 'kidney, coved, sloping',
    shape: shape(started('kidney'), {
      floor: slope([0, 0], [8.6, 0.4], [1, 1], [5, 1.4], [8, 2.1]),
      wall: { kind: 'cove', radiusM: 0.35 },
    }),
    slices: 12,
  },
  {
    name: 'freeform, coved, sloping, with shelf and flight',
    shape: { ...DEMO, wall: { kind: 'cove', radiusM: 0.3 } },
    slices: 12,
  },
  {
    name: 'L, coved at a re-entrant corner, sloping, with an island',
    shape: shape(started('ell'), {
      islands: [circle(2, 2, 0.6)],
      floor: slope([0, 0], [9, 1], [0, 1.8], [8, 1]),
      wall: { kind: 'cove', radiusM: 0.5 },
    }),
    slices: 12,
  },
  {
    name: 'oblong, battered, flat',
    shape: shape(box(0, 0, 8, 4), { wall: { kind: 'battered', run: 0.5 } }),
    slices: 16,
  },
  {
    name: 'stadium, battered, sloping',
    shape: shape(started('stadium', { lengthM: 9, widthM: 4 }), {
      floor: slope([0, 0], [9, 0], [1, 1], [8, 2]),
      wall: { kind: 'battered', run: 0.4 },
    }),
    slices: 16,
  },
  {
    name: 'L, battered to a cone about its re-entrant corner, with a shelf',
    shape: shape(started('ell'), {
      wall: { kind: 'battered', run: 0.6 },
      features: [{ kind: 'shelf', path: box(-1, -1, 2.5, 2), depthM: 0.4 }],
    }),
    slices: 16,
  },
  {
    name: 'round, battered, with an island that widens downward',
    shape: shape(circle(0, 0, 4), {
      islands: [circle(0.5, 0.4, 0.8)],
      floor: slope([-4, 0], [4, 0], [0, 1.2], [8, 2]),
      wall: { kind: 'battered', run: 0.25 },
    }),
    slices: 16,
  },
  {
    name: 'oblong with a hopper',
    shape: shape(box(0, 0, 10, 5), {
      floor: { kind: 'contours', edgeDepthM: 1.1, rings: [{ depthM: 2.6, path: box(6, 1.5, 8.5, 3.5) }] },
      features: [ROUND_STEPS([0, 0])],
    }),
    slices: 1,
  },
  {
    name: 'oblong with two depth lines, one within the other',
    shape: shape(box(0, 0, 10, 5), {
      floor: {
        kind: 'contours',
        edgeDepthM: 1,
        rings: [
          { depthM: 1.5, path: box(2, 1, 9, 4) },
          { depthM: 2.5, path: box(5, 2, 8, 3) },
        ],
      },
    }),
    slices: 1,
  },
  {
    name: 'twelve corners, sounded at seven places of a bowl',
    shape: shape(regular(12, 6), { floor: { kind: 'soundings', edgeDepthM: 1, points: BOWL } }),
    slices: 1,
  },
  {
    name: 'round, with a hollow like a cap and a shelf',
    shape: shape(circle(0, 0, 4), {
      floor: { kind: 'dish', form: 'cap', centre: [0.5, 0.2], radiusM: 3, edgeDepthM: 1, depthM: 2 },
      features: [{ kind: 'shelf', path: box(-5, -2, -1.5, 2), depthM: 0.5 }],
    }),
    slices: 1,
  },
  {
    name: 'oblong, with a hollow like a cone cut by a wall, and an island',
    shape: shape(box(0, 0, 9, 5), {
      islands: [circle(2, 2.5, 0.7)],
      floor: { kind: 'dish', form: 'cone', centre: [6, 2], radiusM: 2.5, edgeDepthM: 1.2, depthM: 2.4 },
    }),
    slices: 1,
  },
]
