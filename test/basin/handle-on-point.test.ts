import { describe, expect, it } from 'vitest'
import { derivativesOf, levelBreaks, measure, type Path, volumeAtLevel } from '../../src/basin/index.ts'
import { type Foot, footOn } from '../../src/basin/span.ts'
import { divided, relative, shape, turnedBy } from './shapes.ts'

/** A star of cubics of which two have a handle on its own point, where the curve stands still. */
function star(turn: number): Path {
  const at = turnedBy(turn)
  return {
    start: at(4.7, -0.3),
    segments: [
      { to: at(2.8, 1.9), c1: at(4.7, -0.1), c2: at(2.8, 1.9) },
      { to: at(1.5, 4.6), c1: at(2.5, 2.2), c2: at(1.9, 4.6) },
      { to: at(-3.3, 1.8), c1: at(1.5, 4.6), c2: at(-2.7, 2.9) },
      { to: at(-2.9, -2.6), c1: at(-3.9, 0.7), c2: at(-3.4, -2.4) },
      { to: at(2, -4.7), c1: at(-0.6, -3.2), c2: at(1.7, -4.9) },
      { to: at(2.3, -1.8), c1: at(2, -4.7), c2: at(2.1, -2.1) },
      { to: at(4.7, -0.3), c1: at(2.6, -1.4), c2: at(4.7, -0.6) },
    ],
  }
}

const PEBBLE: Path = {
  start: [0.014751157259999998, -0.06],
  segments: [
    {
      to: [0.013279364320866502, -0.10173100292099388],
      c1: [0.014260559613622166, -0.07391033430699796],
      c2: [0.013279364320866502, -0.10173100292099388],
    },
    { to: [-0.024450418679126288, -0.07949855824363647] },
    {
      to: [-0.05226567614235971, -0.07553833068882405],
      c1: [-0.024450418679126288, -0.07949855824363647],
      c2: [-0.043983980543318334, -0.08381222090623654],
    },
    {
      to: [-0.03801937735804838, -0.05132232521764884],
      c1: [-0.0535709112487164, -0.06390475416902114],
      c2: [-0.0488221449872793, -0.055832752345296076],
    },
    {
      to: [-0.02445041867912629, -0.04050144175636353],
      c1: [-0.036201611997062344, -0.044323124394156546],
      c2: [-0.03167862577075498, -0.04071616324039478],
    },
    {
      to: [-0.009506820711517353, -0.046841969356259006],
      c1: [-0.019416781098428523, -0.04249136246377179],
      c2: [-0.009506820711517353, -0.046841969356259006],
    },
    {
      to: [0.014751157259999998, -0.06],
      c1: [-0.009506820711517353, -0.046841969356259006],
      c2: [0.006665164602827547, -0.05561398978541967],
    },
  ],
}

describe('a handle on its own point', () => {
  it('is no end for a foot that lies further on, wherever the search for it begins', () => {
    const cubic = { kind: 'cubic', x0: 0, y0: 0, ax: 1, ay: 0, bx: 3, by: 1, x1: 3, y1: 1 } as const
    const out: Foot = { t: 0, x: 0, y: 0, distance: 0 }
    const nearest = footOn(cubic, 0, 1, 1.2, -0.4, out).distance
    for (const guess of [0, 0.3, 0.9, 1])
      expect(footOn(cubic, 0, 1, 1.2, -0.4, out, guess).distance).toBeCloseTo(nearest, 12)
  })

  it.each(['cove', 'battered'] as const)('leaves figures that are numbers, and the same turned: %s', (kind) => {
    const wall = kind === 'cove' ? { kind, radiusM: 1 } : { kind, run: 0.8 }
    const pool = (turn: number) =>
      divided(
        shape(star(turn), {
          floor: { kind: 'flat', depthM: 1.6 },
          wall,
          features: [
            {
              kind: 'roundSteps',
              centre: [1.5 * Math.cos(turn), 1.5 * Math.sin(turn)],
              treads: [
                [0.7, 0.3],
                [1.6, 0.7],
              ],
            },
          ],
        }),
      )
    const first = pool(0)
    for (let level = -1.5; level < 0.1; level += 0.01) expect(volumeAtLevel(first, level).volumeM3).toBeGreaterThan(0)
    const m = measure(first, -0.05)
    for (const turn of [0.73, 2.19, 4]) {
      const turned = measure(pool(turn), -0.05)
      expect(Math.abs(turned.volumeM3 - m.volumeM3)).toBeLessThan(1e-9 * m.volumeM3 + turned.errorBoundM3)
      expect(relative(turned.wetted.riserM2, m.wetted.riserM2)).toBeLessThan(1e-7)
      expect(relative(turned.wetted.totalM2, m.wetted.totalM2)).toBeLessThan(1e-7)
    }
    for (const { value } of derivativesOf(first, -0.05))
      for (const each of [value].flat()) expect(Math.abs(each)).toBeLessThan(100)
  })

  it('leaves levels that are numbers where rounding has the first rays part behind the shore', () => {
    const floor = {
      kind: 'dish',
      form: 'cone',
      centre: [-0.01323887909116394, -0.06442920352296573],
      radiusM: 0.04495867063376,
      edgeDepthM: 1,
      depthM: 2,
    } as const
    const p = divided(shape(PEBBLE, { floor, wall: { kind: 'cove', radiusM: 0.00588936817531944 } }))
    const breaks = levelBreaks(p)
    expect(breaks.length).toBeGreaterThan(10)
    for (const level of breaks) expect(level).toBeLessThan(1)
    for (const level of breaks) expect(level).toBeGreaterThan(-2.1)
  })
})
