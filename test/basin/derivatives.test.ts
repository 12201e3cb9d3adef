import { describe, expect, it } from 'vitest'
import { derivativesOf, type Floor, type Path } from '../../src/basin/index.ts'
import type { Feature } from '../../src/features/index.ts'
import { type Written, worstOf } from './by-difference.ts'
import { BEAN, BENT, box, circle, divided, polygon, shape } from './shapes.ts'

const HOOK: Path = {
  start: [0, 0],
  segments: [{ to: [5, 0] }, { to: [5, 4] }, { to: [3.2, 3.8] }, { to: [2.9, 1.9] }, { to: [0, 1.6] }],
}
const SLOPE: Floor = {
  kind: 'profile',
  axis: { from: [0.2, 0.1], to: [5, 1] },
  stations: [
    [0.5, 0.9],
    [2, 1.2],
    [4.1, 1.9],
  ],
}
const BEACH: Floor = {
  kind: 'profile',
  axis: { from: [0, 0], to: [5, 0.4] },
  stations: [
    [0.4, -0.3],
    [3.8, 1.7],
  ],
}
const STEPS: Feature[] = [
  { kind: 'shelf', path: box(3.4, -1, 6, 1.1), depthM: 0.41 },
  {
    kind: 'steps',
    path: box(-1, 0.4, 1.3, 1.4),
    axis: { from: [0, 0.9], to: [1, 0.9] },
    treads: [
      [0, 0.25],
      [0.5, 0.5],
      [0.8, 0.7],
    ],
  },
  {
    kind: 'ramp',
    path: box(1.8, -0.5, 2.6, 1.3),
    axis: { from: [2.2, 0.1], to: [2.3, 1.2] },
    fromDepthM: 0.1,
    toDepthM: 1,
  },
]
const written = (parts: Partial<Written>): Written => ({
  outline: BENT,
  islands: [],
  floor: SLOPE,
  wall: { kind: 'vertical' },
  features: [],
  levelM: 0,
  ...parts,
})

const UPRIGHT: Record<string, Written> = {
  'bends of all kinds over a slope': written({}),
  'a re-entrant corner over a level floor, closed by itself': written({
    outline: HOOK,
    floor: { kind: 'flat', depthM: 1.4 },
    levelM: -0.3,
  }),
  'a beach, partly dry, with islands': written({
    floor: BEACH,
    levelM: -0.12,
    islands: [circle(1.6, 1.7, 0.4), box(3.6, 1.5, 4, 2)],
  }),
  'features of all kinds': written({ features: STEPS, levelM: 0.05 }),
  'features that stand out of the water': written({ features: STEPS, floor: BEACH, levelM: -0.35 }),
}

const HOPPER: Floor = {
  kind: 'contours',
  edgeDepthM: 1,
  rings: [
    { depthM: 1.6, path: polygon([0.7, 0.4], [2.2, 0.31], [2.4, 1.23], [0.8, 1.1]) },
    { depthM: 2.1, path: polygon([1, 0.6], [1.71, 0.52], [1.6, 0.93]) },
  ],
}
const SOUNDED: Floor = {
  kind: 'soundings',
  edgeDepthM: 0.8,
  points: [
    [0.9, 0.7, 1.2],
    [2.1, 0.9, 1.5],
    [3.9, 1.4, 1.7],
    [4.2, 2.6, 1.9],
    [3.8, 0.6, 1.4],
  ],
}
const TRIANGULATED: Record<string, Written> = {
  'depth lines under straight shores': written({ outline: HOOK, floor: HOPPER, levelM: 0.05 }),
  'depth lines under straight shores, partly dry': written({ outline: HOOK, floor: HOPPER, levelM: -1.2 }),
  'depth lines and a cove': written({ outline: HOOK, floor: HOPPER, wall: { kind: 'cove', radiusM: 0.3 } }),
  'soundings under straight shores': written({ outline: HOOK, floor: SOUNDED, islands: [box(4.4, 1.1, 4.6, 1.6)] }),
  'soundings and a shelf': written({ outline: HOOK, floor: SOUNDED, features: STEPS.slice(0, 1), levelM: -0.9 }),
}

describe('derivatives of the volume with upright walls', () => {
  for (const [name, of] of Object.entries(UPRIGHT))
    it(`are what small moves do to it: ${name}`, () => {
      const worst = worstOf(of, 2e-4)
      expect(worst.off, worst.path).toBeLessThan(1e-8)
    })
})

describe('derivatives of the volume over triangulated floors', () => {
  for (const [name, of] of Object.entries(TRIANGULATED))
    it(`are what small moves do to it: ${name}`, () => {
      const worst = worstOf(of, 2e-5)
      expect(worst.off, worst.path).toBeLessThan(1e-6)
    })
})

const WALLED: Record<string, Written> = {
  'cove, bends of all kinds': written({ wall: { kind: 'cove', radiusM: 0.3 } }),
  'cove about a re-entrant corner': written({ outline: HOOK, wall: { kind: 'cove', radiusM: 0.5 }, levelM: -0.4 }),
  'cove wider than the water': written({ outline: HOOK, wall: { kind: 'cove', radiusM: 1.1 }, levelM: 0.1 }),
  'cove on a beach with islands': written({
    floor: BEACH,
    wall: { kind: 'cove', radiusM: 0.35 },
    islands: [circle(1.6, 1.7, 0.4), box(3.6, 1.5, 4, 2)],
    levelM: -0.12,
  }),
  'cove with features': written({ features: STEPS, wall: { kind: 'cove', radiusM: 0.4 }, levelM: -0.2 }),
  'batter, bends of all kinds': written({ wall: { kind: 'battered', run: 0.15 }, levelM: 0.05 }),
  'batter about a re-entrant corner': written({ outline: HOOK, wall: { kind: 'battered', run: 0.5 }, levelM: -0.4 }),
  'batter that meets itself': written({ outline: HOOK, wall: { kind: 'battered', run: 1.4 }, levelM: 0.1 }),
  'batter on a beach with islands': written({
    floor: BEACH,
    wall: { kind: 'battered', run: 0.15 },
    islands: [circle(1.6, 1.7, 0.4), box(3.6, 1.5, 4, 2)],
    levelM: -0.12,
  }),
  'batter with features': written({ features: STEPS, wall: { kind: 'battered', run: 0.15 }, levelM: -0.2 }),
}

