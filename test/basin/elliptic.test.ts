import { describe, expect, it } from 'vitest'
import { ellipticE } from '../../src/basin/elliptic.ts'
import { gaussRule } from '../../src/basin/gauss.ts'

/** The same by Gauss's 16 points in a hundred stretches. */
function byQuadrature(theta: number, m: number): number {
  const { at, weight } = gaussRule(16)
  let sum = 0
  for (let k = 0; k < 100; k++)
    at.forEach((q, i) => {
      sum += ((weight[i]! * theta) / 100) * Math.sqrt(1 - m * Math.sin((theta * (k + q)) / 100) ** 2)
    })
  return sum
}

describe('Legendre’s incomplete elliptic integral of the second kind', () => {
  it.each([0, 0.1, 0.5, 0.9, 0.999])('is what quadrature gives for m = %d', (m) => {
    for (const theta of [0, 1e-3, 0.3, 1, 1.5, Math.PI / 2, 2, 3, 7, -1.2, -2.8])
      expect(Math.abs(ellipticE(theta, m) - byQuadrature(theta, m))).toBeLessThan(1e-11 * (1 + Math.abs(theta)))
  })

  it('is the sine for m = 1 and a quarter of an ellipse’s length in full', () => {
    expect(ellipticE(0.7, 1)).toBeCloseTo(Math.sin(0.7), 14)
    // E(1/2), to 16 digits, from memory.
    expect(ellipticE(Math.PI / 2, 0.5)).toBeCloseTo(1.350643881047675, 14)
  })
})
