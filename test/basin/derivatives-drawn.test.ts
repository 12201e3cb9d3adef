import { describe, expect, it } from 'vitest'
import { derivativesOf, type Floor, type Path, type Point } from '../../src/basin/index.ts'
import type { Feature } from '../../src/features/index.ts'
import { volumeOf, type Written, worstOf } from './by-difference.ts'
import { BEAN, BENT, box, circle, divided, polygon, relative, shape } from './shapes.ts'

const SLOPE: Floor = {
  kind: 'profile',
  axis: { from: [0.2, 0.1], to: [5, 1] },
  stations: [
    [0.5, 0.9],
    [2, 1.2],
    [4.1, 1.9],
  ],
}
/** A footprint of all kinds of sides, of which one closes by itself; it hangs over the outline. */
const CURVED: Path = {
  start: [1.1, 0.7],
  segments: [
    { to: [2.3, -0.4], bulge: 0.3 },
    { to: [3.1, 1.4], c1: [3, 0.1], c2: [2.7, 0.9] },
    { to: [1.9, 1.8], bulge: -0.4 },
  ],
}
const SHELF: Feature = { kind: 'shelf', path: CURVED, depthM: 0.41 }
const OVERHANGING: Feature = { kind: 'bench', path: polygon([4.1, 0.6], [6, 0.5], [6.2, 2.2], [4.4, 2.4]), depthM: 0.6 }
const FLIGHT: Feature = {
  kind: 'steps',
  path: polygon([-0.5, 0.4], [1.5, 0.2], [1.7, 1.5], [-0.4, 1.6]),
  axis: { from: [0.1, 0.9], to: [1, 1.2] },
  treads: [
    [0, 0.25],
    [0.5, 0.5],
    [0.8, 0.7],
  ],
}
/** Its middle tread lies higher than its neighbours. */
const BUMPED: Feature = {
  kind: 'steps',
  path: { start: [2, 0.9], segments: [{ to: [3.9, 0.9], bulge: 0.2 }, { to: [3.8, 2.1] }, { to: [2.1, 2] }] },
  axis: { from: [2.2, 1.1], to: [3.1, 1.5] },
  treads: [
    [-0.2, 0.5],
    [0.4, 0.3],
    [0.9, 0.8],
  ],
}
const RAMP: Feature = {
  kind: 'ramp',
  path: polygon([0.7, 1.6], [2.6, 1.3], [2.7, 3.1], [0.8, 3.4]),
  axis: { from: [1.4, 3.1], to: [2, 1.7] },
  fromDepthM: -0.2,
  toDepthM: 1.1,
}
/** Laid over the others: edges are crossed, covered and cut by the lines where two depths are equal. */
const PILE: Feature[] = [SHELF, OVERHANGING, FLIGHT, BUMPED, RAMP]

const written = (parts: Partial<Written>): Written => ({
  outline: BENT,
  islands: [],
  floor: SLOPE,
  wall: { kind: 'vertical' },
  features: PILE,
  levelM: 0,
  ...parts,
})

const UPRIGHT: Record<string, Written> = {
  'a curved shelf that hangs over the outline': written({ features: [SHELF] }),
  'a flight, and one with a tread that lies higher': written({ features: [FLIGHT, BUMPED] }),
  'a ramp that begins above the water': written({ features: [RAMP], levelM: -0.05 }),
  'all in a pile': written({}),
  'all in a pile, partly dry': written({ levelM: -0.45 }),
  'all in a pile beside islands': written({ islands: [circle(2.2, 1.3, 0.4), box(3.4, 1.6, 3.9, 2)], levelM: 0.1 }),
  'all in a pile over a level floor': written({ floor: { kind: 'flat', depthM: 0.65 }, levelM: 0.1 }),
  'all in a pile in a freeform pool': written({ outline: BEAN, features: PILE, levelM: -0.2 }),
  'benches and round steps among them': written({
    features: [
      { kind: 'bench', along: { fromSegment: 0, toSegment: 1 }, widthM: 0.45, depthM: 0.52 },
      ...PILE,
      {
        kind: 'roundSteps',
        centre: [0.3, 0.45],
        treads: [
          [0.5, 0.2],
          [0.9, 0.45],
        ],
      },
    ],
  }),
}
/** A hollow and depth lines below, whose depths no plane tells. */
const OVER_OTHERS: Record<string, Written> = {
  'a cone': written({
    floor: { kind: 'dish', form: 'cone', centre: [2.3, 1.5], radiusM: 1.3, edgeDepthM: 0.55, depthM: 1.6 },
    levelM: 0.05,
  }),
  'depth lines': written({
    outline: polygon([0, 0], [5, 0], [5, 4], [3.2, 3.8], [2.9, 3.2], [0, 3.4]),
    floor: {
      kind: 'contours',
      edgeDepthM: 0.55,
      rings: [{ depthM: 1.6, path: polygon([0.9, 0.7], [3.2, 0.61], [3.4, 2.23], [1.1, 2.1]) }],
    },
  }),
}
const WALLED: Record<string, Written> = {
  'a cove': written({ wall: { kind: 'cove', radiusM: 0.6 } }),
  'a cove wider than the water, partly dry': written({
    features: [BUMPED],
    wall: { kind: 'cove', radiusM: 1.4 },
    levelM: -0.23,
  }),
  'a batter': written({ features: [FLIGHT, RAMP], wall: { kind: 'battered', run: 0.3 }, levelM: 0.05 }),
  'a batter and islands': written({
    features: [OVERHANGING, BUMPED],
    wall: { kind: 'battered', run: 0.3 },
    islands: [circle(2.2, 1.3, 0.4)],
    levelM: -0.1,
  }),
  'a cove over a dish': written({
    features: [SHELF, BUMPED],
    floor: { kind: 'dish', form: 'cap', centre: [2.3, 1.5], radiusM: 1.2, edgeDepthM: 0.55, depthM: 1.6 },
    wall: { kind: 'cove', radiusM: 0.5 },
  }),
}