describe('derivatives of the volume with coves and batters', () => {
  for (const [name, of] of Object.entries(WALLED))
    it(`are what small moves do to it: ${name}`, () => {
      const worst = worstOf(of, 2e-4)
      expect(worst.off, worst.path).toBeLessThan(1e-6)
    })
})

const bench = (fromSegment: number, toSegment: number, widthM = 0.45): Feature => ({
  kind: 'bench',
  along: { fromSegment, toSegment },
  widthM,
  depthM: 0.42,
})
/** Arcs that meet the sides at corners of 12° and bend toward the water and away from it. */
const ARCHED: Path = {
  start: [0, 0],
  segments: [
    { to: [5, 0.4], bulge: 0.3 },
    { to: [5.4, 3.6], bulge: -0.15 },
    { to: [0.2, 3.9], bulge: 0.2 },
    { to: [0, 0] },
  ],
}
const ROUND: Feature[] = [
  {
    kind: 'roundSteps',
    centre: [0.3, 0.45],
    treads: [
      [0.5, 0.2],
      [0.9, 0.5],
      [1.3, 0.8],
    ],
  },
  ...STEPS.slice(0, 1),
]

/** Benches go with their wall; the second number is how near, which is how near a cubic's parallel is fitted. */
const BENCHED: Record<string, [Written, number]> = {
  'one straight side, its ends square': [written({ outline: HOOK, features: [bench(0, 0)] }), 1e-8],
  'two sides and the corner between': [written({ outline: HOOK, features: [bench(0, 1)] }), 1e-8],
  'about a corner that juts into the water, partly dry': [
    written({ outline: HOOK, features: [bench(2, 4)], floor: BEACH, levelM: -0.2 }),
    1e-8,
  ],
  'all round straight sides, of which the last closes by itself': [
    written({ outline: HOOK, features: [bench(0, 4)] }),
    1e-8,
  ],
  'an arc, its ends square or carried on': [written({ outline: ARCHED, features: [bench(0, 0)] }), 1e-8],
  'arcs with the corner between': [written({ outline: ARCHED, features: [bench(1, 2)] }), 1e-8],
  'all round arcs, with a shelf over it': [
    written({ outline: ARCHED, features: [bench(0, 3), { kind: 'shelf', path: box(2, -1, 3, 2), depthM: 0.3 }] }),
    1e-8,
  ],
  'all round a round pool': [
    written({ outline: circle(0, 0, 2), floor: { kind: 'flat', depthM: 1.5 }, features: [bench(0, 1)] }),
    1e-8,
  ],
  'a cubic, its ends square': [written({ outline: BEAN, features: [bench(1, 1)] }), 3e-6],
  'all round cubics': [written({ outline: BEAN, features: [bench(0, 3)] }), 3e-6],
  'one side of a freeform pool of all kinds': [written({ features: [bench(4, 0, 0.3)] }), 3e-6],
  'a straight side under a cove': [
    written({ outline: HOOK, features: [bench(0, 1)], wall: { kind: 'cove', radiusM: 0.7 }, levelM: -0.1 }),
    1e-6,
  ],
  'arcs under a cove': [
    written({ outline: ARCHED, features: [bench(0, 2, 0.3)], wall: { kind: 'cove', radiusM: 0.6 } }),
    1e-6,
  ],
  'all round cubics under a cove': [
    written({ outline: BEAN, features: [bench(0, 3, 0.3)], wall: { kind: 'cove', radiusM: 0.6 } }),
    3e-6,
  ],
  'arcs under a batter': [
    written({ outline: ARCHED, features: [bench(0, 1, 0.3)], wall: { kind: 'battered', run: 0.2 }, levelM: 0.05 }),
    1e-6,
  ],
}

describe('derivatives of the volume where a bench runs along the wall', () => {
  for (const [name, [of, near]] of Object.entries(BENCHED))
    it(`are what small moves do to it: ${name}`, () => {
      const worst = worstOf(of, 2e-4)
      expect(worst.off, worst.path).toBeLessThan(near)
    })
})

describe('derivatives of the volume by radii and centres of round steps', () => {
  for (const [name, of] of Object.entries({
    'upright walls': written({ features: ROUND }),
    'upright walls, partly dry': written({ features: ROUND, levelM: -0.35 }),
    'a cove': written({ features: ROUND, wall: { kind: 'cove', radiusM: 0.4 } }),
  }))
    it(`are what small moves do to it: ${name}`, () => {
      const listed = derivativesOf(divided(shape(of.outline, of)), of.levelM).map(({ path }) => path)
      expect(listed).toEqual(expect.arrayContaining(['features[0].treads[1][0]', 'features[0].centre']))
      const worst = worstOf(of, 2e-4)
      expect(worst.off, worst.path).toBeLessThan(of.wall.kind === 'vertical' ? 1e-8 : 1e-6)
    })
})
