import { beforeAll, describe, expect, it } from 'vitest'
import { type BasinShape, flatten, measure } from '../../src/basin/index.ts'
import { ccw, solidWaterM3, startModeller, type Wasm } from '../support/solid-modeller.ts'
import { BEAN, box, circle, DEMO, divided, relative, shape } from './shapes.ts'

// Source: manifold-3d 3.5.4, an independent solid modeller; its polygons approximate curves, so the finer mesh must come nearer.
let wasm: Wasm

beforeAll(async () => {
  wasm = await startModeller()
})

const water = (s: BasinShape, chordM: number): number => solidWaterM3(wasm, s, chordM)

describe('an independent solid modeller', () => {
  it('converges on the volume of a freeform pool with sloped floor, shelf, steps and round steps', () => {
    const { volumeM3 } = measure(divided(DEMO), 0)
    const coarse = relative(water(DEMO, 1e-2), volumeM3)
    const middle = relative(water(DEMO, 1e-3), volumeM3)
    const fine = relative(water(DEMO, 1e-5), volumeM3)
    expect(coarse).toBeLessThan(5e-3)
    expect(middle).toBeLessThan(coarse / 4)
    expect(fine).toBeLessThan(1e-5)
  })

  it('converges on the volume of a round pool with an island and overlapping features', () => {
    const s = shape(circle(0, 0, 4), {
      islands: [circle(0.8, 0.3, 0.9)],
      floor: {
        kind: 'profile',
        axis: { from: [-4, -1], to: [4, 1] },
        stations: [
          [0, 1],
          [3, 1.2],
          [6, 2.2],
        ],
      },
      features: [
        { kind: 'shelf', path: box(-5, -5, -2, 5), depthM: 0.4 },
        { kind: 'shelf', path: circle(-2, 2, 1.5), depthM: 0.7 },
        { kind: 'shelf', path: BEAN, depthM: 1.5 },
      ],
    })
    const { volumeM3 } = measure(divided(s), 0)
    expect(relative(water(s, 1e-5), volumeM3)).toBeLessThan(1e-5)
  })

  it('converges on a cove over a shelf and round steps, cut into thin level slices', () => {
    const r = 0.4
    const outline = box(0, 0, 8, 4)
    const features = [
      { kind: 'shelf', path: box(-0.5, -0.5, 2, 1.3), depthM: 0.5 },
      {
        kind: 'roundSteps',
        centre: [8, 4],
        treads: [
          [0.6, 0.3],
          [0.9, 0.6],
          [1.2, 0.9],
        ],
      },
    ] as const
    const s = shape(outline, { floor: { kind: 'flat', depthM: 1.6 }, wall: { kind: 'cove', radiusM: r }, features })
    const { volumeM3 } = measure(divided(s), 0)
    // At depth z inside the cove water is farther than n from the walls, where 1.6 − rise(n) = z.
    const sliced = (slices: number): number => {
      let sum = 0
      const area = (depth: number): number => {
        const n = depth <= 1.6 - r ? 0 : r - Math.sqrt(Math.max(0, r * r - (depth - 1.6 + r) ** 2))
        let cut = new wasm.CrossSection([
          [
            [n, n],
            [8 - n, n],
            [8 - n, 4 - n],
            [n, 4 - n],
          ],
        ])
        for (const patch of s.patches) {
          if (patch.plane.atOrigin >= depth) continue
          let block = new wasm.CrossSection([
            ccw(flatten(patch.path, 1e-6).map(([x, y]) => [x, y] as [number, number])),
          ])
          if (patch.except)
            block = block.subtract(
              new wasm.CrossSection([ccw(flatten(patch.except, 1e-6).map(([x, y]) => [x, y] as [number, number]))]),
            )
          cut = cut.subtract(block)
        }
        return cut.area()
      }
      // Gauss–Legendre of two points in each slice; slices end where a tread or the cove begins.
      const stops = [0, 0.3, 0.5, 0.6, 0.9, 1.2, 1.6]
      for (let i = 1; i < stops.length; i++)
        for (let k = 0; k < slices; k++) {
          // Denser toward the bottom of the cove, where the water's edge runs away fast.
          const at = (q: number): number => stops[i - 1]! + (stops[i]! - stops[i - 1]!) * (1 - (1 - q) ** 2)
          const a = at(k / slices)
          const b = at((k + 1) / slices)
          for (const g of [0.5 - Math.sqrt(3) / 6, 0.5 + Math.sqrt(3) / 6]) sum += ((b - a) / 2) * area(a + (b - a) * g)
        }
      return sum
    }
    const coarse = relative(sliced(2), volumeM3)
    const fine = relative(sliced(16), volumeM3)
    expect(fine).toBeLessThan(2e-6)
    expect(fine).toBeLessThan(coarse)
  })
})
