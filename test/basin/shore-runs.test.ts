import { describe, expect, it } from 'vitest'
import type { Path, Point } from '../../src/basin/index.ts'
import { shoreRuns } from '../../src/basin/shore-runs.ts'
import { stripOf } from '../../src/basin/strip.ts'
import { divided, polygon, shape } from './shapes.ts'

/** How many stretches the busiest edge of a feature is cut into by what is nearest to it. */
function mostRuns(outline: Path, path: Path, radiusM: number): number {
  const p = divided(
    shape(outline, { wall: { kind: 'cove', radiusM }, features: [{ kind: 'shelf', path, depthM: 0.4 }] }),
  )
  const inside = p.edges.filter((edge) => edge.left >= 0 && edge.right >= 0)
  expect(inside.length).toBeGreaterThan(0)
  return Math.max(...inside.map((e) => shoreRuns(p, e.curve, e.t0, e.t1, stripOf(p).widthM).length))
}

describe('what is nearest along an edge', () => {
  // Along such a line the foot lies at the joint, and its two stretches, their ends and insides are told apart by rounding.
  it('doesn’t take turns where the edge leaves a joint of the shore square to it', () => {
    for (let i = 0; i < 60; i++) {
      const turn = (Math.PI * i) / 30
      const at = (x: number, y: number): Point => [
        x * Math.cos(turn) - y * Math.sin(turn) + 0.3,
        x * Math.sin(turn) + y * Math.cos(turn) - 0.7,
      ]
      const stadium: Path = {
        start: at(-3, -2),
        segments: [{ to: at(3, -2) }, { to: at(3, 2), bulge: 1 }, { to: at(-3, 2) }, { to: at(-3, -2), bulge: 1 }],
      }
      for (const x of [1, 4]) {
        const shelf = polygon(at(3, -2), at(x, -2), at(x, -0.5), at(3, -0.5))
        expect(mostRuns(stadium, shelf, 1.3), `turned by ${turn}`).toBeLessThan(9)
      }
    }
  })
})
