import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { MOST_CONTACTS, MOST_PLACES } from '../../src/basin/contact-problems.ts'
import { areaOf, type BasinShape, measure, type Path, partition, waterAt } from '../../src/basin/index.ts'
import { MAX_NUMBER, MIN_LENGTH_M, UNTANGLE_GAP } from '../../src/basin/tolerance.ts'
import { box, circle, divided, polygon, relative, shape } from './shapes.ts'

function codeOf(s: BasinShape): string {
  const result = partition(s)
  return result.ok ? 'none' : `${result.problem.code} @ ${result.problem.path}`
}

const square = box(0, 0, 6, 4)

describe('a cusp', () => {
  it('is measured: two arcs that meet in a point without an angle', () => {
    // A circle of 2 less one of 1 that touches it from inside: 4π − π.
    const crescent: Path = {
      start: [2, 0],
      segments: [
        { to: [-2, 0], bulge: 1 },
        { to: [2, 0], bulge: 1 },
        { to: [0, 0], bulge: -1 },
        { to: [2, 0], bulge: -1 },
      ],
    }
    // The line passes the point of the crescent twice, so it touches itself there.
    expect(codeOf(shape(crescent))).toBe('crosses-itself @ outline.segments[0]')
    const half: Path = {
      start: [0, 0],
      segments: [
        { to: [4, 0], bulge: -1 },
        { to: [2, 0], bulge: 1 },
        { to: [0, 0], bulge: 1 },
      ],
    }
    // A half circle of 2 over two half circles of 1: at (0, 0) and (4, 0) the line turns straight back on itself.
    expect(relative(measure(divided(shape(half)), 0).waterSurfaceM2, Math.PI)).toBeLessThan(1e-12)
    expect(measure(divided(shape(half)), 0).errorBoundM3).toBeLessThan(1e-9)
  })

  it('is measured where a cubic stops and turns back', () => {
    const heart: Path = {
      start: [0, 0],
      segments: [{ to: [0, 0], c1: [6, 6], c2: [-6, 6] }, { to: [1, -1] }],
    }
    expect(codeOf(shape(heart))).not.toBe('none')
  })
})

describe('the size of a basin', () => {
  const pool = (k: number, x = 0, y = 0): BasinShape => {
    const at = (u: number, v: number): [number, number] => [x + k * u, y + k * v]
    const outline: Path = {
      start: at(0, 0),
      segments: [
        { to: at(0.8, 0), bulge: -0.2 },
        { to: at(0.8, 0.4), c1: at(1.1, 0), c2: at(1.1, 0.4) },
        { to: at(0.3, 0.4) },
        { to: at(0, 0.2), bulge: 0.3 },
      ],
    }
    return shape(outline, {
      floor: {
        kind: 'profile',
        axis: { from: at(0, 0), to: at(1, 0.1) },
        stations: [
          [0, 0.1 * k],
          [0.4 * k, 0.15 * k],
          [0.9 * k, 0.3 * k],
        ],
      },
      features: [
        {
          kind: 'shelf',
          path: { start: at(-0.1, 0.2), segments: [at(0.2, 0.2), at(0.2, 0.6), at(-0.1, 0.6)].map((to) => ({ to })) },
          depthM: 0.04 * k,
        },
      ],
    })
  }
  const truth = measure(divided(pool(1)), 0)

  it.each([1e-3, 1, 10, 1e3, 9e3])('from a millimetre to ten kilometres changes nothing but the scale: %d m', (k) => {
    const m = measure(divided(pool(k)), 0)
    expect(relative(m.volumeM3, truth.volumeM3 * k ** 3)).toBeLessThan(1e-12)
    expect(relative(m.waterSurfaceM2, truth.waterSurfaceM2 * k ** 2)).toBeLessThan(1e-12)
    expect(relative(m.wetted.totalM2, truth.wetted.totalM2 * k ** 2)).toBeLessThan(1e-12)
    expect(relative(m.perimeterM, truth.perimeterM * k)).toBeLessThan(1e-12)
    expect(relative(m.maxDepthM, truth.maxDepthM * k)).toBeLessThan(1e-12)
  })

  it('at map coordinates is right to what they can hold, a nanometre of place', () => {
    for (const k of [1, 10, 500]) {
      const m = measure(divided(pool(k, 500_000, 5_000_000)), 0)
      const here = measure(divided(pool(k)), 0)
      // Places at 5 · 10⁶ m are rounded to 5 · 10⁻¹⁰ m each.
      const bound = 2e-9 * here.perimeterM * here.maxDepthM
      expect(Math.abs(m.volumeM3 - here.volumeM3)).toBeLessThan(bound)
      expect(m.errorBoundM3).toBeLessThan(1e-3 * here.volumeM3)
    }
  })
})

