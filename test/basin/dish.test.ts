import { describe, expect, it } from 'vitest'
import { gaussRule } from '../../src/basin/gauss.ts'
import {
  buriedFeatures,
  type DishFloor,
  depthAt,
  levelForVolume,
  measure,
  type Path,
  type Point,
  transformPath,
  volumeAtLevel,
} from '../../src/basin/index.ts'
import type { Feature } from '../../src/features/index.ts'
import { cap, dish, type Parts, pool } from './dishes.ts'
import { BEAN, box, circle, divided, relative, shape } from './shapes.ts'

/** Depth by the definition of the floor, written anew. */
function defined(f: DishFloor, x: number, y: number): number {
  const rho = Math.hypot(x - f.centre[0], y - f.centre[1])
  if (rho >= f.radiusM) return f.edgeDepthM
  if (f.form === 'cone') return f.depthM + ((f.edgeDepthM - f.depthM) * rho) / f.radiusM
  const h = Math.abs(f.depthM - f.edgeDepthM)
  const sphere = (f.radiusM ** 2 + h * h) / (2 * h)
  const drop = Math.sqrt(sphere * sphere - rho * rho) - (sphere - h)
  return f.depthM > f.edgeDepthM ? f.edgeDepthM + drop : f.edgeDepthM - drop
}

/** ∫ f dx dy over a box by the midpoint rule, for f with jumps along its grid. */
function midpoint(f: (x: number, y: number) => number, [x0, y0, x1, y1]: readonly number[], nx: number, ny: number) {
  let sum = 0
  for (let i = 0; i < nx; i++)
    for (let k = 0; k < ny; k++) sum += f(x0! + ((x1! - x0!) * (i + 0.5)) / nx, y0! + ((y1! - y0!) * (k + 0.5)) / ny)
  return (sum * (x1! - x0!) * (y1! - y0!)) / (nx * ny)
}

const RULE = gaussRule(40)

/** ∫ f dt between stops that lie within two ends; roots at the stops are smoothed by t = a + (b − a)(3u² − 2u³). */
function pieces(f: (t: number) => number, from: number, to: number, stops: readonly number[]): number {
  const at = [from, ...stops.filter((s) => s > from && s < to).sort((a, b) => a - b), to]
  let sum = 0
  for (let i = 1; i < at.length; i++) {
    const a = at[i - 1]!
    const run = at[i]! - a
    for (let k = 0; k < RULE.at.length; k++) {
      const u = RULE.at[k]!
      sum += RULE.weight[k]! * run * 6 * u * (1 - u) * f(a + run * u * u * (3 - 2 * u))
    }
  }
  return sum
}

/** ∫ f dx dy over a box by Gauss within Gauss, for f that is smooth but on circles about one centre. */
function nested(f: (x: number, y: number) => number, box: readonly number[], centre: Point, radii: readonly number[]) {
  const [x0, y0, x1, y1] = box as [number, number, number, number]
  const [cx, cy] = centre
  const chord = (r: number, off: number): number[] => {
    const half = Math.sqrt(Math.max(0, r * r - off * off))
    return [-half, half]
  }
  const xs = radii.flatMap((r) => [
    cx,
    cx - r,
    cx + r,
    ...chord(r, y0 - cy).map((d) => cx + d),
    ...chord(r, y1 - cy).map((d) => cx + d),
  ])
  return pieces(
    (x) => pieces((y) => f(x, y), y0, y1, [cy, ...radii.flatMap((r) => chord(r, x - cx).map((d) => cy + d))]),
    x0,
    x1,
    xs,
  )
}

