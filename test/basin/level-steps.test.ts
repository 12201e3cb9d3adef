import { expect, it, vi } from 'vitest'
import { levelForVolume, measure } from '../../src/basin/index.ts'
import { volumeAtLevel } from '../../src/basin/measure.ts'
import { divided, polygon, shape } from './shapes.ts'

vi.mock('../../src/basin/measure.ts', async (original) => {
  const actual = await original<typeof import('../../src/basin/measure.ts')>()
  return { ...actual, volumeAtLevel: vi.fn(actual.volumeAtLevel) }
})

// Where rounding is all that is left, halving towards one number among its neighbours would take some fifty looks more.
it('finds the level for a volume in few looks at the basin', () => {
  const p = divided(
    shape(polygon([0, 0], [7.3, 0.4], [6.1, 4.2], [0.3, 3.9]), {
      floor: {
        kind: 'profile',
        axis: { from: [0, 0], to: [8, 1] },
        stations: [
          [0, 0.7],
          [3, 1.1],
          [7, 2.3],
        ],
      },
      wall: { kind: 'cove', radiusM: 0.6 },
    }),
  )
  const whole = measure(p, 0).volumeM3
  const looks = vi.mocked(volumeAtLevel)
  for (let i = 1; i <= 60; i++) {
    looks.mockClear()
    expect(levelForVolume(p, (whole * i * i) / 3600).ok).toBe(true)
    expect(looks.mock.calls.length, `${i}² of 3,600 parts`).toBeLessThan(16)
  }
})