describe('derivatives of the volume by the footprints of features, by treads and by axes', () => {
  const check = (cases: Record<string, Written>, near: number, stepM = 2e-4): void => {
    for (const [name, of] of Object.entries(cases))
      it(`are what small moves do to it: ${name}`, () => {
        const worst = worstOf(of, stepM, /^features/)
        expect(worst.off, worst.path).toBeLessThan(near)
      })
  }
  describe('with upright walls', () => check(UPRIGHT, 1e-8))
  describe('over other floors', () => check(OVER_OTHERS, 1e-7))
  // A volume under a wall is as near as its bound tells, which a longer step divides.
  describe('with coves and batters', () => check(WALLED, 1e-7, 1e-3))
})

describe('derivatives of the volume by all that stands in the plan', () => {
  for (const [name, of] of Object.entries({ ...UPRIGHT, ...OVER_OTHERS }))
    it(`know that a plan may be drawn larger and elsewhere: Σ P ∂V/∂P = 2 V, Σ ∂V/∂P = 0: ${name}`, () => {
      const list = derivativesOf(divided(shape(of.outline, of)), of.levelM)
      let sum = 0
      const shift = [0, 0]
      for (const { path, kind, value } of list) {
        if (['depth', 'level', 'bulge'].includes(kind)) continue
        const place = at(of, path)
        if (typeof value === 'number') sum += value * (place as number)
        else
          for (const k of [0, 1] as const) {
            sum += value[k] * (place as Point)[k]
            shift[k]! += value[k]
          }
      }
      const volumeM3 = volumeOf(of)
      expect(relative(sum, 2 * volumeM3)).toBeLessThan(1e-8)
      expect(Math.hypot(shift[0]!, shift[1]!)).toBeLessThan(1e-8 * volumeM3)
    })
})

/** Likewise under walls, whose own numbers don't grow with the plan. */
for (const [name, of] of Object.entries(WALLED))
  it(`derivatives of the volume know that a plan may be drawn elsewhere: ${name}`, () => {
    const list = derivativesOf(divided(shape(of.outline, of)), of.levelM)
    const places = list.filter(({ kind }) => kind !== 'bulge').map(({ value }) => value)
    const sum = (k: 0 | 1): number => places.reduce<number>((all, it) => all + (typeof it === 'number' ? 0 : it[k]), 0)
    expect(Math.hypot(sum(0), sum(1))).toBeLessThan(1e-6 * volumeOf(of))
  })

/** The number or place at a path. */
function at(of: Written, path: string): unknown {
  let here = of as unknown
  for (const key of path.split(/[.[\]]+/).filter((it) => it !== '')) here = (here as Record<string, unknown>)[key]
  return here
}

