import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measure, type Path, partition } from '../../src/basin/index.ts'
import type { Feature } from '../../src/features/index.ts'
import { shape } from './shapes.ts'
import { draft, featuresOf } from './touching-features.ts'

const SEED = 20261128

function volumeOf(outline: Path, features: readonly Feature[]): number {
  const result = partition(
    shape(outline, {
      floor: {
        kind: 'profile',
        axis: { from: [-1, 0], to: [9, 1] },
        stations: [
          [0, 1],
          [10, 2],
        ],
      },
      features,
    }),
  )
  if (!result.ok) throw new Error(JSON.stringify(result.problem))
  return measure(result.value, 0).volumeM3
}

describe('an edge of a feature that only touches a curved wall', () => {
  it('divides the plan, and holds as much as one a micrometre off', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(draft, (d) => {
        const here = volumeOf(d.outline, featuresOf(d, 0))
        // No edge is longer than 10 m, no step higher than 2 m.
        for (const moved of [-1e-6, 1e-6, 1e-9, -3e-10])
          expect(Math.abs(volumeOf(d.outline, featuresOf(d, moved)) - here)).toBeLessThan(60 * Math.abs(moved) + 2e-8)
      }),
      { numRuns: 1000, seed: SEED },
    )
  })
})
