import { describe, expect, it } from 'vitest'
import { measure, type Path, type Segment, STARTING_OUTLINES } from '../../src/basin/index.ts'
import file from '../golden/basin/literature.json'
import { box, divided, relative, shape } from './shapes.ts'

const FOOT_M = 0.3048
// 231 cubic inches, exactly: NIST Handbook 44, appendix C.
const US_GALLON_M3 = 231 * 0.0254 ** 3
const CUBIC_FOOT_GAL = FOOT_M ** 3 / US_GALLON_M3

interface Literature {
  readonly id: string
  readonly input: {
    readonly pyramids?: readonly { readonly heightM: number; readonly widthM: number; readonly lengthM: number }[]
    readonly spacingM?: number
    readonly offsetsM?: readonly number[]
  }
  readonly published: {
    readonly volumeM3?: readonly number[]
    readonly simpsonM2?: number
    readonly trapezoidM2?: number
  } | null
  readonly recomputed?: { readonly trapezoidM2?: number }
}

function literature(id: string): Literature {
  const found = (file.cases as readonly Literature[]).find((row) => row.id === id)
  if (!found) throw new Error(id)
  return found
}

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

  it('gives the prismoids that a published program of the prismoidal formula gives: pyramids of 160 and 241.359', () => {
    // Source: test/golden/basin/literature.json, LIT-PYRAMID. A pyramid upside down: a shore at depth 0, one sounding in the middle.
    const { input, published } = literature('LIT-PYRAMID')
    input.pyramids!.forEach(({ heightM, widthM, lengthM }, i) => {
      const p = divided(
        shape(box(0, 0, lengthM, widthM), {
          floor: { kind: 'soundings', edgeDepthM: 0, points: [[lengthM / 2, widthM / 2, heightM]] },
        }),
      )
      // The source prints six digits.
      expect(Math.abs(measure(p, 0).volumeM3 - published!.volumeM3![i]!)).toBeLessThan(5e-4)
      expect(relative(measure(p, 0).volumeM3, (heightM * widthM * lengthM) / 3)).toBeLessThan(1e-13)
    })
  })

  it('gives a frustum by (A₁ + 4 Aₘ + A₂) h/6: a hopper of 8 × 4 to 4 × 2 over 1.5 m', () => {
    // The prismoidal formula, exact for any prismatoid (from memory; LIT-PYRAMID uses it).
    const p = divided(
      shape(box(0, 0, 8, 4), {
        floor: { kind: 'contours', edgeDepthM: 0, rings: [{ depthM: 1.5, path: box(2, 1, 6, 3) }] },
      }),
    )
    expect(relative(measure(p, 0).volumeM3, ((32 + 4 * 6 * 3 + 8) * 1.5) / 6)).toBeLessThan(1e-13)
  })

  it.each(['LIT-SIMPSON-7', 'LIT-EVEN-OFFSETS', 'LIT-KERB-FENCE'])(
    'gives the trapezoidal area from offsets, as an outline through their ends: %s',
    (id) => {
      // Source: test/golden/basin/literature.json. The offsets stand on a straight line, their ends joined by lines.
      const { input, published, recomputed } = literature(id)
      const offsets = input.offsetsM!
      const spacing = input.spacingM!
      const ends = offsets.map((offset, i) => [i * spacing, offset] as const).filter(([, y]) => y > 0)
      const along = [(offsets.length - 1) * spacing, 0] as const
      const outline: Path = { start: [0, 0], segments: [along, ...ends.reverse()].map((to) => ({ to })) }
      const truth = published?.trapezoidM2 ?? recomputed!.trapezoidM2!
      expect(relative(measure(divided(shape(outline)), 0).waterSurfaceM2, truth)).toBeLessThan(1e-12)
    },
  )

  it('gives the area by Simpson’s rule, 843.33 m² as printed, as an outline of parabolas through three offsets each', () => {
    // Simpson's rule is the area under parabolas; a parabola is a cubic whose handles lie ⅔ toward its middle control point.
    const { input, published } = literature('LIT-SIMPSON-7')
    const h = input.spacingM!
    const y = input.offsetsM!
    const segments: Segment[] = [{ to: [6 * h, 0] }, { to: [6 * h, y[6]!] }]
    for (let i = 6; i > 0; i -= 2) {
      // The middle control point of the parabola through the offsets i, i − 1, i − 2.
      const middle = 2 * y[i - 1]! - (y[i]! + y[i - 2]!) / 2
      segments.push({
        to: [(i - 2) * h, y[i - 2]!],
        c1: [i * h - (2 / 3) * h, y[i]! + (2 / 3) * (middle - y[i]!)],
        c2: [(i - 2) * h + (2 / 3) * h, y[i - 2]! + (2 / 3) * (middle - y[i - 2]!)],
      })
    }
    const { waterSurfaceM2 } = measure(divided(shape({ start: [0, 0], segments })), 0)
    expect(Math.abs(waterSurfaceM2 - published!.simpsonM2!)).toBeLessThan(5e-3)
  })
})
