import { describe, expect, it } from 'vitest'
import { cellAt } from '../../src/basin/depth-at.ts'
import { measure, type Path } from '../../src/basin/index.ts'
import { stripOf } from '../../src/basin/strip.ts'
import { newStripRay, rayIn } from '../../src/basin/strip-ray.ts'
import { divided, polygon, shape } from './shapes.ts'

const U: Path = polygon([0, 0], [1, 0], [1, 3], [2, 3], [2, 0], [3, 0], [3, 5], [0, 5])
const PLACES = [
  [1.5, 4, 1.9],
  [2, 3, 0.5],
  [0.4, 0.5, 1.2],
] as const

describe('rays about a corner that juts into the water', () => {
  // Sides of a triangulated floor leave such a corner: on both sides of one rays may meet nothing, in two cells.
  for (const [name, wall] of [
    ['cove', { kind: 'cove', radiusM: 0.15 }],
    ['batter', { kind: 'battered', run: 0.4 }],
    ['batter that takes all', { kind: 'battered', run: 5 }],
  ] as const)
    it(`lie in the cells that their piece has: ${name}`, () => {
      const p = divided(
        shape(U, {
          wall,
          floor: { kind: 'soundings', edgeDepthM: null, points: PLACES.map(([x, y, depthM]) => [x, y, depthM]) },
        }),
      )
      const ray = newStripRay()
      let looks = 0
      for (const piece of stripOf(p).pieces) {
        if (piece.fan.shore >= 0) continue
        for (const share of [0.01, 0.25, 0.5, 0.75, 0.99]) {
          rayIn(p, piece, piece.t0 + share * (piece.t1 - piece.t0), ray)
          piece.cells.forEach((cell, i) => {
            const from = i === 0 ? 0 : ray.at[i - 1]!
            const to = ray.at[i] ?? ray.end
            if (to - from < 1e-6) return
            const n = (from + to) / 2
            expect(cellAt(p, ray.x + n * ray.nx, ray.y + n * ray.ny)).toBe(cell)
            looks++
          })
        }
      }
      expect(looks).toBeGreaterThanOrEqual(20)
    })

  it('leave no water under a roof of walls', () => {
    const p = divided(
      shape(U, {
        wall: { kind: 'battered', run: 5 },
        floor: {
          kind: 'soundings',
          edgeDepthM: null,
          points: [
            [2, 2, 0.50001],
            [2, 3, 0.5],
          ],
        },
      }),
    )
    // The walls meet no more than 1.2 m from the shore.
    expect(measure(p, -0.3).volumeM3).toBeLessThan(1e-10)
  })
})
