import { describe, expect, it } from 'vitest'
import { type BasinShape, levelBreaks, measure, meshOf, type Path, type Point } from '../../src/basin/index.ts'
import { divided, polygon, shape } from './shapes.ts'

type Turn = (place: Point) => Point

const turn =
  (angle: number): Turn =>
  ([x, y]) => [Math.cos(angle) * x - Math.sin(angle) * y, Math.sin(angle) * x + Math.cos(angle) * y]

/** Two straight sides and two half circles, deeper to the right, under walls that meet far above the floor. */
function stadium(at: Turn): BasinShape {
  const outline: Path = {
    start: at([1.7, 0]),
    segments: [
      { to: at([6.9, 0]) },
      { to: at([6.9, 3.4]), bulge: 1 },
      { to: at([1.7, 3.4]) },
      { to: at([1.7, 0]), bulge: 1 },
    ],
  }
  return shape(outline, {
    wall: { kind: 'battered', run: 1.59 },
    floor: {
      kind: 'profile',
      axis: { from: at([0, 1.7]), to: at([8.6, 1.7]) },
      stations: [
        [0, 1],
        [8.6, 2.4],
      ],
    },
  })
}

/** An L whose outer corner is round, and whose floor lies below all that the walls allow. */
function ell(at: Turn): BasinShape {
  const outline: Path = {
    start: at([0, 0]),
    segments: [
      { to: at([9, 0]) },
      { to: at([9, 4.2]) },
      { to: at([4.4, 4.2]) },
      { to: at([4.4, 7]) },
      { to: at([2, 7]) },
      { to: at([0, 5]), bulge: Math.tan(Math.PI / 8) },
    ],
  }
  return shape(outline, { wall: { kind: 'battered', run: 1.97 }, floor: { kind: 'flat', depthM: 1.35 } })
}