describe('an outline of very many lines', () => {
  const many = (count: number, place: (i: number) => readonly [number, number]): Path =>
    polygon(...Array.from({ length: count }, (_, i) => place(i)))
  const CASES: [string, Path][] = [
    [
      'round and smooth',
      many(100_000, (i) => {
        const a = (2 * Math.PI * i) / 100_000
        const r = 50 + 5 * Math.sin(5 * a) + 0.3 * Math.sin(97 * a)
        return [r * Math.cos(a), r * Math.sin(a)]
      }),
    ],
    [
      'toothed all round',
      many(100_000, (i) => {
        const a = (2 * Math.PI * i) / 100_000
        const r = 50 + (i % 2) * 0.01
        return [r * Math.cos(a), r * Math.sin(a)]
      }),
    ],
    [
      'a comb whose teeth lie abreast',
      many(100_000, (i) => (i < 50_000 ? [(i % 2) / 2, i / 1000] : [20 + (i % 2) / 2, (100_000 - i) / 1000])),
    ],
  ]

  it.each(CASES)('is measured in seconds: 100,000, %s', (_, outline) => {
    const start = performance.now()
    const p = divided(
      shape(outline, {
        floor: {
          kind: 'profile',
          axis: { from: [-50, 0], to: [50, 3] },
          stations: [
            [0, 1],
            [40, 1.4],
            [70, 3],
          ],
        },
      }),
    )
    const m = measure(p, 0)
    // A generous limit, so that a slow machine doesn't fail: it takes about one second.
    expect(performance.now() - start).toBeLessThan(20_000)
    expect(m.volumeM3).toBeGreaterThan(0)
    expect(m.errorBoundM3).toBeLessThan(1e-6 * m.volumeM3)
    expect(relative(m.waterSurfaceM2, Math.abs(areaOf(outline)))).toBeLessThan(1e-10)
  })

  it('that is a scribble is a problem at once, with places but not with all of them', () => {
    const scribble = many(2000, (i) => [(i * 7919) % 1013, (i * 104_729) % 997])
    const start = performance.now()
    const result = partition(shape(scribble))
    expect(performance.now() - start).toBeLessThan(5000)
    expect(!result.ok && result.problem.code).toBe('crosses-itself')
    expect(!result.ok && result.problem.at?.length).toBe(1000)
  })
})

describe('edges that lie on each other', () => {
  it('are right where a shelf shares a wall, an arc, a cubic, or a corner with the outline', () => {
    const arc: Path = { start: [0, 0], segments: [{ to: [4, 0] }, { to: [4, 4], bulge: 1 }, { to: [0, 4] }] }
    const lune: Path = { start: [4, 0], segments: [{ to: [4, 4], bulge: 1 }] }
    const m = measure(divided(shape(arc, { features: [{ kind: 'shelf', path: lune, depthM: 0.5 }] })), 0)
    expect(relative(m.volumeM3, 16 * 1.5 + 2 * Math.PI * 0.5)).toBeLessThan(1e-13)
    expect(relative(m.wetted.riserM2, 4)).toBeLessThan(1e-13)
    const half = measure(
      divided(
        shape(arc, {
          features: [
            {
              kind: 'shelf',
              path: { start: [6, 2], segments: [{ to: [4, 4], bulge: Math.tan(Math.PI / 8) }, { to: [4, 2] }] },
              depthM: 0.5,
            },
          ],
        }),
      ),
      0,
    )
    expect(relative(half.volumeM3, 16 * 1.5 + Math.PI * 1.5 + Math.PI * 0.5)).toBeLessThan(1e-12)
  })

  it('are right where features share an edge or only a corner', () => {
    const m = measure(
      divided(
        shape(square, {
          features: [
            { kind: 'shelf', path: box(0, 0, 2, 2), depthM: 0.5 },
            { kind: 'shelf', path: box(2, 0, 4, 2), depthM: 0.7 },
            { kind: 'shelf', path: box(4, 2, 6, 4), depthM: 0.9 },
          ],
        }),
      ),
      0,
    )
    expect(m.volumeM3).toBeCloseTo(36 - 4 - 3.2 - 2.4, 12)
    expect(m.wetted.riserM2).toBeCloseTo(2 * 0.2 + 2 * 1 + 2 * 0.8 + 2 * 0.8 + 2 * 0.6 + 2 * 0.6, 12)
  })

  it('are right where circles touch from inside, and where a line touches a circle', () => {
    const m = measure(
      divided(shape(circle(0, 0, 3), { features: [{ kind: 'shelf', path: circle(2, 0, 1), depthM: 0.5 }] })),
      0,
    )
    expect(relative(m.volumeM3, 9 * Math.PI * 1.5 - Math.PI)).toBeLessThan(1e-12)
    const line = measure(
      divided(
        shape(circle(0, 0, 3), {
          features: [
            { kind: 'shelf', path: box(-1, -1, 1, 3), depthM: 0.5 },
            { kind: 'shelf', path: box(3, -1, 4, 1), depthM: 0.5 },
          ].slice(0, 1) as never,
        }),
      ),
      0,
    )
    const above = Math.sqrt(8) + 9 * Math.asin(1 / 3)
    expect(relative(line.volumeM3, 9 * Math.PI * 1.5 - (2 + above))).toBeLessThan(1e-9)
  })
})