describe('a dished floor has the closed form’s figures', () => {
  it.each([0.05, 0.4, 1, 2, 3])('as a cap of a sphere %f m deep and 6 m wide', (h) => {
    const m = measure(pool(circle(0, 0, 3), { depthM: h }), 0)
    expect(relative(m.volumeM3, cap(h, 3))).toBeLessThan(1e-13)
    expect(relative(m.wetted.floorM2, Math.PI * (9 + h * h))).toBeLessThan(1e-13)
    expect(m.wetted.wallM2).toBeLessThan(1e-12)
    expect(m.maxDepthM).toBeCloseTo(h, 13)
    expect(Math.hypot(...m.centroid)).toBeLessThan(1e-14)
  })

  it('as a hardly dished cap, which a sphere of a thousand kilometres would spoil', () => {
    const m = measure(pool(circle(0, 0, 3), { edgeDepthM: 1, depthM: 1 + 1e-9 }), 0)
    expect(relative(m.volumeM3, 9 * Math.PI * (1 + 0.5e-9))).toBeLessThan(1e-15 * 8)
  })

  it('as a cone, in a larger pool with a level rim', () => {
    const m = measure(pool(box(-4, -4, 4, 4), { form: 'cone', edgeDepthM: 1, depthM: 2.2, centre: [0.5, 0.3] }), 0)
    expect(relative(m.volumeM3, 64 + (Math.PI * 9 * 1.2) / 3)).toBeLessThan(1e-13)
    expect(relative(m.wetted.floorM2, 64 - 9 * Math.PI + Math.PI * 3 * Math.hypot(3, 1.2))).toBeLessThan(1e-13)
    expect(relative(m.wetted.wallM2, 32)).toBeLessThan(1e-13)
    expect(m.wetted.riserM2).toBe(0)
    expect(relative(m.perimeterM, 32)).toBeLessThan(1e-13)
  })

  it('as a mound that stands out of the water, with a shore of its own', () => {
    // A cone from 1 m deep at the rim to 0.5 m above the water: the shore lies at ρ = 1.
    const m = measure(pool(circle(0, 0, 4), { form: 'cone', edgeDepthM: 1, depthM: -0.5 }), 0)
    const dry = Math.PI
    expect(relative(m.waterSurfaceM2, 16 * Math.PI - dry)).toBeLessThan(1e-13)
    expect(relative(m.perimeterM, 2 * Math.PI * 5)).toBeLessThan(1e-13)
    // ∫₁³ (ρ − 1)/2 · 2πρ dρ + 1 m over the rim.
    const slope = Math.PI * ((27 - 1) / 3 - (9 - 1) / 2)
    expect(relative(m.volumeM3, slope + 7 * Math.PI)).toBeLessThan(1e-13)
    expect(relative(m.wetted.floorM2, 8 * Math.PI * Math.hypot(1, 0.5) + 7 * Math.PI)).toBeLessThan(1e-13)
  })

  it.each(['cap', 'cone'] as const)('as a %s at any level: the wet part of it is a smaller one', (form) => {
    const p = pool(box(-4, -4, 4, 4), { form, edgeDepthM: 0.5, depthM: 1.5, centre: [0.5, -0.3] })
    for (const v of [0.02, 0.3, 0.7, 0.999]) {
      // v m of water over the lowest place.
      const m = measure(p, v - 1.5)
      const sphere = (9 + 1) / 2
      const r2 = form === 'cone' ? 9 * v * v : v * (2 * sphere - v)
      const volume = form === 'cone' ? (Math.PI * r2 * v) / 3 : cap(v, Math.sqrt(r2))
      expect(relative(m.volumeM3, volume)).toBeLessThan(1e-12)
      expect(relative(m.waterSurfaceM2, Math.PI * r2)).toBeLessThan(1e-12)
      expect(relative(m.perimeterM, 2 * Math.PI * Math.sqrt(r2))).toBeLessThan(1e-12)
      const floor = form === 'cone' ? Math.PI * r2 * Math.hypot(1, 1 / 3) : Math.PI * (r2 + v * v)
      expect(relative(m.wetted.totalM2, floor)).toBeLessThan(1e-12)
      expect(m.centroid[0]).toBeCloseTo(0.5, 12)
      expect(m.centroid[1]).toBeCloseTo(-0.3, 12)
      const level = levelForVolume(p, volume)
      expect(level.ok && Math.abs(level.value - (v - 1.5))).toBeLessThan(1e-11)
    }
  })
})

