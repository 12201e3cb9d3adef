import fc from 'fast-check'
import { ordinaryBody } from './ordinary.ts'

type Raw = Record<string, unknown>
const square = (x: number, y: number, side: number) => ({
  start: [x, y],
  segments: [{ to: [x + side, y] }, { to: [x + side, y + side] }, { to: [x, y + side] }],
})
const soundings = (edgeDepthM: number | null, ...points: number[][]) => ({
  floor: { kind: 'soundings', edgeDepthM, points },
})
const dish = (row: Raw) => ({
  floor: { kind: 'dish', form: 'cap', centre: [0, 0], radiusM: 0.5, edgeDepthM: 1, depthM: 1.2, ...row },
})
const contours = (...rings: object[]) => ({
  floor: { kind: 'contours', edgeDepthM: 1, rings: rings.map((path) => ({ depthM: 2, path })) },
})
const feature = (row: Raw) => ({ features: [row] })
const AXIS = { from: [-2, 0], to: [2, 0] }
const POINT = { from: [1, 1], to: [1, 1] }
const SQUARE = { outline: square(-3, -3, 6), islands: [], features: [], wall: { kind: 'vertical' }, levelM: 0 }
const DOUBLED = {
  ...SQUARE,
  outline: { start: [-3, -3], segments: [{ to: [3, -3] }, { to: [3, -3] }, { to: [3, 3] }, { to: [-3, 3] }] },
}

/** One thing wrong each: together every complaint that a body can come to, by name of what is wrong. */
const FAULTS: readonly Raw[] = [
  { wall: { kind: 'cove', radiusM: 0 } },
  { wall: { kind: 'battered', run: -0.25 } },
  { floor: { kind: 'profile', axis: AXIS, stations: [] } },
  {
    floor: {
      kind: 'profile',
      axis: AXIS,
      stations: [
        [1, 1],
        [1, 2],
      ],
    },
  },
  { floor: { kind: 'profile', axis: POINT, stations: [[0, 1]] } },
  { floor: { kind: 'flat', depthM: -0.2 } },
  { floor: { kind: 'flat', depthM: Number.NaN } },
  { levelM: -20 },
  { levelM: 1e12 },
  { ...SQUARE, ...dish({ radiusM: 0 }) },
  { ...SQUARE, ...dish({ depthM: 1.9 }) },
  soundings(null),
  { ...SQUARE, ...soundings(1, [0, 0, 1], [0, 0, 2]) },
  { ...SQUARE, ...soundings(1, [50, 0, 1]) },
  { ...SQUARE, ...contours(square(-2, -2, 2), square(-1, -1, 2)) },
  { ...SQUARE, ...contours(square(-4, -1, 2)) },
  { ...SQUARE, ...contours(square(20, 20, 1)) },
  feature({ kind: 'steps', path: square(-1, -1, 2), axis: AXIS, treads: [] }),
  feature({
    kind: 'steps',
    path: square(-1, -1, 2),
    axis: AXIS,
    treads: [
      [1, 0.5],
      [1, 0.8],
    ],
  }),
  feature({ kind: 'steps', path: square(-1, -1, 2), axis: POINT, treads: [[0, 0.5]] }),
  feature({ kind: 'roundSteps', centre: [0, 0], treads: [[0, 0.5]] }),
  feature({ kind: 'bench', along: { fromSegment: 0, toSegment: 0 }, widthM: 0, depthM: 0.5 }),
  feature({ kind: 'bench', along: { fromSegment: 0, toSegment: 999 }, widthM: 0.4, depthM: 0.5 }),
  { ...DOUBLED, ...feature({ kind: 'bench', along: { fromSegment: 1, toSegment: 1 }, widthM: 0.4, depthM: 0.5 }) },
  { ...SQUARE, ...feature({ kind: 'shelf', path: square(30, 30, 2), depthM: 0.5 }) },
  { ...SQUARE, islands: [square(20, 20, 1)] },
  { ...SQUARE, islands: [square(-1, -1, 2), square(-0.5, -0.5, 1)] },
  { ...SQUARE, islands: [square(-1, -1, 2), square(0, 0, 2)] },
  { ...SQUARE, islands: [square(2, 2, 2)] },
  { outline: { start: [-3, -3], segments: [{ to: [3, 3] }, { to: [3, -3] }, { to: [-3, 3] }] } },
  {
    ...SQUARE,
    outline: {
      start: [0, 0],
      segments: [{ to: [4, 0] }, { to: [4, 4] }, { to: [9, 4] }, { to: [4, 4] }, { to: [0, 4] }],
    },
  },
  { outline: { start: [0, 0], segments: [{ to: [4, 0] }] }, features: [] },
  { ...SQUARE, outline: { start: [0, 0], segments: [{ to: [4, 0] }, { to: [2, 0] }] } },
  { ...SQUARE, outline: square(0, 0, 5e-4) },
  { ...SQUARE, outline: square(0, 0, 2e4) },
]

/** An ordinary pool with one thing wrong. */
export const spoiltBody: fc.Arbitrary<Raw> = fc
  .tuple(ordinaryBody(1), fc.constantFrom(...FAULTS))
  .map(([body, fault]) => ({ ...body, ...fault }))
