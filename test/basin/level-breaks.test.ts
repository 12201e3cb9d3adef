import { describe, expect, it } from 'vitest'
import { type BasinShape, levelBreaks, volumeAtLevel } from '../../src/basin/index.ts'
import { pushWallBreakDepths } from '../../src/basin/wall-break-depths.ts'
import { wallLaw } from '../../src/basin/walls.ts'
import { BEAN, box, circle, DEMO, divided, shape } from './shapes.ts'

const BEACH = {
  kind: 'profile',
  axis: { from: [0, 2], to: [9, 2.5] },
  stations: [
    [0.5, -0.2],
    [4, 1.1],
    [8, 1.6],
  ],
} as const

const POOLS: Record<string, BasinShape> = {
  'freeform with steps': DEMO,
  'beach with an island': shape(BEAN, { floor: BEACH, islands: [circle(4.2, 2.6, 0.6)] }),
  'ramp and shelf': shape(box(0, 0, 8, 4), {
    features: [
      { kind: 'shelf', path: circle(7.4, 3.6, 1), depthM: 0.4 },
      {
        kind: 'ramp',
        path: box(0, 0.5, 3, 2),
        axis: { from: [0.3, 1], to: [2.5, 1.3] },
        fromDepthM: -0.1,
        toDepthM: 1.2,
      },
    ],
  }),
  'hollow that a wall cuts': shape(box(0, 0, 6, 3), {
    floor: { kind: 'dish', form: 'cap', centre: [4.6, 1.3], radiusM: 2, edgeDepthM: 1.1, depthM: 1.8 },
  }),
  'cove on a slope': shape(BEAN, { floor: BEACH, wall: { kind: 'cove', radiusM: 0.4 } }),
  'cove in a box on the tilt': shape(box(0, 0, 6, 3), {
    wall: { kind: 'cove', radiusM: 0.5 },
    floor: {
      kind: 'profile',
      axis: { from: [0, 0], to: [6, 2] },
      stations: [
        [0, 0.8],
        [6, 1.9],
      ],
    },
    features: [{ kind: 'shelf', path: box(4, -1, 7, 1.2), depthM: 0.5 }],
  }),
  'batter in an L': shape(
    { start: [0, 0], segments: [{ to: [6, 0] }, { to: [6, 2] }, { to: [3, 2.4] }, { to: [3, 5] }, { to: [0, 5] }] },
    { wall: { kind: 'battered', run: 0.6 }, floor: BEACH },
  ),
}

/** Greatest miss of interpolation through Chebyshev points in τ, level = a + (b − a)(3τ² − 2τ³), relative to the range. */
function miss(f: (level: number) => number, a: number, b: number, points: number): number {
  const level = (tau: number): number => a + (b - a) * tau * tau * (3 - 2 * tau)
  const at = Array.from({ length: points }, (_, k) => 0.5 - 0.5 * Math.cos((Math.PI * (k + 0.5)) / points))
  const values = at.map((tau) => f(level(tau)))
  const weights = at.map((_, k) => (k % 2 ? -1 : 1) * Math.sin((Math.PI * (k + 0.5)) / points))
  const size = Math.max(...values) - Math.min(...values)
  let worst = 0
  for (let i = 0; i < 23; i++) {
    const tau = (i + 0.37) / 23
    let up = 0
    let down = 0
    at.forEach((t, k) => {
      const w = weights[k]! / (tau - t)
      up += w * values[k]!
      down += w
    })
    worst = Math.max(worst, Math.abs(up / down - f(level(tau))))
  }
  return worst / Math.max(size, 1e-3)
}

describe('breaks of the level curve', () => {
  for (const [name, pool] of Object.entries(POOLS)) {
    const p = divided(pool)
    const breaks = levelBreaks(p)
    const area = (level: number): number => volumeAtLevel(p, level).waterSurfaceM2
    const spans = breaks.slice(1).map((b, i): [number, number] => [breaks[i]!, b])
    const broad = spans.filter(([a, b]) => b - a > 4e-3)
    // A few of them, spread over all, where each level has to be integrated.
    const step = Math.max(1, Math.ceil(broad.length / 6))
    const wide = broad.filter((_, i) => i % step === 0)

    it(`has a surface between any two that a polynomial comes near at once: ${name}`, () => {
      expect(wide.length).toBeGreaterThan(1)
      for (const [a, b] of wide) expect(miss(area, a, b, 28), `${a} to ${b}`).toBeLessThan(1e-5)
    })

    it(`ascends, begins at the lowest point and ends where all is under water: ${name}`, () => {
      for (const [a, b] of spans) expect(b).toBeGreaterThan(a)
      expect(volumeAtLevel(p, breaks[0]! - 1e-9).volumeM3).toBe(0)
      expect(volumeAtLevel(p, breaks[0]! + 1e-3).volumeM3).toBeGreaterThan(0)
      const top = breaks[breaks.length - 1]!
      expect(Math.abs(area(top + 1e-9) - area(top + 5))).toBeLessThan(1e-6)
    })
  }

  it('would be missed: across a break a polynomial of the same degree is far off', () => {
    const p = divided(POOLS['beach with an island']!)
    const breaks = levelBreaks(p)
    const area = (level: number): number => volumeAtLevel(p, level).waterSurfaceM2
    expect(miss(area, breaks[0]!, breaks[breaks.length - 1]!, 28)).toBeGreaterThan(1e-4)
  })

  it('lists the corners of a box on the tilt', () => {
    const p = divided(
      shape(box(0, 0, 4, 2), {
        floor: {
          kind: 'profile',
          axis: { from: [0, 0], to: [4, 2] },
          stations: [
            [0, 1],
            [Math.hypot(4, 2), 2],
          ],
        },
      }),
    )
    // Corners at 0, 16, 20 and 4 twentieths of the way.
    expect(levelBreaks(p)).toEqual([-2, -1.8, -1.2, -1].map((level) => expect.closeTo(level, 12)))
  })
})

describe('a pool whose wall is wider than it, over a floor of many triangles', () => {
  it('has its breaks listed, however many depths its rays meet', { timeout: 60_000 }, () => {
    const rings = [
      { depthM: 1, path: circle(0.1, 0.03, 0.3) },
      { depthM: 1.5, path: circle(-0.07, 0.05, 0.05) },
      { depthM: 1.3, path: circle(0.22, 0.04, 0.05) },
    ]
    const p = divided(
      shape(circle(0, 0, 0.5), {
        floor: { kind: 'contours', edgeDepthM: -0.5, rings },
        wall: { kind: 'cove', radiusM: 1.6635 },
      }),
    )
    const depths: number[] = []
    pushWallBreakDepths(p, wallLaw(p.shape.wall)!, depths)
    expect(depths.length).toBeGreaterThan(40_000)
    const breaks = levelBreaks(p)
    expect(breaks.length).toBeGreaterThan(100)
    for (let i = 1; i < breaks.length; i++) expect(breaks[i]! > breaks[i - 1]!).toBe(true)
  })
})
