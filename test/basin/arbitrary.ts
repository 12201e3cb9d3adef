import fc from 'fast-check'
import type { BasinShape, Path, Point, Segment } from '../../src/basin/index.ts'
import { patchesOf } from '../../src/features/index.ts'

const any = fc.double({ min: -20, max: 20, noNaN: true })
const anyPoint = fc.tuple(any, any) as fc.Arbitrary<Point>
const anySegment: fc.Arbitrary<Segment> = fc.oneof(
  anyPoint.map((to) => ({ to })),
  fc.record({ to: anyPoint, bulge: fc.double({ min: -3, max: 3, noNaN: true }) }),
  fc.record({ to: anyPoint, c1: anyPoint, c2: anyPoint }),
)
export const anyPath: fc.Arbitrary<Path> = fc.record({
  start: anyPoint,
  segments: fc.array(anySegment, { maxLength: 7 }),
})
export const anyDepth = fc.double({ min: -1, max: 4, noNaN: true })

/** Star-like outlines of lines, flat arcs and cubics: mostly sound. */
const star: fc.Arbitrary<Path> = fc
  .array(
    fc.record({
      r: fc.double({ min: 2, max: 4, noNaN: true }),
      kind: fc.nat(4),
      bend: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
    }),
    {
      minLength: 4,
      maxLength: 9,
    },
  )
  .map((rays) => {
    const at = (i: number): Point => {
      const { r } = rays[i % rays.length]!
      const a = (2 * Math.PI * i) / rays.length
      return [r * Math.cos(a), r * Math.sin(a)]
    }
    const segments = rays.map(({ kind, bend }, i): Segment => {
      const to = at(i + 1)
      if (kind === 0) return { to }
      if (kind === 1) return { to, bulge: bend }
      const from = at(i)
      const mid = (t: number): Point => [
        from[0] + t * (to[0] - from[0]) - bend * (to[1] - from[1]),
        from[1] + t * (to[1] - from[1]) + bend * (to[0] - from[0]),
      ]
      // A handle may lie on its own point: the curve stands still there, and may bend without a radius.
      return { to, c1: kind === 3 ? from : mid(1 / 3), c2: kind === 4 ? to : mid(2 / 3) }
    })
    return { start: at(0), segments }
  })

export const around = fc.tuple(
  fc.double({ min: -4, max: 4, noNaN: true }),
  fc.double({ min: -4, max: 4, noNaN: true }),
) as fc.Arbitrary<Point>
const disc = (c: Point, r: number): Path => ({
  start: [c[0] + r, c[1]],
  segments: [
    { to: [c[0] - r, c[1]], bulge: 1 },
    { to: [c[0] + r, c[1]], bulge: 1 },
  ],
})

const feature = fc.oneof(
  fc.record({
    kind: fc.constant('shelf' as const),
    path: fc.tuple(around, fc.double({ min: 0.2, max: 2, noNaN: true })).map(([c, r]) => disc(c, r)),
    depthM: anyDepth,
  }),
  fc.record({ kind: fc.constant('shelf' as const), path: star, depthM: anyDepth }),
  fc.record({
    kind: fc.constant('steps' as const),
    path: star,
    axis: fc.record({ from: around, to: around }),
    treads: fc.constant([
      [0, 0.3],
      [0.4, 0.6],
      [0.9, 0.8],
    ] as [number, number][]),
  }),
  fc.record({
    kind: fc.constant('roundSteps' as const),
    centre: around,
    treads: fc.constant([
      [0.5, 0.3],
      [0.9, 0.6],
      [1.4, 0.9],
    ] as [number, number][]),
  }),
)

export const pool: fc.Arbitrary<BasinShape> = fc
  .record({
    outline: star,
    islands: fc.array(
      fc.tuple(around, fc.double({ min: 0.1, max: 0.8, noNaN: true })).map(([c, r]) => disc(c, r)),
      { maxLength: 2 },
    ),
    features: fc.array(feature, { maxLength: 4 }),
    floor: fc.oneof(
      fc.record({ kind: fc.constant('flat' as const), depthM: fc.double({ min: 0.5, max: 3, noNaN: true }) }),
      fc.record({
        kind: fc.constant('profile' as const),
        axis: fc.record({ from: around, to: around }),
        stations: fc.tuple(anyDepth, anyDepth, anyDepth).map(
          ([a, b, c]) =>
            [
              [-2, a],
              [0.5, b],
              [3, c],
            ] as [number, number][],
        ),
      }),
    ),
  })
  .map(({ features, ...rest }) => {
    const patches = patchesOf(features, rest.outline)
    return { ...rest, wall: { kind: 'vertical' }, patches: patches.ok ? patches.value : [], freeboardM: 0.15 }
  })
