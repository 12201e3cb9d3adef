import { describe, expect, it } from 'vitest'
import { integratePattern, type Patterned } from '../../src/basin/pattern-integral.ts'

/** 1 between two places and 0 beside them, told apart by numbers of which the first one is rounding. */
function block(from: number, to: number, roundingAt: (t: number) => number): Patterned {
  const nameAt = (t: number): number => (t < from ? 1 : t < to ? 2 : 3)
  return {
    addAt: (t, out) => {
      const name = nameAt(t)
      if (name === 2) out[0]! += 1
      return name
    },
    nameAt,
    eventsAt: (t, out) => {
      out[0] = roundingAt(t)
      out[1] = t - from
      out[2] = t - to
      return 3
    },
    scales: Float64Array.of(1),
  }
}

describe('an integral of changing patterns', () => {
  const roundings: readonly (readonly [string, (t: number) => number])[] = [
    ['none', () => 0],
    ['none or some', (t) => (Math.sin(1e7 * t) > 0 ? 1e-16 : 0)],
    ['of either sign', (t) => 1e-16 * Math.sign(Math.sin(1e7 * t))],
  ]
  it.each(roundings)(
    'is cut at both ends of one that lies between two points, beside rounding: %s',
    (_, roundingAt) => {
      for (let k = 0; k < 80; k++) {
        const from = 0.01 + 0.012 * k
        const to = from + 0.001 + 0.0002 * (k % 20)
        const sums = new Float64Array(1)
        const error = integratePattern(block(from, to, roundingAt), 0, 1, false, false, sums)
        expect(Math.abs(sums[0]! - (to - from))).toBeLessThan(1e-9)
        expect(error).toBeLessThan(1e-9)
      }
    },
  )

  it('finds a dip between two points where the caller says that there may be one', () => {
    for (let k = 0; k < 60; k++) {
      const at = 0.03 + 0.015 * k
      const half = 0.006 + 0.0003 * (k % 10)
      const over = (t: number): number => (t - at) ** 2 - half * half
      const sums = new Float64Array(1)
      const f: Patterned = {
        addAt: (t, out) => {
          const isIn = over(t) < 0
          if (isIn) out[0]! += 1
          return isIn ? 1 : 0
        },
        eventsAt: (t, out) => {
          out[0] = 1
          out[1] = over(t)
          return 2
        },
        mayDip: true,
        scales: Float64Array.of(1),
      }
      integratePattern(f, 0, 1, false, false, sums)
      expect(Math.abs(sums[0]! - 2 * half)).toBeLessThan(1e-9)
    }
  })
})