describe('one-sided derivatives of the volume', () => {
  const POOL = box(0, 0, 5, 4)
  const by = (features: Feature[]): Map<string, unknown> =>
    new Map(derivativesOf(divided(shape(POOL, { features })), 0).map(({ path, value }) => [path, value]))

  it('are of moves over land where a footprint ends at the wall', () => {
    const of = by([{ kind: 'shelf', path: box(0, 0, 2, 1), depthM: 0.5 }])
    expect(of.get('features[0].path.start')).toEqual([0, 0])
    expect(of.get('features[0].path.segments[0].to')).toEqual([expect.closeTo(-0.5, 12), 0])
    expect(of.get('features[0].path.segments[1].to')).toEqual([expect.closeTo(-0.5, 12), expect.closeTo(-1, 12)])
  })

  it('let the shallower of two shelves grow that share an edge, and the deeper one go beneath it', () => {
    const of = by([
      { kind: 'shelf', path: box(1, 1, 2, 3), depthM: 0.5 },
      { kind: 'shelf', path: box(2, 1, 4, 3), depthM: 0.9 },
    ])
    const x = (path: string): number => (of.get(path) as Point)[0]
    expect(x('features[0].path.segments[0].to')).toBeCloseTo(-0.4, 12)
    expect(x('features[0].path.segments[1].to')).toBeCloseTo(-0.4, 12)
    expect(x('features[1].path.start')).toBeCloseTo(0, 12)
    expect(x('features[1].path.segments[2].to')).toBeCloseTo(0, 12)
    expect(x('features[1].path.segments[1].to')).toBeCloseTo(-0.6, 12)
  })

  it('give an edge that a bench and a shelf share to the shallower one', () => {
    const bench = (depthM: number): Feature => ({
      kind: 'bench',
      along: { fromSegment: 3, toSegment: 3 },
      widthM: 0.5,
      depthM,
    })
    const shelf: Feature = { kind: 'shelf', path: box(0.5, 0, 2, 4), depthM: 0.6 }
    // The wall is 4 m long.
    expect(by([bench(0.4), shelf]).get('features[0].widthM')).toBeCloseTo(-4 * 0.2, 12)
    expect(by([bench(0.7), shelf]).get('features[0].widthM')).toBeCloseTo(0, 12)
    expect((by([bench(0.4), shelf]).get('features[1].path.start') as Point)[0]).toBeCloseTo(0, 12)
    expect((by([bench(0.7), shelf]).get('features[1].path.start') as Point)[0]).toBeCloseTo(2 * 0.1, 12)
  })

  it('hide the deeper one of two shelves with the same footprint', () => {
    const of = by([
      { kind: 'shelf', path: box(1, 1, 2, 3), depthM: 0.9 },
      { kind: 'shelf', path: box(1, 1, 2, 3), depthM: 0.5 },
    ])
    expect(of.get('features[0].path.segments[1].to')).toEqual([0, 0])
    expect((of.get('features[1].path.segments[1].to') as Point)[0]).toBeCloseTo(-1, 12)
  })

  it('hide round steps beneath a shelf with the very footprint of one of them', () => {
    const flight: Feature = {
      kind: 'roundSteps',
      centre: [2, 2],
      treads: [
        [0.5, 0.4],
        [1, 0.8],
      ],
    }
    const round: Feature = { kind: 'shelf', path: circle(2, 2, 1), depthM: 0.6 }
    const of = by([flight, round])
    expect(of.get('features[0].treads[1][0]')).toBe(0)
    expect(of.get('features[0].treads[0][0]')).toBeCloseTo(-Math.PI * 0.2, 9)
    const ends = ['start', 'segments[0].to'].map((path) => (of.get(`features[1].path.${path}`) as Point)[0])
    // Two nodes across from each other: each moves the radius by half.
    expect(ends[0]! - ends[1]!).toBeCloseTo(-2 * Math.PI * 0.9, 9)
  })

  it('know a flight of straight treads: −(d₂ − d₁) · width by where the second begins, none by the first', () => {
    const of = by([
      {
        kind: 'steps',
        path: box(0, 1, 2, 3),
        axis: { from: [0, 2], to: [2, 2] },
        treads: [
          [0, 0.3],
          [0.8, 0.7],
        ],
      },
    ])
    expect(of.get('features[0].treads[0][0]')).toBe(0)
    expect(of.get('features[0].treads[1][0]')).toBeCloseTo(-0.8, 12)
    expect((of.get('features[0].axis.from') as Point)[0]).toBeCloseTo(-0.8, 12)
    expect(of.get('features[0].axis.to')).toEqual([0, expect.closeTo(0, 12)])
  })

  it('let a tread shrink whose end lies on the edge of the footprint', () => {
    const of = by([
      {
        kind: 'steps',
        path: box(0, 1, 2, 3),
        axis: { from: [0, 2], to: [2, 2] },
        treads: [
          [0, 0.3],
          [2, 0.7],
        ],
      },
    ])
    expect(of.get('features[0].treads[1][0]')).toBeCloseTo(0, 12)
    expect((of.get('features[0].path.segments[1].to') as Point)[0]).toBeCloseTo(-1.2, 12)
  })

  it('know a ramp: −½ width · fall by moving an end of its slope', () => {
    const of = by([
      {
        kind: 'ramp',
        path: box(0, 1, 4, 3),
        axis: { from: [0, 2], to: [2, 2] },
        fromDepthM: 0.1,
        toDepthM: 0.9,
      },
    ])
    // V = width · (mean of both depths over the slope + the lower one beyond), so ∂V/∂to = width · (½ − 1) (d₂ − d₁).
    expect((of.get('features[0].axis.to') as Point)[0]).toBeCloseTo(-0.8, 12)
    expect((of.get('features[0].axis.from') as Point)[0]).toBeCloseTo(-0.8, 12)
  })
})

it('lists no derivatives by the ends of a flight’s axis that is shorter than the grain, and no number that is none', () => {
  const axis = { from: [0, 0], to: [1e-320, 0] } as const
  const features: Feature[] = [
    {
      kind: 'steps',
      path: box(1, 1, 3, 3),
      axis,
      treads: [
        [0, 0.3],
        [2, 0.7],
      ],
    },
  ]
  const list = derivativesOf(divided(shape(box(0, 0, 5, 4), { features })), 0)
  expect(list.filter(({ kind }) => kind === 'axis')).toEqual([])
  expect(list.flatMap(({ value }) => value).every(Number.isFinite)).toBe(true)
  expect(list.find(({ path }) => path === 'features[0].treads[1][0]')?.value).toBeCloseTo(-2 * 0.4, 9)
})
