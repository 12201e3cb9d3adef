import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type BasinShape, type Floor, flatten, measure, type Path, type Tolerance } from '../../src/basin/index.ts'
import { BEAN, box, circle, divided, polygon, relative, shape } from './shapes.ts'

const TEXT = readFileSync(new URL('../../src/basin/MODEL.md', import.meta.url), 'utf8')

/** The number printed in bold after some words of the model's text. */
function printed(before: string): number {
  const at = TEXT.indexOf(before)
  const match = /\*\*([\d.e-]+)/.exec(TEXT.slice(at + before.length))
  if (at < 0 || !match) throw new Error(before)
  return Number(match[1])
}

const sloped = (tolerance: Tolerance) =>
  measure(
    divided(
      shape(box(0, 0, 10, 5), {
        floor: {
          kind: 'profile',
          axis: { from: [0, 0], to: [10, 0] },
          stations: [
            [0, 1],
            [10, 2],
          ],
        },
        tolerance,
      }),
    ),
    0,
  )

describe('the model’s text', () => {
  it('says what a cap holds', () => {
    const floor = { kind: 'dish', form: 'cap', centre: [0, 0], radiusM: 3, edgeDepthM: 0, depthM: 1 } as const
    const m = measure(divided(shape(circle(0, 0, 3), { floor })), 0)
    expect(relative(m.volumeM3, printed('A cap 1 m deep and 6 m wide holds'))).toBeLessThan(1e-7)
    expect(relative(m.wetted.totalM2, printed('6 m wide holds **14.660766 m³** over'))).toBeLessThan(1e-7)
  })

  it('states the grain that partitions use', () => {
    expect(divided(shape(box(0, 0, 3, 4))).grainM / 5).toBeCloseTo(printed('is one point or one curve:'), 20)
  })

  it('states what Gauss leaves on arcs', () => {
    const p = divided(
      shape(circle(0, 0, 2), {
        floor: {
          kind: 'profile',
          axis: { from: [-2, 0], to: [2, 0] },
          stations: [
            [0, -0.4],
            [4, 1.6],
          ],
        },
      }),
    )
    // Half-dry ungula: with R = 2, slope k and dry chord at x = a, V = k(⅔ (R² − a²)^{3/2} − a (R² acos(a/R) − a √(R² − a²))).
    const a = -2 + 0.4 / 0.5
    const w = Math.sqrt(4 - a * a)
    const truth = 0.5 * ((2 / 3) * w ** 3 - a * (4 * Math.acos(a / 2) - a * w))
    expect(relative(measure(p, 0).volumeM3, truth)).toBeLessThan(printed('12 points leave less than'))
  })

  it('states the factors of the tube formula', () => {
    expect(1 - Math.PI / 4).toBeCloseTo(printed('The factors are\n'), 10)
    expect(5 / 6 - Math.PI / 4).toBeCloseTo(printed('The factors are\n**0.2146018366** and'), 10)
  })

  it('states what an L with leaning walls holds', () => {
    const ell = polygon([0, 0], [9, 0], [9, 4], [4, 4], [4, 7], [0, 7])
    const p = divided(shape(ell, { floor: { kind: 'flat', depthM: 1.6 }, wall: { kind: 'battered', run: 0.25 } }))
    // A(n) = 48 − 32 n + (5 − π/4) n² down to n = 0.4, as in the golden case BATTER-L.
    const truth = (48 * 0.4 - 16 * 0.4 ** 2 + ((5 - Math.PI / 4) * 0.4 ** 3) / 3) / 0.25
    expect(truth).toBeCloseTo(printed('with a run of 0.25, holds'), 8)
    expect(relative(measure(p, 0).volumeM3, truth)).toBeLessThan(1e-13)
  })

  it('states the bound of the error for a common pool', () => {
    const m = sloped({ planM: 0, depthM: 0 })
    expect(m.errorBoundM3).toBeGreaterThan(0)
    expect(m.errorBoundM3).toBeLessThan(printed('m pool it is below'))
  })

  it('states the uncertainty of a sloping pool, and that depths and nodes add by their squares', () => {
    const both = sloped({ planM: 0.02, depthM: 0.02 }).sigmaM3
    const depths = sloped({ planM: 0, depthM: 0.02 }).sigmaM3
    const nodes = sloped({ planM: 0.02, depthM: 0 }).sigmaM3
    expect(both).toBeCloseTo(printed('in plan and depth σ is'), 4)
    expect(depths).toBeCloseTo(printed('depths alone'), 4)
    expect(nodes).toBeCloseTo(printed('nodes alone'), 4)
    // Two stations rule half the surface each: 25 m² · 0.02 m · √2.
    expect(depths).toBeCloseTo(25 * 0.02 * Math.SQRT2, 12)
    // By hand: end walls 5 m wide of depth 1 and 2, long walls ∫(1 + x/10)(1 − x/10) dx = 20/3 and ∫(1 + x/10) x/10 dx = 25/3.
    expect(nodes).toBeCloseTo(0.02 * Math.sqrt(2 * (2.5 ** 2 + 5 ** 2 + (20 / 3) ** 2 + (25 / 3) ** 2)), 12)
    expect(both).toBeCloseTo(Math.hypot(depths, nodes), 12)
    // V = L W (d₀ + d₁)/2 with 10 mm in L and W, 20 mm in each depth, all independent.
    expect(Math.hypot(0.01 * 7.5, 0.01 * 15, 0.02 * 25, 0.02 * 25)).toBeCloseTo(printed('give 75.00 ±'), 4)
  })
})

