import { describe, expect, it } from 'vitest'
import { depthAt, measure, meshOf, volumeAtLevel } from '../../src/basin/index.ts'
import { type Feature, patchesOf, type Ramp } from '../../src/features/index.ts'
import { box, circle, divided, relative, shape } from '../basin/shapes.ts'

const BEACH: Ramp = {
  kind: 'ramp',
  path: box(0, 0, 4, 4),
  axis: { from: [0, 0], to: [4, 0] },
  fromDepthM: -0.2,
  toDepthM: 1.2,
}
const FALL = 1.4 / 4
const pool = (features: readonly Feature[]) =>
  divided(shape(box(0, 0, 10, 4), { floor: { kind: 'flat', depthM: 1.2 }, features }))

describe('a ramp', () => {
  it('that begins above the water is a wedge with a shore of its own', () => {
    const p = pool([BEACH])
    for (const level of [0, 0.1, -0.3, -0.9, 0.25]) {
      // From where the ramp comes out of the water, or from the wall, to its foot.
      const dry = Math.max(0, (0.2 - level) / FALL)
      const m = measure(p, level)
      const deep = 1.2 + level
      const shallow = Math.max(0, level - 0.2)
      expect(relative(m.volumeM3, 24 * deep + 4 * (4 - dry) * ((deep + shallow) / 2))).toBeLessThan(1e-12)
      expect(relative(m.waterSurfaceM2, 4 * (10 - dry))).toBeLessThan(1e-12)
      expect(relative(m.wetted.featureM2, 4 * (4 - dry) * Math.hypot(1, FALL))).toBeLessThan(1e-12)
      expect(relative(m.perimeterM, 2 * (10 - dry) + 8)).toBeLessThan(1e-12)
      const sides = (4 - dry) * (deep + shallow) + 12 * deep + 4 * deep + (shallow > 0 ? 4 * shallow : 0)
      expect(relative(m.wetted.wallM2, sides)).toBeLessThan(1e-12)
      expect(m.wetted.riserM2).toBe(0)
    }
    expect(meshOf(p).ok).toBe(true)
  })

  it('holds its depths before and beyond its axis', () => {
    const p = pool([{ ...BEACH, axis: { from: [1, 0], to: [3, 0] }, fromDepthM: 0.1, toDepthM: 0.7 }])
    expect(depthAt(p, 0.4, 2)?.depthM).toBeCloseTo(0.1, 14)
    expect(depthAt(p, 2, 2)?.depthM).toBeCloseTo(0.4, 14)
    expect(depthAt(p, 2, 2)?.slope).toBeCloseTo(0.3, 14)
    expect(depthAt(p, 3.9, 2)?.depthM).toBeCloseTo(0.7, 14)
    expect(depthAt(p, 4.1, 2)?.depthM).toBe(1.2)
    const m = measure(p, 0)
    expect(relative(m.volumeM3, 48 - 4 * (1.1 + 2 * 0.8 + 0.5))).toBeLessThan(1e-12)
    // A step down at its end, and its sides are walls of the pool.
    expect(relative(m.wetted.riserM2, 4 * 0.5)).toBeLessThan(1e-12)
  })

  it('meets a sloping floor along a line, and rules only where it is shallower', () => {
    const stations: [number, number][] = [
      [0, 0.4],
      [10, 1.4],
    ]
    const floor = { kind: 'profile', axis: { from: [0, 0], to: [10, 0] }, stations } as const
    const p = divided(
      shape(box(0, 0, 10, 4), { floor, features: [{ ...BEACH, path: box(0, 0, 8, 4), fromDepthM: 0, toDepthM: 0.8 }] }),
    )
    // 0.2 x = 0.4 + 0.1 x at x = 4; from there the ramp is level at 0.8, shallower than the floor up to its edge at 8.
    const water = 4 * ((4 * 0.8) / 2 + 4 * 0.8 + 2 * 1.3)
    expect(relative(measure(p, 0).volumeM3, water)).toBeLessThan(1e-12)
    expect(depthAt(p, 2, 1)?.depthM).toBeCloseTo(0.4, 14)
    expect(depthAt(p, 2, 1)?.part).toBe('feature')
    expect(depthAt(p, 9, 1)?.part).toBe('floor')
  })

  it.each<[string, Feature, string]>([
    ['no axis', { ...BEACH, axis: { from: [1, 1], to: [1, 1] } }, 'axis-too-short @ features[0].axis'],
    ['a depth that is none', { ...BEACH, toDepthM: Number.NaN }, 'not-a-number @ features[0].toDepthM'],
    [
      'an axis that is none',
      { ...BEACH, axis: { from: [1, Infinity], to: [1, 1] } },
      'not-a-number @ features[0].axis',
    ],
  ])('with %s is a problem', (_, feature, expected) => {
    const result = patchesOf([feature], box(0, 0, 8, 4))
    expect(!result.ok && `${result.problem.code} @ ${result.problem.path}`).toBe(expected)
  })
})

describe('shelf, bench and ramp together', () => {
  it('let the shallowest rule where they overlap', () => {
    // Shelf 2 × 4 at 0.3 at the end x = 0; bench 0.5 wide at 0.45 along y = 0 from x = 0: under the shelf it is buried.
    const p = divided(
      shape(box(0, 0, 8, 4), {
        features: [
          { kind: 'shelf', path: box(-1, -1, 2, 5), depthM: 0.3 },
          { kind: 'bench', along: { fromSegment: 0, toSegment: 1 }, widthM: 0.5, depthM: 0.45 },
        ],
      }),
    )
    const m = measure(p, 0)
    const benchM2 = 6 * 0.5 + 3.5 * 0.5
    expect(relative(m.volumeM3, 48 - 8 * 1.2 - benchM2 * 1.05)).toBeLessThan(1e-12)
    expect(relative(m.wetted.featureM2, 8 + benchM2)).toBeLessThan(1e-12)
    // Shelf to floor, shelf to bench, bench to floor.
    expect(relative(m.wetted.riserM2, 3.5 * 1.2 + 0.5 * 0.15 + (5.5 + 3.5) * 1.05)).toBeLessThan(1e-12)
  })

  it('stand in a round pool with a bench all round', () => {
    const p = divided(
      shape(circle(0, 0, 4), {
        features: [
          { kind: 'bench', along: { fromSegment: 0, toSegment: 1 }, widthM: 0.5, depthM: 0.45 },
          { kind: 'roundSteps', centre: [0, 0], treads: [[1, 0.3]] },
        ],
      }),
    )
    const expected = Math.PI * (3.5 * 3.5 - 1) * 1.5 + Math.PI * 0.3 + Math.PI * (16 - 3.5 * 3.5) * 0.45
    expect(relative(measure(p, 0).volumeM3, expected)).toBeLessThan(1e-12)
    expect(relative(volumeAtLevel(p, -0.5).volumeM3, Math.PI * (3.5 * 3.5 - 1) * 1)).toBeLessThan(1e-12)
  })
})
