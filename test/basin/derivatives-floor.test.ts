import { describe, expect, it } from 'vitest'
import { derivativesOf, type Floor, type Point } from '../../src/basin/index.ts'
import { volumeOf, type Written, worstOf } from './by-difference.ts'
import { BEAN, box, circle, divided, polygon, shape } from './shapes.ts'

const POINTS: readonly (readonly [number, number, number])[] = [
  [1.9, 2.7, 1.2],
  [3.1, 1.9, 1.5],
  [5.9, 2.4, 1.7],
  [7.2, 2.6, 1.9],
  [4.8, 3, 1.4],
]
const sounded = (edgeDepthM: number | null, points = POINTS): Floor => ({ kind: 'soundings', edgeDepthM, points })
const ROUND_RINGS: Floor = {
  kind: 'contours',
  edgeDepthM: 1,
  rings: [
    { depthM: 1.6, path: circle(2.2, 1.7, 1.1) },
    {
      depthM: 2.1,
      path: {
        start: [1.7, 1.6],
        segments: [
          { to: [2.8, 1.7], c1: [1.8, 1.1], c2: [2.5, 1.2] },
          { to: [1.7, 1.6], bulge: 0.7 },
        ],
      },
    },
  ],
}
const FOUR_SIDES = polygon([0, 0], [8, 0], [8, 4], [0.3, 4.2])
const written = (parts: Partial<Written>): Written => ({
  outline: FOUR_SIDES,
  islands: [],
  floor: sounded(0.8),
  wall: { kind: 'vertical' },
  features: [],
  levelM: 0,
  ...parts,
})
const listOf = (of: Written) =>
  new Map(derivativesOf(divided(shape(of.outline, of)), of.levelM).map(({ path, value }) => [path, value]))

/** How near, and the paths: nodes that slide along curves carry chords with them that are taken as they are. */
const CASES: Record<string, [Written, RegExp, number]> = {
  'soundings within straight shores': [written({}), /^floor\.points\[\d\]$/, 1e-8],
  'soundings, partly dry': [written({ levelM: -1.3 }), /^floor\.points\[\d\]$/, 1e-8],
  'soundings that give the shore its depth': [
    written({ floor: sounded(null), islands: [box(4.2, 1, 5, 1.6)] }),
    /^floor\.points\[\d\]$/,
    1e-8,
  ],
  'soundings under a shelf': [
    written({ features: [{ kind: 'shelf', path: circle(3, 2, 1.4), depthM: 1.1 }], levelM: 0.1 }),
    /^floor\.points\[\d\]$/,
    1e-8,
  ],
  'soundings and a batter': [written({ wall: { kind: 'battered', run: 0.8 } }), /^floor\.points\[\d\]$/, 1e-5],
  'soundings within curved shores': [written({ outline: BEAN, floor: sounded(null) }), /^floor\.points\[\d\]$/, 1e-5],
  'a contour of arcs': [written({ floor: ROUND_RINGS }), /^floor\.rings\[0\]\.path\.(start|.*to)$/, 1e-3],
  'a contour of cubics and arcs': [
    written({ floor: ROUND_RINGS }),
    /^floor\.rings\[1\]\.path\.(start|.*(to|c.))$/,
    1e-3,
  ],
}

describe('derivatives of the volume by where soundings stand and by what contours are drawn with', () => {
  for (const [name, [of, at, near]] of Object.entries(CASES))
    it(`are what small moves do to it: ${name}`, () => {
      const worst = worstOf(of, 1e-5, at)
      expect([...listOf(of).keys()].some((path) => at.test(path))).toBe(true)
      expect(worst.off, worst.path).toBeLessThan(near)
    })

  it('know that a pyramid keeps its volume where its top stands elsewhere, wet all over or not', () => {
    const alone = (levelM: number) => listOf(written({ floor: sounded(0.6, [[2.9, 1.1, 1.8]]), levelM }))
    const of = alone(0).get('floor.points[0]') as Point
    expect(Math.hypot(...of)).toBeLessThan(1e-12)
    const partlyDry = alone(-0.9).get('floor.points[0]') as Point
    expect(Math.hypot(...partlyDry)).toBeLessThan(1e-12)
  })

  it('let soundings at one place share what moving both does', () => {
    const one = listOf(written({})).get('floor.points[1]') as Point
    const twice = listOf(written({ floor: sounded(0.8, [...POINTS, POINTS[1]!]) }))
    for (const path of ['floor.points[1]', 'floor.points[5]']) {
      const [x, y] = twice.get(path) as Point
      expect(2 * x).toBeCloseTo(one[0], 9)
      expect(2 * y).toBeCloseTo(one[1], 9)
    }
  })

  it('slide a sounding on the shore along it, and hold it there against moves over land', () => {
    const at = (x: number, y: number): Written =>
      written({ outline: box(0, 0, 8, 4), floor: sounded(0.8, [[x, y, 1.4], ...POINTS]) })
    const [x, y] = listOf(at(1.9, 0)).get('floor.points[0]') as Point
    expect(y).toBeCloseTo(0, 12)
    expect(x).toBeCloseTo((volumeOf(at(1.9 + 1e-5, 0)) - volumeOf(at(1.9 - 1e-5, 0))) / 2e-5, 6)
    expect(Math.abs(x)).toBeGreaterThan(0.05)
    expect(volumeOf(at(1.9, -1e-5))).toBe(volumeOf(at(1.9, 0)))
  })

  it('leave a sounding where it is when the side that it lies on is drawn out, and take it along toward the water', () => {
    const at = (dx: number, dy: number): Written =>
      written({
        outline: polygon([dx, dy], [8, 0], [8, 4], [0, 4]),
        floor: sounded(0.8, [[1.9, 0, 1.4], ...POINTS]),
      })
    const [x, y] = listOf(at(0, 0)).get('outline.start') as Point
    expect(x).toBeCloseTo((volumeOf(at(1e-5, 0)) - volumeOf(at(-1e-5, 0))) / 2e-5, 6)
    const forward = (h: number): number => (volumeOf(at(0, h)) - volumeOf(at(0, 0))) / h
    expect(y).toBeCloseTo(2 * forward(1e-5) - forward(2e-5), 6)
  })

  it('hold a sounding in a corner of the pool, and list none at one that juts into the water', () => {
    const L = polygon([0, 0], [8, 0], [8, 4], [4, 4], [4, 2], [0, 2])
    const of = (x: number, y: number) =>
      listOf(
        written({
          outline: L,
          floor: sounded(0.8, [
            [x, y, 1.4],
            [6, 2.1, 1.9],
          ]),
        }),
      )
    expect(of(0, 0).get('floor.points[0]')).toEqual([0, 0])
    expect(of(4, 4).get('floor.points[0]')).toEqual([0, 0])
    expect(of(4, 2).has('floor.points[0]')).toBe(false)
    expect(of(4, 2).has('floor.points[1]')).toBe(true)
  })
})