describe('a wall wider than the water', () => {
  it('is right by its law: a round pool of radius R under a batter k is a cone R/k deep', () => {
    const p = divided(shape(circle(0, 0, 2), { wall: { kind: 'battered', run: 5 } }))
    const m = measure(p, 0)
    expect(relative(m.volumeM3, (Math.PI * 4 * 0.4) / 3)).toBeLessThan(1e-9)
    expect(m.maxDepthM).toBeCloseTo(0.4, 9)
    expect(waterAt(p, -0.41).ok).toBe(false)
  })

  it('is right by its law: a long box under a batter is a roof upside down, hipped at both ends', () => {
    // Inset by n the box is (l − 2n)(w − 2n): V = ∫ over n from 0 to w/2, divided by k.
    const [l, w, k] = [8, 2, 2]
    const m = measure(divided(shape(box(0, 0, l, w), { wall: { kind: 'battered', run: k } })), 0)
    expect(relative(m.volumeM3, (w * w * (3 * l - w)) / 12 / k)).toBeLessThan(1e-9)
  })

  it('is right by its law: a cove of twice the radius of a round pool', () => {
    // d = 1.5 − r + √(r² − (r − n)²), n = R − ρ; ∫ 2πρ d dρ from 0 to R with R = 0.5 and r = 1, by Simpson's rule here.
    const depth = (rho: number): number => 0.5 + Math.sqrt(1 - (0.5 + rho) ** 2)
    let sum = 0
    const n = 20_000
    for (let i = 0; i <= n; i++) {
      // ρ = ½ sin²θ takes the root at the wall away.
      const theta = (Math.PI / 2) * (i / n)
      const rho = 0.5 * Math.sin(theta) ** 2
      const weight = i === 0 || i === n ? 1 : i % 2 ? 4 : 2
      sum += weight * 2 * Math.PI * rho * depth(rho) * Math.sin(theta) * Math.cos(theta)
    }
    const m = measure(divided(shape(circle(0, 0, 0.5), { wall: { kind: 'cove', radiusM: 1 } })), 0)
    expect(relative(m.volumeM3, (sum * (Math.PI / 2)) / (3 * n))).toBeLessThan(1e-9)
  })
})

describe('what MODEL.md says of bad input', () => {
  const text = readFileSync(new URL('../../src/basin/MODEL.md', import.meta.url), 'utf8')

  it.each<[string, RegExp, number]>([
    ['the largest number', /a number beyond \*\*([\de]+)\*\*/, MAX_NUMBER],
    ['the shortest step', /nearer than \*\*([\de-]+)\*\* m/, MIN_LENGTH_M],
    ['the gap of an untangled line', /gap of \*\*([\d.]+)\*\* of the figure/, UNTANGLE_GAP],
    ['the places at most', /places, \*\*(\d+)\*\* of them/, MOST_PLACES],
    ['the meetings of a scribble', /given up at \*\*(\d+)\*\* meetings/, MOST_CONTACTS],
  ])('is what the program does: %s', (_, pattern, value) => {
    expect(Number(pattern.exec(text)?.[1])).toBe(value)
  })
})
