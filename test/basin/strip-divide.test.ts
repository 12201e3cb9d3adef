import { describe, expect, it } from 'vitest'
import { measure, type Path } from '../../src/basin/index.ts'
import { stripOf } from '../../src/basin/strip.ts'
import { circle, divided, shape } from './shapes.ts'

/** A box of 6 × 4 m with round corners, written in so many decimals that the joints are smooth but for rounding. */
function roundedBox(radiusM: number, decimals: number): Path {
  const r = Number(radiusM.toFixed(decimals))
  const bulge = Number((Math.SQRT2 - 1).toFixed(decimals))
  return {
    start: [r, 0],
    segments: [
      { to: [6 - r, 0] },
      { to: [6, r], bulge },
      { to: [6, 4 - r] },
      { to: [6 - r, 4], bulge },
      { to: [r, 4] },
      { to: [0, 4 - r], bulge },
      { to: [0, r] },
      { to: [r, 0], bulge },
    ],
  }
}

describe('rays that a bend and the wall beside it end at one distance but for rounding', () => {
  it.each([6, 8])(
    'are cut no more often than counted, and what is left open is next to nothing: %i decimals',
    (decimals) => {
      const pool = (places: number) =>
        divided(
          shape(roundedBox(0.7, places), {
            wall: { kind: 'battered', run: 2 },
            features: [{ kind: 'shelf', path: circle(3, 2, 1.9), depthM: 0.5 }],
          }),
        )
      const p = pool(decimals)
      const { pieces, strayM2 } = stripOf(p)
      expect(pieces.length).toBeLessThan(300)
      expect(strayM2).toBeGreaterThan(0)
      expect(strayM2).toBeLessThan(1e-12)
      const rough = measure(p, 0)
      const smooth = measure(pool(15), 0)
      // A corner that is off by half of the last decimal.
      expect(Math.abs(rough.volumeM3 - smooth.volumeM3)).toBeLessThan(8 * 10 ** -decimals)
    },
  )
})
