import { describe, expect, it } from 'vitest'
import { type BasinShape, measure, type Wall } from '../../src/basin/index.ts'
import type { Partition } from '../../src/basin/partition-types.ts'
import { stripOf } from '../../src/basin/strip.ts'
import { newStripRay, rayIn } from '../../src/basin/strip-ray.ts'
import { runsOf } from '../../src/basin/strip-runs.ts'
import type { StripPiece } from '../../src/basin/strip-types.ts'
import { BEAN, box, circle, DEMO, divided, relative, shape } from './shapes.ts'

const hopper = (wall: Wall, features: Parameters<typeof shape>[1] = {}): BasinShape =>
  shape(circle(0, 0, 4), {
    wall,
    floor: {
      kind: 'contours',
      edgeDepthM: 1,
      rings: [
        { depthM: 1.4, path: circle(0.4, 0.2, 2.6) },
        { depthM: 2.2, path: circle(0.7, 0.1, 1.1) },
      ],
    },
    ...features,
  })

const POOLS: Record<string, BasinShape> = {
  'a round hopper': hopper({ kind: 'cove', radiusM: 1.9 }),
  'a round hopper with an island and a shelf': hopper(
    { kind: 'battered', run: 1.4 },
    {
      islands: [circle(-1.5, 0.4, 0.5)],
      features: [{ kind: 'shelf', path: box(-1, -5, 1, -2), depthM: 0.5 }],
    },
  ),
  'soundings in a bean': shape(BEAN, {
    wall: { kind: 'cove', radiusM: 1.2 },
    floor: {
      kind: 'soundings',
      edgeDepthM: 1.1,
      points: [
        [2, 2, 1.8],
        [4, 2.4, 2.1],
        [6, 2, 1.4],
      ],
    },
  }),
}

const ray = newStripRay()

/** The stretches over water of all pieces that have a ray at t of a fan: cell, begin and end. */
function stretchesAt(p: Partition, pieces: readonly StripPiece[], t: number): number[][] {
  const found: number[][] = []
  for (const piece of pieces) {
    if (!(t > piece.t0 && t < piece.t1)) continue
    rayIn(p, piece, t, ray)
    piece.cells.forEach((cell, i) => {
      if (cell >= 0) found.push([cell, i === 0 ? 0 : ray.at[i - 1]!, ray.at[i] ?? ray.end])
    })
  }
  return found.sort((a, b) => a[1]! - b[1]!)
}

describe('the strip, each cell for itself', () => {
  for (const [name, one] of Object.entries(POOLS)) {
    const p = divided(one)
    const { pieces } = stripOf(p)
    const runs = runsOf(p)

    it(`${name}: has on each ray the very stretches of its piece`, () => {
      let looked = 0
      for (const piece of pieces) {
        const t = piece.t0 + 0.37 * (piece.t1 - piece.t0)
        const ofFan = (list: readonly StripPiece[]) => list.filter(({ fan }) => fan === piece.fan)
        const whole = stretchesAt(p, ofFan(pieces), t)
        const apart = stretchesAt(p, ofFan(runs), t)
        expect(apart.map(([cell]) => cell)).toEqual(whole.map(([cell]) => cell))
        apart.forEach((stretch, i) => {
          for (const k of [1, 2]) expect(Math.abs(stretch[k]! - whole[i]![k]!)).toBeLessThan(1e-12)
        })
        looked += whole.length
      }
      expect(looked).toBeGreaterThan(pieces.length)
    })

    it(`${name}: has fewer of them than its pieces have cells`, () => {
      const cells = pieces.reduce((sum, each) => sum + each.cells.length, 0)
      expect(runs.some(({ isRun }) => isRun)).toBe(true)
      expect(runs.length).toBeLessThan(cells / 1.5)
    })
  }

  it('leaves rays whole that cross few edges', () => {
    const p = divided({ ...DEMO, wall: { kind: 'cove', radiusM: 0.3 } })
    expect(runsOf(p)).toEqual(stripOf(p).pieces)
  })

  it('grows no faster than the number of triangles, as pieces do', () => {
    const count = (n: number): number[] => {
      const points = Array.from({ length: n }, (_, k): [number, number, number] => [
        8 * ((0.5 + k * 0.6180339887) % 1),
        (5 * (k + 0.5)) / n,
        1.5 + 0.3 * Math.sin(7 * k),
      ])
      const p = divided(
        shape(box(0, 0, 8, 5), {
          wall: { kind: 'cove', radiusM: 2 },
          floor: { kind: 'soundings', edgeDepthM: 1.2, points },
        }),
      )
      const cells = stripOf(p).pieces.reduce((sum, each) => sum + each.cells.length, 0)
      return [p.cells.length, cells, runsOf(p).length]
    }
    const [few, many] = [count(50), count(200)]
    const growth = (k: number): number => many[k]! / few[k]!
    expect(growth(1)).toBeGreaterThan(1.1 * growth(0))
    expect(growth(2)).toBeLessThan(growth(0))
  })

  // A cove of revolution over a cone's frustum, as test/basin/dish-wall.test.ts takes it, is what the sum must come to; here the
  // same water at two levels that leave runs partly dry, against the level in between by Simpson's rule on V′ = A.
  it('sums to volumes whose growth is the surface', () => {
    for (const wall of [{ kind: 'cove', radiusM: 1.9 } as const, { kind: 'battered', run: 1.4 } as const]) {
      const p = divided(hopper(wall))
      const at = (level: number) => measure(p, level)
      const [low, high] = [-0.31, -0.3]
      const simpson =
        ((high - low) / 6) *
        (at(low).waterSurfaceM2 + 4 * at((low + high) / 2).waterSurfaceM2 + at(high).waterSurfaceM2)
      expect(relative(at(high).volumeM3 - at(low).volumeM3, simpson)).toBeLessThan(1e-7)
    }
  })
})