describe('a hollow off the middle, cut by the outline', () => {
  const cases: [string, Path, DishFloor, readonly number[]][] = [
    ['cap in a box', box(0.2, -1, 4, 3.5), dish({ centre: [0.9, 0.6], edgeDepthM: 0.8, depthM: 2 }), [0.2, -1, 4, 3.5]],
    [
      'cone in a box, its tip on the wall',
      box(0, -1, 4, 2),
      dish({ form: 'cone', edgeDepthM: 0.8, depthM: 2 }),
      [0, -1, 4, 2],
    ],
    ['mound in a box, its top outside', box(1, -1, 4, 2), dish({ edgeDepthM: 1.4, depthM: 0.2 }), [1, -1, 4, 2]],
    ['half a sphere in a box', box(-1, -2, 4, 2.5), dish({ edgeDepthM: 0.3, depthM: 3.3 }), [-1, -2, 4, 2.5]],
  ]
  it.each(cases)('agrees with Gauss within Gauss over the plan at every level: %s', (_, outline, floor, area) => {
    const p = divided(shape(outline, { floor }))
    for (const level of [0, -0.5, -1.1, -1.6]) {
      const wet = (x: number, y: number) => Math.max(0, defined(floor, x, y) + level)
      // The shore's circle, by halving the radius.
      let [lo, hi] = [0, floor.radiusM]
      const inWater = (r: number) => defined(floor, floor.centre[0] + r, floor.centre[1]) + level > 0
      for (let i = 0; i < 60; i++) {
        const r = (lo + hi) / 2
        if (inWater(r) === inWater(0)) lo = r
        else hi = r
      }
      const over = (f: (x: number, y: number) => number) => nested(f, area, floor.centre, [lo, floor.radiusM])
      const m = measure(p, level)
      const surface = over((x, y) => (wet(x, y) > 0 ? 1 : 0))
      expect(Math.abs(m.volumeM3 - over(wet))).toBeLessThan(1e-7)
      expect(Math.abs(m.waterSurfaceM2 - surface)).toBeLessThan(1e-7)
      expect(Math.abs(m.centroid[0] * m.waterSurfaceM2 - over((x, y) => (wet(x, y) > 0 ? x : 0)))).toBeLessThan(1e-6)
      expect(Math.abs(m.centroid[1] * m.waterSurfaceM2 - over((x, y) => (wet(x, y) > 0 ? y : 0)))).toBeLessThan(1e-6)
      const sloping = (x: number, y: number) => (wet(x, y) > 0 ? Math.hypot(1, depthAt(p, x, y)?.slope ?? 0) : 0)
      // A half sphere stands upright at its rim: no plain sum gets near there.
      if (floor.depthM - floor.edgeDepthM < floor.radiusM)
        expect(Math.abs(m.wetted.floorM2 - over(sloping))).toBeLessThan(1e-6)
    }
  })

  it.each([circle(0.4, -0.3, 2.9), BEAN])(
    'has −V′ equal to the water surface, in an outline of arcs or cubics',
    (outline) => {
      const p = pool(outline, { centre: [1.3, 1.1], radiusM: 2.5, edgeDepthM: 0.7, depthM: 1.9 })
      for (const level of [0.2, -0.35, -0.72, -1.2, -1.7]) {
        const h = 1e-4
        const slope = (volumeAtLevel(p, level + h).volumeM3 - volumeAtLevel(p, level - h).volumeM3) / (2 * h)
        expect(Math.abs(slope - measure(p, level).waterSurfaceM2)).toBeLessThan(1e-6)
      }
    },
  )

  it('is the same wherever it lies, turned and mirrored, and six decimals of it at map coordinates', () => {
    const base = measure(pool(BEAN, { centre: [3, 2.2], radiusM: 1.7, edgeDepthM: 0.7, depthM: 1.9 }), -0.9)
    for (const [t, digits] of [
      [{ a: 0.6, b: 0.8, c: -0.8, d: 0.6, e: 7, f: -3 }, 1e-12],
      [{ a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 }, 1e-12],
      [{ a: 1, b: 0, c: 0, d: 1, e: 500000, f: 5000000 }, 1e-7],
    ] as const) {
      const at = transformPath({ start: [3, 2.2], segments: [] }, t).start
      const m = measure(pool(transformPath(BEAN, t), { centre: at, radiusM: 1.7, edgeDepthM: 0.7, depthM: 1.9 }), -0.9)
      expect(relative(m.volumeM3, base.volumeM3)).toBeLessThan(digits)
      expect(relative(m.wetted.totalM2, base.wetted.totalM2)).toBeLessThan(digits)
      expect(relative(m.perimeterM, base.perimeterM)).toBeLessThan(digits)
    }
  })

  it('adds up when the outline is cut in two through it', () => {
    const parts = { centre: [0.3, 0.2] as const, radiusM: 2.5, edgeDepthM: 0.7, depthM: 1.9 }
    for (const form of ['cap', 'cone'] as const)
      for (const level of [0, -0.8, -1.5]) {
        const v = (outline: Path) => measure(pool(outline, { ...parts, form }), level)
        const whole = v(box(-3, -3, 3, 3))
        const halves = [v(box(-3, -3, 0.7, 3)), v(box(0.7, -3, 3, 3))]
        expect(relative(halves[0]!.volumeM3 + halves[1]!.volumeM3, whole.volumeM3)).toBeLessThan(1e-12)
        expect(relative(halves[0]!.wetted.floorM2 + halves[1]!.wetted.floorM2, whole.wetted.floorM2)).toBeLessThan(
          1e-12,
        )
      }
  })
})

