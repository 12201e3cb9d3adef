import { describe, expect, it } from 'vitest'
import { coveLean, coveRise } from '../../src/basin/cove-profile.ts'
import { type BasinShape, depthAt, measure, volumeAtLevel } from '../../src/basin/index.ts'
import { stripOf } from '../../src/basin/strip.ts'
import { newStripRay, rayIn } from '../../src/basin/strip-ray.ts'
import { BEAN, box, circle, divided, polygon, relative, shape } from './shapes.ts'

const M0 = 1 - Math.PI / 4
const M1 = 5 / 6 - Math.PI / 4

/** Water by depths at the middles of small squares: shares no formula with the strip integrals. */
function counted(s: BasinShape, levelM: number, n: number, x0: number, y0: number, sizeM: number) {
  const p = divided(s)
  const h = sizeM / n
  let volume = 0
  let area = 0
  for (let i = 0; i < n; i++)
    for (let k = 0; k < n; k++) {
      const d = depthAt(p, x0 + (i + 0.5) * h, y0 + (k + 0.5) * h)
      if (!d || d.depthM + levelM <= 0) continue
      volume += h * h * (d.depthM + levelM)
      area += h * h
    }
  return { volume, area }
}

describe('coves', () => {
  it('gives the closed form for a round basin: A D − P r² (1 − π/4) + 2π r³ (5/6 − π/4)', () => {
    // Steiner's formula with a total turn of 2π; the same by Pappus on the profile of revolution.
    const r = 0.4
    const m = measure(divided(shape(circle(3, -2, 2.5), { wall: { kind: 'cove', radiusM: r } })), 0)
    const truth = Math.PI * 6.25 * 1.5 - 5 * Math.PI * r * r * M0 + 2 * Math.PI * r ** 3 * M1
    expect(relative(m.volumeM3, truth)).toBeLessThan(1e-12)
    const wetted =
      5 * Math.PI * (1.5 - r) +
      Math.PI * (2.5 - r) ** 2 +
      5 * Math.PI * r * (Math.PI / 2) -
      2 * Math.PI * r * r * (Math.PI / 2 - 1)
    expect(relative(m.wetted.totalM2, wetted)).toBeLessThan(1e-12)
  })

  it('rounds a re-entrant corner by a cone: K = 5 · 2 tan 45° − π/2 for an L', () => {
    const r = 0.4
    const ell = polygon([0, 0], [9, 0], [9, 4], [4, 4], [4, 7], [0, 7])
    const p = divided(shape(ell, { wall: { kind: 'cove', radiusM: r } }))
    const truth = 48 * 1.5 - 32 * r * r * M0 + (10 - Math.PI / 2) * r ** 3 * M1
    expect(relative(measure(p, 0).volumeM3, truth)).toBeLessThan(1e-9)
  })

  it('turns about an island the other way: K = −2π', () => {
    const r = 0.3
    const s = shape(circle(0, 0, 4), { islands: [circle(0.5, 0.7, 1)], wall: { kind: 'cove', radiusM: r } })
    const truth = Math.PI * 15 * 1.5 - 10 * Math.PI * r * r * M0
    expect(relative(measure(divided(s), 0).volumeM3, truth)).toBeLessThan(1e-12)
  })

  it('makes a hemisphere’s quarter of a round basin whose radius the cove takes whole', () => {
    // depth = r-free: 1.5 − R + √(R² − ρ²) at distance ρ from the centre, a half ball over a cylinder.
    const s = shape(circle(0, 0, 1), { wall: { kind: 'cove', radiusM: 1 } })
    const truth = Math.PI * 0.5 + (2 / 3) * Math.PI
    expect(relative(measure(divided(s), 0).volumeM3, truth)).toBeLessThan(1e-9)
  })

  it('keeps to the nearest wall where the radius is larger than the basin is wide', () => {
    // A channel 0.6 wide with a cove of 0.5: rays meet on the middle line, and on mitres at the ends.
    const r = 0.5
    const s = shape(box(0, 0, 4, 0.6), { wall: { kind: 'cove', radiusM: r }, floor: { kind: 'flat', depthM: 1 } })
    const { volume } = counted(s, 0, 800, 0, -1.7, 4)
    expect(relative(measure(divided(s), 0).volumeM3, volume)).toBeLessThan(5e-4)
  })

  it('is the same depth law at a shelf, round steps, a sloping floor and low water as counting small squares', () => {
    const s = shape(box(0, 0, 8, 4), {
      floor: {
        kind: 'profile',
        axis: { from: [0, 0], to: [8, 0] },
        stations: [
          [1, 1],
          [4, 1.3],
          [6, 2],
        ],
      },
      wall: { kind: 'cove', radiusM: 0.4 },
      features: [
        { kind: 'shelf', path: box(-0.5, -0.5, 2, 1.3), depthM: 0.4 },
        {
          kind: 'roundSteps',
          centre: [8, 4],
          treads: [
            [0.6, 0.3],
            [0.9, 0.6],
            [1.2, 0.9],
          ],
        },
      ],
    })
    for (const level of [0, 0.1, -0.5, -0.95]) {
      const { volume, area } = counted(s, level, 400, 0, -2, 8)
      const m = measure(divided(s), level)
      expect(relative(m.volumeM3, volume)).toBeLessThan(3e-4)
      expect(relative(m.waterSurfaceM2, area)).toBeLessThan(3e-3)
    }
  })

  it('wets what the arc of its profile is long, on a floor three times as steep as it is long', () => {
    const r = 0.3
    const wettedOf = (lengthM: number, widthM: number): number => {
      const stations = [
        [0, 1],
        [lengthM, 1 + 3 * lengthM],
      ] as const
      const axis = { from: [0, 0], to: [lengthM, 0] } as const
      const pool = shape(box(0, 0, lengthM, widthM), {
        floor: { kind: 'profile', axis, stations },
        wall: { kind: 'cove', radiusM: r },
      })
      return measure(divided(pool), 0).wetted.floorM2
    }
    // r √(sin² p + (along sin p + cos p)² + across² sin² p) over a quarter circle, by Simpson's rule.
    const arc = (along: number, across: number): number => {
      const n = 4000
      const h = Math.PI / 2 / n
      let sum = 0
      for (let i = 0; i <= n; i++) {
        const [sin, cos] = [Math.sin(i * h), Math.cos(i * h)]
        const weight = i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2
        sum += weight * Math.hypot(sin, along * sin + cos, across * sin)
      }
      return (r * sum * h) / 3
    }
    // A metre more of width: the walls at both ends, and the slope between. One more of length: the walls along it.
    const wider = arc(3, 0) + arc(-3, 0) + (3 - 2 * r) * Math.sqrt(10)
    expect(relative(wettedOf(3, 4) - wettedOf(3, 3), wider)).toBeLessThan(1e-9)
    const longer = 2 * arc(0, 3) + (3 - 2 * r) * Math.sqrt(10)
    expect(relative(wettedOf(4, 3) - wettedOf(3, 3), longer)).toBeLessThan(1e-9)
  })

  it('has the water surface as the derivative of its volume at levels on the cove, on a freeform sloping basin', () => {
    const p = divided(
      shape(BEAN, {
        floor: {
          kind: 'profile',
          axis: { from: [0, 0], to: [9, 1] },
          stations: [
            [0, 1],
            [9, 1.4],
          ],
        },
        wall: { kind: 'cove', radiusM: 0.4 },
      }),
    )
    const h = 1e-4
    for (const level of [0, -0.65, -0.85, -0.95]) {
      const slope = (volumeAtLevel(p, level + h).volumeM3 - volumeAtLevel(p, level - h).volumeM3) / (2 * h)
      expect(relative(slope, volumeAtLevel(p, level).waterSurfaceM2)).toBeLessThan(1e-5)
    }
  })

  it('stops at the datum where the floor is shallower than the radius, and leaves dry floor alone', () => {
    const s = shape(box(0, 0, 6, 4), {
      floor: {
        kind: 'profile',
        axis: { from: [0, 0], to: [6, 0] },
        stations: [
          [0, -0.2],
          [6, 1.4],
        ],
      },
      wall: { kind: 'cove', radiusM: 0.5 },
    })
    for (const level of [0, 0.1, -0.3]) {
      const { volume, area } = counted(s, level, 450, 0, -1, 6)
      const m = measure(divided(s), level)
      expect(relative(m.volumeM3, volume)).toBeLessThan(5e-4)
      expect(relative(m.waterSurfaceM2, area)).toBeLessThan(4e-3)
    }
  })

  it('counts the shore where it lies: on the wall at and above its foot, along the cove below', () => {
    const r = 0.3
    const p = divided(
      shape(box(0, 0, 8, 4), { wall: { kind: 'cove', radiusM: r }, floor: { kind: 'flat', depthM: 1.6 } }),
    )
    for (const level of [0, -1.29, -1.3]) expect(measure(p, level).perimeterM).toBeCloseTo(24, 9)
    // Below the foot the shore is a parallel rectangle: 24 − 8 n where rise(n) = 1.6 + level.
    const n = r - Math.sqrt(r * r - (r - 0.15) ** 2)
    expect(measure(p, -1.45).perimeterM).toBeCloseTo(24 - 8 * n, 9)
  })

  it.each([0, 1e-16, 1e-13, 1e-9, 7e-9, 1.4e-8, 2.3e-8, 6e-8, 1e-7, 1e-6])(
    'has all of the shore at the wall where water and foot, or the depth and the radius, agree but for %f m',
    (off) => {
      for (const radiusM of [0.5, 1.524])
        for (const sign of [1, -1]) {
          const under = (depthM: number, levelM: number): number => {
            const pool = shape(box(0, 0, 8, 4), { floor: { kind: 'flat', depthM }, wall: { kind: 'cove', radiusM } })
            return measure(divided(pool), levelM).perimeterM
          }
          expect(Math.abs(under(2, radiusM - 2 + sign * off) - 24)).toBeLessThan(1e-9)
          expect(Math.abs(under(radiusM + sign * off, 0) - 24)).toBeLessThan(1e-9)
        }
    },
  )

  it('gives the greatest depth where a sloping floor runs into the cove', () => {
    // On the ray along the slope f − rise is greatest where u/√(r² − u²) equals the slope.
    const r = 0.35
    const p = divided(
      shape(box(0, 0, 10, 4), {
        floor: {
          kind: 'profile',
          axis: { from: [0, 0], to: [10, 0] },
          stations: [
            [0, 1.2],
            [10, 2.2],
          ],
        },
        wall: { kind: 'cove', radiusM: r },
      }),
    )
    const k = 0.1
    const n = r - (r * k) / Math.sqrt(1 + k * k)
    const truth = 2.2 - k * n - (r - Math.sqrt(r * r - (r - n) ** 2))
    expect(measure(p, 0).maxDepthM).toBeCloseTo(truth, 9)
  })

  it('gives a greatest depth also where a ray crosses the side of a triangle right at its foot, behind it by rounding', () => {
    const s = shape(
      {
        start: [4, 0],
        segments: [
          { to: [1.7644463620000006, 3.0561107462140678] },
          { to: [-1.980005823599999, 3.4294706857574604] },
          { to: [-3.7386046558, 0], bulge: -0.018001319119999998 },
          {
            to: [-1.5, -2.598],
            c1: [-2.9228200025088236, -0.8060698666897302],
            c2: [-2.1766184505754906, -1.672095270474169],
          },
          { to: [2, -3.4641016151377544] },
          { to: [4, 0], bulge: 0.10852675996 },
        ],
      },
      {
        wall: { kind: 'cove', radiusM: 0.2 },
        floor: { kind: 'soundings', edgeDepthM: 1.5, points: [[-0.7500000000000007, -1.2990381056766578, 1.5]] },
      },
    )
    expect(measure(divided(s), 0).maxDepthM).toBeCloseTo(1.5, 9)
    for (const n of [0, -6e-14]) {
      expect(coveRise(n, 0.2)).toBe(0.2)
      expect(coveLean(n, 0.2)).toBe(Infinity)
    }
  })

  it('takes what a level floor’s cove takes where a triangle’s side all but follows the rays and meets their lines far off', () => {
    const path: BasinShape['outline'] = {
      start: [4, 0],
      segments: [
        { to: [1.5000000000000004, 2.598076211353316] },
        {
          to: [-2.096846776499999, 3.6318451525850226],
          c1: [0.27981719817992096, 2.8687857131212144],
          c2: [-0.919131727320079, 3.21337536019845],
        },
        { to: [-3, 3.6739403974420594e-16] },
        {
          to: [-2.0000000000000018, -3.464101615137754],
          c1: [-3.1991348126181682, -1.3084108520792508],
          c2: [-2.8658014792848356, -2.463111390458502],
        },
        { to: [2.0000000000000004, -3.4641016151377544] },
        {
          to: [4, 0],
          c1: [2.6113803043604666, -2.277481480598503],
          c2: [3.278046971027133, -1.1227809422192514],
        },
      ],
    }
    const ring: BasinShape['outline'] = {
      start: [2.6, 0],
      segments: [
        { to: [0.9750000000000003, 1.6887495373796555] },
        {
          to: [-1.3629504047249996, 2.3606993491802646],
          c1: [0.18188117881694862, 1.8647107135287895],
          c2: [-0.5974356227580514, 2.0886939841289927],
        },
        { to: [-1.9500000000000002, 2.3880612583373386e-16], bulge: 0.17221450304000002 },
        {
          to: [-1.3000000000000012, -2.25166604983954],
          c1: [-2.079437628201809, -0.850467053851513],
          c2: [-1.8627709615351433, -1.6010224037980263],
        },
        { to: [1.3000000000000003, -2.25166604983954] },
        {
          to: [2.6, 0],
          c1: [1.6973971978343034, -1.480362962389027],
          c2: [2.1307305311676368, -0.7298076124425135],
        },
      ],
    }
    const wall = { kind: 'cove', radiusM: 0.2 } as const
    const hill = {
      kind: 'contours',
      edgeDepthM: 2.4999999581999997,
      rings: [{ depthM: 0.6000000038, path: ring }],
    } as const
    const level = { kind: 'flat', depthM: 2.5 } as const
    const coveTakesM3 = (floor: BasinShape['floor'], levelM: number): number =>
      volumeAtLevel(divided(shape(path, { floor })), levelM).volumeM3 -
      volumeAtLevel(divided(shape(path, { floor, wall })), levelM).volumeM3
    // What it takes doesn't hang on the floor as long as all of it is under water.
    const truth = coveTakesM3(level, 0)
    for (const levelM of [-1, -0.25, 0, 0.2]) expect(coveTakesM3(hill, levelM)).toBeCloseTo(truth, 8)
    // And each part of the strip is cut where its rays cease to cross a side.
    const p = divided(shape(path, { floor: hill, wall }))
    for (const piece of stripOf(p).pieces) {
      const ray = rayIn(p, piece, (piece.t0 + piece.t1) / 2, newStripRay())
      for (const n of ray.at) expect(n).toBeLessThan(ray.end)
    }
  })

  it('has the volumes that it has without a bench as deep as the floor, whose side runs square to the wall', () => {
    const bare = shape(box(-2.623511685, -2, 2.623511685, 2), {
      wall: { kind: 'cove', radiusM: 0.21279237823999997 },
      floor: {
        kind: 'profile',
        axis: { from: [4, -4.898587196589413e-16], to: [-4, 4.898587196589413e-16] },
        stations: [
          [4, 0.7855523641],
          [6, 1.2],
        ],
      },
    })
    const along = { fromSegment: 2, toSegment: 1 }
    const benched = {
      ...bare,
      features: [{ kind: 'bench', along, widthM: 0.138158849, depthM: 1.1999999916 } as const],
    }
    for (const levelM of [-1.1, -1, -0.25, 0.2])
      expect(volumeAtLevel(divided(benched), levelM).volumeM3).toBeCloseTo(
        volumeAtLevel(divided(bare), levelM).volumeM3,
        7,
      )
  })
})