/** A number in a row of a table of the model's text, rounded up to one digit there. */
function expectRow(label: string, column: number, value: number): void {
  const row = TEXT.split('\n').find((line) => line.startsWith(`| ${label} |`))
  if (!row) throw new Error(label)
  const said = Number(row.split('|')[column + 1])
  expect(value, label).toBeLessThanOrEqual(said)
  expect(value, label).toBeGreaterThan(said / 2.1)
}

describe('the model’s table of triangulated floors', () => {
  const hopper = (edgeDepthM: number, depthM: number, path: Path): Floor => ({
    kind: 'contours',
    edgeDepthM,
    rings: [{ depthM, path }],
  })
  const soundings = (edgeDepthM: number | null): Floor => ({
    kind: 'soundings',
    edgeDepthM,
    points: [
      [5, 2, 2],
      [3, 2, 1.6],
      [6, 3, 2.2],
      [1.5, 2.5, 1.3],
    ],
  })
  const chords = (path: Path): Path => polygon(...flatten(path, 1e-5))
  const finer = (outline: Path, floor: Floor): number => measure(divided(shape(chords(outline), { floor })), 0).volumeM3
  const isAsSaid = (label: string, cases: readonly (readonly [BasinShape, number])[]): void => {
    const found = cases.map(([s, truth]) => {
      const { volumeM3, errors } = measure(divided(s), 0)
      return { off: relative(volumeM3, truth), bound: errors.modelM3 / truth }
    })
    expectRow(label, 1, Math.max(...found.map(({ off }) => off)))
    expectRow(label, 2, Math.max(...found.map(({ bound }) => bound)))
  }
  const ROUND = circle(0, 0, 4)

  it('says how near a cone’s frustum comes, by V = πR²a + π(b − a)(R² + Rr + r²)/3', () => {
    isAsSaid(
      "cone's frustum, radii 4 and 0.7 to 3.4 m, one centre",
      [0.7, 1.3, 2, 3.4].map((r) => [
        shape(circle(1, 2, 4), { floor: hopper(1.2, 2.4, circle(1, 2, r)) }),
        Math.PI * (16 * 1.2 + (1.2 / 3) * (16 + 4 * r + r * r)),
      ]),
    )
  })

  it('says how near a square hopper in a round pool comes, by the cones on its corners and the wedges on its sides', () => {
    const [R, a, edge, deep] = [4, 1, 1.2, 2.4]
    const cones = (Math.PI * R * R - 4 * a * R) * ((deep + 2 * edge) / 3)
    const sides = 4 * a * (R - a) * ((2 * deep + edge) / 3)
    const s = shape(ROUND, { floor: hopper(edge, deep, box(-a, -a, a, a)) })
    isAsSaid('square hopper in a round pool, closed form', [[s, cones + sides + 4 * a * a * deep]])
  })

  it('says how near floors without a closed form come to those between chords a hundred times finer', () => {
    const [aside, inBean] = [circle(1, 0.3, 2), circle(5, 2.5, 1.1)]
    isAsSaid('hopper off the middle of a round pool, against chords 100 times finer', [
      [shape(ROUND, { floor: hopper(1.2, 2.4, aside) }), finer(ROUND, hopper(1.2, 2.4, chords(aside)))],
    ])
    isAsSaid('round hopper in a freeform pool, the same', [
      [shape(BEAN, { floor: hopper(1, 2, inBean) }), finer(BEAN, hopper(1, 2, chords(inBean)))],
    ])
    for (const [known, edgeDepthM] of [
      ['known', 1],
      ['unknown', null],
    ] as const)
      isAsSaid(`four soundings in a freeform pool with its edge ${known}, the same`, [
        [shape(BEAN, { floor: soundings(edgeDepthM) }), finer(BEAN, soundings(edgeDepthM))],
      ])
  })
})

describe('the uncertainty of an outline', () => {
  it('is what moving each node by a little does to the volume', () => {
    const outline = {
      start: [0, 0],
      segments: [
        { to: [4, 0], bulge: -0.2 },
        { to: [4, 3], bulge: 0.5 },
        { to: [0, 3], c1: [3, 5], c2: [1, 3.5] },
        { to: [0, 0] },
      ],
    } as const
    const volume = (node: number, dx: number, dy: number): number => {
      const move = ([x, y]: readonly [number, number]): [number, number] => [x + dx, y + dy]
      const moved = {
        start: node === 0 ? move(outline.start) : outline.start,
        segments: outline.segments.map((s, i) => {
          const ends = (i + 1) % 4 === node
          // Handles go with their points.
          if (!('c1' in s)) return ends ? { ...s, to: move(s.to) } : s
          return { to: ends ? move(s.to) : s.to, c1: node === i ? move(s.c1) : s.c1, c2: ends ? move(s.c2) : s.c2 }
        }),
      }
      return measure(divided(shape(moved)), 0).volumeM3
    }
    const h = 1e-5
    let sum = 0
    for (let node = 0; node < 4; node++)
      for (const [dx, dy] of [
        [h, 0],
        [0, h],
      ] as const)
        sum += ((volume(node, dx, dy) - volume(node, -dx, -dy)) / (2 * h)) ** 2
    const { sigmaM3 } = measure(divided(shape(outline, { tolerance: { planM: 1, depthM: 0 } })), 0)
    expect(relative(sigmaM3, Math.sqrt(sum))).toBeLessThan(1e-7)
  })
})
