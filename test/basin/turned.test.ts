import { describe, expect, it } from 'vitest'
import { type BasinShape, levelBreaks, measure, meshOf, type Path, type Point } from '../../src/basin/index.ts'
import { divided, shape } from './shapes.ts'

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
})
