import { describe, expect, it } from 'vitest'
import { leastBetween } from '../../src/base/index.ts'

describe('the least of a function between two places', () => {
  it('is found to the tolerance at a kink, whose sides are steep and slow', () => {
    for (const at of [0.1, 1 / 3, 0.7213, 0.95]) {
      const { x, value } = leastBetween((t) => (t < at ? 5 * (at - t) : (t - at) / 7), 0, 1, 1e-10)
      expect(Math.abs(x - at)).toBeLessThan(3e-10)
      expect(value).toBeLessThan(15e-10)
    }
  })

  it('is found to the root of rounding where it is smooth, in few looks', () => {
    let looks = 0
    const { x, value } = leastBetween(
      (t) => {
        looks++
        return Math.cosh(t - 0.3)
      },
      -1,
      2,
      1e-10,
    )
    expect(Math.abs(x - 0.3)).toBeLessThan(1e-7)
    expect(value).toBeCloseTo(1, 14)
    // A golden section takes log(3e10)/log(1.618) = 50.
    expect(looks).toBeLessThan(45)
  })

  it('lies at an end where the function goes one way, within the tolerance', () => {
    expect(leastBetween((t) => t, 2, 5, 1e-9).x - 2).toBeLessThan(3e-9)
    expect(5 - leastBetween((t) => -t, 2, 5, 1e-9).x).toBeLessThan(3e-9)
  })

  it('comes with its value, which is the least of all that were looked at', () => {
    let lowest = Infinity
    const f = (t: number): number => {
      const value = Math.sin(11 * t) + 0.3 * t
      lowest = Math.min(lowest, value)
      return value
    }
    const { x, value } = leastBetween(f, 0, 2, 1e-9)
    expect(value).toBe(lowest)
    expect(f(x)).toBe(value)
  })
})
