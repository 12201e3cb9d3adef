import { describe, expect, it } from 'vitest'
import { coveLean, coveRise } from '../../src/basin/cove-profile.ts'

describe('the profile of a cove', () => {
  // A rule over a hollow may lay a point there, and a lean without end would make the wetted floor endless.
  it('leans by √(r/2n) at the wall, however near, and is upright only at it', () => {
    const r = 0.35
    for (const n of [1e-9, 1e-15, 1e-20, 1e-100, 1e-290])
      expect(coveLean(n, r) / Math.sqrt(r / (2 * n))).toBeCloseTo(1, 8)
    expect(coveLean(0, r)).toBe(Infinity)
  })

  it('leans as much as its rise falls', () => {
    const r = 0.35
    const step = 1e-5
    for (const n of [0.02, 0.1, 0.2, 0.34])
      expect(coveLean(n, r)).toBeCloseTo((coveRise(n - step, r) - coveRise(n + step, r)) / (2 * step), 5)
  })
})