describe('features over a hollow', () => {
  it('rule within the circle where it is deeper than they are, and face nothing there', () => {
    // A plate at 1 m over all of a cone from 0.5 m at ρ = 3 to 2 m: it rules within ρ = 2.
    const p = pool(circle(0, 0, 3), { form: 'cone', edgeDepthM: 0.5, depthM: 2 }, [
      { kind: 'shelf', path: box(-4, -4, 4, 4), depthM: 1 },
    ])
    const m = measure(p, 0)
    expect(relative(m.volumeM3, Math.PI * 4 + Math.PI * (2 * (9 - 4) - (27 - 8) / 3))).toBeLessThan(1e-13)
    expect(relative(m.wetted.featureM2, 4 * Math.PI)).toBeLessThan(1e-13)
    expect(m.wetted.riserM2).toBe(0)
    expect(relative(m.perimeterM, 6 * Math.PI)).toBeLessThan(1e-13)
    // The plate itself dry: only what stands higher is left, which is dry too.
    expect(measure(p, -1).volumeM3).toBe(0)
    // A little water on the plate stands in a disc.
    const low = measure(p, -0.9)
    expect(relative(low.perimeterM, 2 * Math.PI * 2.2)).toBeLessThan(1e-12)
  })

  it('have risers down to the hollow', () => {
    // A round block at 0.4 m in the middle of a cap: its riser is a cylinder.
    const p = pool(circle(0, 0, 3), { edgeDepthM: 0.5, depthM: 1.5 }, [
      { kind: 'roundSteps', centre: [0, 0], treads: [[1, 0.4]] },
    ])
    const m = measure(p, 0)
    const at1 = 0.5 + Math.sqrt(25 - 1) - 4
    const under = cap(1, 3) - (Math.PI * (2 * 125 - 2 * 24 ** 1.5)) / 3 + Math.PI * 4 + Math.PI * 0.5 * 8
    expect(relative(m.wetted.riserM2, 2 * Math.PI * (at1 - 0.4))).toBeLessThan(1e-13)
    expect(relative(m.volumeM3, under + 0.4 * Math.PI)).toBeLessThan(1e-12)
    expect(depthAt(p, 0.5, 0.5)?.part).toBe('feature')
    expect(depthAt(p, 1.5, 1)?.slope).toBeCloseTo(Math.hypot(1.5, 1) / Math.sqrt(25 - 3.25), 13)
  })

  it('agree with a plain sum over the plan: shelf, steps and bench across the rim', () => {
    const floor = dish({ centre: [2, 2], radiusM: 1.8, edgeDepthM: 0.7, depthM: 1.9 })
    const features: Feature[] = [
      { kind: 'shelf', path: circle(3.2, 2.6, 1.1), depthM: 1.2 },
      {
        kind: 'steps',
        path: box(0, 1, 2, 2.4),
        axis: { from: [0, 1], to: [2, 1] },
        treads: [
          [0, 0.3],
          [0.9, 1],
          [1.6, 1.6],
        ],
      },
      { kind: 'bench', along: { fromSegment: 0, toSegment: 1 }, widthM: 0.7, depthM: 0.45 },
    ]
    const p = divided(shape(box(0, 0, 4.5, 4), { floor, features }))
    const ruled = (x: number, y: number): number => {
      let d = defined(floor, x, y)
      if (Math.hypot(x - 3.2, y - 2.6) < 1.1) d = Math.min(d, 1.2)
      if (x < 2 && y > 1 && y < 2.4) d = Math.min(d, x < 0.9 ? 0.3 : x < 1.6 ? 1 : 1.6)
      if (y < 0.7 || x > 3.8) d = Math.min(d, 0.45)
      return d
    }
    for (const level of [0, -0.4, -0.8, -1.3]) {
      const sum = midpoint((x, y) => Math.max(0, ruled(x, y) + level), [0, 0, 4.5, 4], 1350, 1200)
      expect(Math.abs(measure(p, level).volumeM3 - sum)).toBeLessThan(2e-4)
    }
    for (const [x, y] of [
      [0.5, 2],
      [2, 2.1],
      [3.3, 2.6],
      [2.2, 3.4],
      [4.2, 3],
      [1.2, 3.9],
    ] as const)
      expect(depthAt(p, x, y)?.depthM).toBeCloseTo(ruled(x, y), 12)
    expect(buriedFeatures(p)).toEqual([])
  })
})

