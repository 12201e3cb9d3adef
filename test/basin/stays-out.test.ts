import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { evaluate, newJet } from '../../src/basin/curve.ts'
import { shoresOf, staysOut } from '../../src/basin/shores.ts'
import { divided, shape } from './shapes.ts'

const LOOKS = 400

/** Least distance from a place to a stretch, by looking at it all along [m]. */
function distanceTo(one: ReturnType<typeof shoresOf>[number], x: number, y: number): number {
  const jet = newJet()
  let least = Infinity
  for (let i = 0; i <= LOOKS; i++) {
    evaluate(one.curve, one.t0 + ((one.t1 - one.t0) * i) / LOOKS, jet)
    least = Math.min(least, Math.hypot(jet.x - x, jet.y - y))
  }
  return least
}

describe('a stretch that stays out of a circle', () => {
  const place = fc.double({ min: -3, max: 3, noNaN: true })
  // Far from the origin places are rounded to a nanometre.
  const away = fc.constantFrom(0, 4_000_000)

  it('comes nowhere nearer than its radius, and is told from one that does', () => {
    let told = 0
    let clear = 0
    fc.assert(
      fc.property(fc.tuple(place, place, place, place), place, place, away, ([a, b, c, d], x, y, far) => {
        const outline = {
          start: [far, far] as const,
          segments: [
            {
              to: [far + 4, far] as const,
              c1: [far + 1 + a / 4, far - 1 + b / 4] as const,
              c2: [far + 3 + c / 4, far - 1 + d / 4] as const,
            },
            { to: [far + 2, far + 5] as const },
          ],
        }
        const shores = shoresOf(divided(shape(outline)))
        for (const one of shores) {
          if (one.curve.kind !== 'cubic') {
            expect(staysOut(one, far, far, 1e-3)).toBe(false)
            continue
          }
          const distanceM = distanceTo(one, far + x, far + y)
          for (const share of [0.2, 0.9, 0.999, 1.000001, 1.1, 3]) {
            const isOut = staysOut(one, far + x, far + y, share * distanceM)
            // The looks lie apart: what they say may be too much, by little.
            if (isOut) expect(share).toBeLessThan(1.0001)
            if (share > 0.9) continue
            clear++
            if (isOut) told++
          }
        }
      }),
      { seed: 20261129, numRuns: 300 },
    )
    expect(told).toBeGreaterThan(0.5 * clear)
  })

  it('on a round shore, where all are as near as each other, is told from a thousandth on', () => {
    const count = 32
    const k = (4 / 3) * Math.tan(Math.PI / 2 / count)
    const on = (i: number, handle: number) => {
      const angle = (2 * Math.PI * i) / count
      const [x, y] = [Math.cos(angle), Math.sin(angle)]
      return [x - handle * y, y + handle * x] as const
    }
    const segments = Array.from({ length: count }, (_, i) => ({ to: on(i + 1, 0), c1: on(i, k), c2: on(i + 1, -k) }))
    const round = { start: on(0, 0), segments: segments.map((s, i) => (i === count - 1 ? { ...s, to: on(0, 0) } : s)) }
    const shores = shoresOf(divided(shape(round)))
    expect(shores).toHaveLength(count)
    for (const one of shores) {
      expect(staysOut(one, 0, 0, 0.999)).toBe(true)
      expect(staysOut(one, 0, 0, 1.0001)).toBe(false)
    }
  })
})
