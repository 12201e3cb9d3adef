import { describe, expect, it } from 'vitest'
import { measure, type Path, STARTING_OUTLINES } from '../../src/basin/index.ts'
import { box, divided, relative, shape } from './shapes.ts'

const FOOT_M = 0.3048
// 231 cubic inches, exactly: NIST Handbook 44, appendix C.
const US_GALLON_M3 = 231 * 0.0254 ** 3
const CUBIC_FOOT_GAL = FOOT_M ** 3 / US_GALLON_M3

function outline(id: string, params: Record<string, number>): Path {
  const made = STARTING_OUTLINES.get(id)?.make(params)
  if (!made?.ok) throw new Error(id)
  return made.value
}

/** Gallons in each cubic foot of the box round an outline. */
function multiplier(id: string, lengthM: number, widthM: number, params: Record<string, number>): number {
  const m = measure(divided(shape(outline(id, params))), 0)
  return (m.volumeM3 / (lengthM * widthM * 1.5)) * CUBIC_FOOT_GAL
}

describe('handbook figures', () => {
  it('gives 13,464.9 US gal for 15 × 30 ft sloping from 3 to 5 ft, which Kern County Public Health prints as 13,500 with 7.5 gal/ft³', () => {
    // Source: Kern County Public Health, "Pool sizing and formulas" (450 ft² × 4 ft × 7.5).
    const p = divided(
      shape(box(0, 0, 30 * FOOT_M, 15 * FOOT_M), {
        floor: {
          kind: 'profile',
          axis: { from: [0, 0], to: [30 * FOOT_M, 0] },
          stations: [
            [0, 3 * FOOT_M],
            [30 * FOOT_M, 5 * FOOT_M],
          ],
        },
      }),
    )
    const gallons = measure(p, 0).volumeM3 / US_GALLON_M3
    expect(Math.abs(gallons - 13464.935)).toBeLessThan(5e-3)
    expect(relative((gallons * 7.5) / CUBIC_FOOT_GAL, 13500)).toBeLessThan(1e-12)
  })

  it('gives the circle’s multiplier of 5.875 gal/ft³ (π/4 × 7.4805; common practice rounds to 5.9)', () => {
    expect(multiplier('circle', 5, 5, { diameterM: 5 })).toBeCloseTo(5.8752, 4)
  })

  it('gives the ellipse the same multiplier as the circle', () => {
    expect(multiplier('ellipse', 8, 5, { lengthM: 8, widthM: 5 })).toBeCloseTo((Math.PI / 4) * CUBIC_FOOT_GAL, 12)
  })

  it('gives a stadium twice as long as wide 6.678 gal/ft³ (½ + π/8 of its box; common practice rounds to 6.7)', () => {
    expect(multiplier('stadium', 8, 4, { lengthM: 8, widthM: 4 })).toBeCloseTo((0.5 + Math.PI / 8) * CUBIC_FOOT_GAL, 12)
    expect(multiplier('stadium', 8, 4, { lengthM: 8, widthM: 4 })).toBeCloseTo(6.678, 3)
  })

  it('adds trapezoids along the length for a stepped profile', () => {
    // V = w Σ aᵢ (dᵢ + dᵢ₊₁)/2. Source: Doctor Math 2002, drmath/view/55438.
    const stations: [number, number][] = [
      [0, 0.9],
      [3, 1.1],
      [5, 2.4],
      [8, 2.4],
    ]
    const p = divided(
      shape(box(0, 0, 8, 4), { floor: { kind: 'profile', axis: { from: [0, 1], to: [8, 1] }, stations } }),
    )
    let sum = 0
    for (let i = 1; i < stations.length; i++)
      sum += ((stations[i]![0] - stations[i - 1]![0]) * (stations[i]![1] + stations[i - 1]![1])) / 2
    expect(relative(measure(p, 0).volumeM3, 4 * sum)).toBeLessThan(1e-14)
  })
})