describe('a pool that is turned', () => {
  // Beside a smooth joint rounding hides what ends a ray, and a ray that nothing ended would see the bare floor.
  it.each([
    ['a stadium', stadium],
    ['an L with a round corner', ell],
  ] as const)('is as deep as it was, in figures, picture and levels: %s', (_, made) => {
    const still = measure(divided(made(turn(0))), 0)
    for (let k = 1; k < 24; k++) {
      const p = divided(made(turn(k * 0.263)))
      const now = measure(p, 0)
      expect(Math.abs(now.maxDepthM - still.maxDepthM)).toBeLessThan(1e-7)
      expect(Math.abs(now.volumeM3 - still.volumeM3)).toBeLessThan(now.errors.arithmeticM3 + still.errors.arithmeticM3)
      const mesh = meshOf(p)
      if (!mesh.ok) throw new Error(mesh.problem.code)
      let lowest = 0
      for (let i = 2; i < mesh.value.positions.length; i += 3) lowest = Math.min(lowest, mesh.value.positions[i]!)
      expect(-lowest).toBeLessThan(still.maxDepthM + 1e-5)
      expect(
        Math.min(
          ...levelBreaks(p)
            .map((level) => level + still.maxDepthM)
            .map(Math.abs),
        ),
      ).toBeLessThan(1e-6)
    }
  })

  // A mound beside an island: the rays from its corner ended by rounding at its own other side saw the rim's steepest place.
  it('keeps the wetted floor and the greatest depth over a mound', () => {
    const made = (at: Turn) => {
      const island: Point[] = [
        [2.5, 2.5],
        [2.5, 3.5],
        [3.5, 3],
        [3, 2.5],
      ]
      const corners: Point[] = [
        [0, 0],
        [12, 0],
        [12, 6],
        [0, 6],
      ]
      return shape(polygon(...corners.map(at)), {
        islands: [polygon(...island.map(at))],
        wall: { kind: 'battered', run: 1.75 },
        floor: { kind: 'dish', form: 'cap', centre: at([3, 3]), radiusM: 2.5, edgeDepthM: 1.5, depthM: 0.1 },
      })
    }
    const still = measure(divided(made(turn(0))), 0.03)
    for (let k = 1; k < 24; k++) {
      const now = measure(divided(made(turn(k * 0.37))), 0.03)
      expect(Math.abs(now.maxDepthM - still.maxDepthM)).toBeLessThan(1e-6)
      expect(Math.abs(now.wetted.totalM2 - still.wetted.totalM2)).toBeLessThan(1e-5)
    }
  })

  // Where the wall stands above the level, the shore on the floor is lost up to the very place that both meet at.
  it('keeps its perimeter where shores lie on the wall and on the floor', () => {
    const corners: Point[] = [
      [9.554, 1.871],
      [7.235, 4.025],
      [1.077, 3.518],
      [2.249, 0.716],
      [6.489, 0.286],
    ]
    const made = (at: Turn) =>
      shape(polygon(...corners.map(at)), {
        wall: { kind: 'battered', run: 0.982 },
        floor: {
          kind: 'dish',
          form: 'cap',
          centre: at([4.206, 1.99]),
          radiusM: 2.76,
          edgeDepthM: 1.496,
          depthM: 0.301,
        },
      })
    const still = measure(divided(made(turn(0))), -0.83)
    for (let k = 1; k < 12; k++)
      expect(Math.abs(measure(divided(made(turn(k * 0.37))), -0.83).perimeterM - still.perimeterM)).toBeLessThan(1e-6)
  })

  // The deepest place of a ray is where the wall meets the floor: the difference of both there is rounding of either sign.
  it.each([
    [-0.5, -0.83],
    [-1, -0.6],
    [-1, -0.83],
  ])(
    'keeps its perimeter where a shore passes from the floor to the wall: %f m across, level %f m',
    (across, levelM) => {
      const corners: Point[] = [
        [0, 0],
        [9, 0],
        [9, 4.5],
        [0, 4.5],
      ]
      const made = (at: Turn) =>
        shape(polygon(...corners.map(at)), {
          wall: { kind: 'battered', run: 0.4 },
          floor: {
            kind: 'profile',
            axis: { from: at([0, 2]), to: at([9, 2 + across]) },
            stations: [
              [0, 0.2],
              [4, 1.5],
              [9, 2.1],
            ],
          },
        })
      const still = measure(divided(made(turn(0))), levelM)
      for (let k = 1; k < 24; k++) {
        const now = measure(divided(made(turn(k * 0.263))), levelM)
        expect(Math.abs(now.perimeterM - still.perimeterM)).toBeLessThan(1e-8)
        expect(Math.abs(now.waterSurfaceM2 - still.waterSurfaceM2)).toBeLessThan(1e-10)
      }
    },
  )

  // Along the rim of round steps the wall comes down to the tread below for a short way, between two points of a rule.
  it('keeps the faces of its steps', () => {
    const corners: Point[] = [
      [0, 0],
      [10, 0],
      [10, 6],
      [0, 6],
    ]
    const island: Point[] = [
      [4.2, 2.1],
      [5, 2.4],
      [4.4, 3],
    ]
    const treads: [number, number][] = [
      [1.14, 0.3],
      [1.9, 0.6],
    ]
    const made = (at: Turn) =>
      shape(polygon(...corners.map(at)), {
        islands: [polygon(...island.map(at))],
        floor: { kind: 'flat', depthM: 1.7 },
        wall: { kind: 'cove', radiusM: 2.5 },
        features: [{ kind: 'roundSteps', centre: at([3, 1.1]), treads }],
      })
    const still = measure(divided(made(turn(0))), 0).wetted.riserM2
    for (let k = 1; k < 12; k++)
      expect(Math.abs(measure(divided(made(turn(k * 0.37))), 0).wetted.riserM2 - still)).toBeLessThan(1e-8)
  })

  // Four soundings on one circle may be joined either way: where both diagonals join the same two depths, too.
  it('keeps the floor of soundings on a grid', () => {
    const corners: Point[] = [
      [0, 0],
      [14.5, 0],
      [14.5, 3.5],
      [8.5, 3.5],
      [8.5, 6.5],
      [0, 6.5],
    ]
    const soundings: readonly (readonly [number, number, number])[] = [
      [14, 3, 2.2],
      [9, 0.5, 1],
      [2, 6, 1.8],
      [11.5, 2.5, 1.1],
      [14, 0.5, 0.7],
      [6, 4.5, 2.2],
      [8, 3.5, 0.6],
      [5, 1, 1.3],
      [1, 5, 1.3],
      [6.5, 2.5, 0],
      [7.5, 1, 1.6],
    ]
    const island: Point[] = [
      [3, 3],
      [3, 3.5],
      [4, 3.5],
      [3.5, 3],
    ]
    const made = (at: Turn) =>
      shape(polygon(...corners.map(at)), {
        islands: [polygon(...island.map(at))],
        floor: {
          kind: 'soundings',
          edgeDepthM: null,
          points: soundings.map(([x, y, z]): [number, number, number] => [...at([x, y]), z]),
        },
      })
    const still = measure(divided(made(turn(0))), 0).volumeM3
    for (let k = 1; k < 16; k++)
      expect(Math.abs(measure(divided(made(turn(k * 0.37))), 0).volumeM3 - still)).toBeLessThan(1e-9)
  })
})