describe('a ramp over a hollow', () => {
  const axis = { from: [-3, -1], to: [3, 1] } as const
  const run = Math.hypot(6, 2)
  const cases: [string, Parts, number, number][] = [
    ['an ellipse in a cap', { edgeDepthM: 0.8, depthM: 1.9 }, 0.9, 1.7],
    ['a piece of an ellipse, open to the rim', { edgeDepthM: 0.8, depthM: 1.9 }, 0.3, 1.6],
    ['an ellipse on a mound', { edgeDepthM: 1.9, depthM: 0.7 }, 1, 1.8],
    ['an ellipse in a cone', { form: 'cone', edgeDepthM: 0.6, depthM: 2 }, 1, 1.5],
    ['a hyperbola in a cone', { form: 'cone', edgeDepthM: 1, depthM: 1.3 }, 0.2, 1.9],
    ['two rays from the tip of a cone', { form: 'cone', edgeDepthM: 1, depthM: 1.3 }, 0.5, 2.1],
    ['a hyperbola on a mound', { form: 'cone', edgeDepthM: 1.4, depthM: 1 }, 0.2, 1.9],
  ]
  it.each(cases)('crosses it along %s, without a step', (_, parts, fromDepthM, toDepthM) => {
    const floor = dish({ centre: [0.2, -0.1], radiusM: 2, ...parts })
    const ramp: Feature = { kind: 'ramp', path: box(-5, -5, 5, 5), axis, fromDepthM, toDepthM }
    const p = divided(shape(box(-3, -2.5, 3, 2.5), { floor, features: [ramp] }))
    const ruled = (x: number, y: number): number => {
      const s = ((x + 3) * 6 + (y + 1) * 2) / run / run
      return Math.min(defined(floor, x, y), fromDepthM + (toDepthM - fromDepthM) * Math.min(1, Math.max(0, s)))
    }
    const n = 400
    let off = 0
    for (let i = 0; i < 23; i++)
      for (let k = 0; k < 19; k++) {
        const [x, y] = [-2.9 + (5.8 * i) / 22, -2.4 + (4.8 * k) / 18]
        off = Math.max(off, Math.abs((depthAt(p, x, y)?.depthM ?? Number.NaN) - ruled(x, y)))
      }
    expect(off).toBeLessThan(1e-7)
    for (const level of [0, -0.5, -1.05]) {
      const m = measure(p, level)
      const sum = midpoint((x, y) => Math.max(0, ruled(x, y) + level), [-3, -2.5, 3, 2.5], n, n)
      expect(Math.abs(m.volumeM3 - sum)).toBeLessThan(1e-4)
      expect(m.wetted.riserM2).toBeLessThan(1e-6)
    }
  })

  it('is exact where it is level: the curve is the circle of that depth', () => {
    const floor = dish({ edgeDepthM: 0.8, depthM: 1.9 })
    const [ramp, shelf] = [1.3, 1.3].map(
      (depth, i): Feature =>
        i === 0
          ? { kind: 'ramp', path: box(-5, -5, 5, 5), axis, fromDepthM: depth, toDepthM: depth }
          : { kind: 'shelf', path: box(-5, -5, 5, 5), depthM: depth },
    )
    const v = (feature: Feature) => measure(divided(shape(circle(0, 0, 4), { floor, features: [feature] })), 0).volumeM3
    expect(relative(v(ramp!), v(shelf!))).toBeLessThan(1e-13)
  })
})
