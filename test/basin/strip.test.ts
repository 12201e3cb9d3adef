import { describe, expect, it } from 'vitest'
import { fansOf, rayAt } from '../../src/basin/cove-fan.ts'
import { type Reach, reachOf } from '../../src/basin/cove-reach.ts'
import { cellAt } from '../../src/basin/depth-at.ts'
import { type BasinShape, measure, type Wall } from '../../src/basin/index.ts'
import { LONG_RULE, SHORT_RULE } from '../../src/basin/kronrod.ts'
import type { Partition } from '../../src/basin/partition-types.ts'
import { integratePattern } from '../../src/basin/pattern-integral.ts'
import { nearestShore } from '../../src/basin/shore-distance.ts'
import { stripOf } from '../../src/basin/strip.ts'
import { planFans } from '../../src/basin/strip-plan.ts'
import { newStripRay, rayIn } from '../../src/basin/strip-ray.ts'
import { BEAN, box, circle, DEMO, divided, polygon, relative, shape } from './shapes.ts'

const ELL = polygon([0, 0], [9, 0], [9, 4], [4, 4], [4, 7], [0, 7])
const cove = (radiusM: number): Wall => ({ kind: 'cove', radiusM })

/** Plan area that the rays of a strip sweep. */
function sweptM2(p: Partition): number {
  const ray = newStripRay()
  let sum = 0
  for (const piece of stripOf(p).pieces)
    for (let i = 0; i < LONG_RULE.at.length; i++) {
      rayIn(p, piece, piece.t0 + (piece.t1 - piece.t0) * LONG_RULE.at[i]!, ray)
      sum += LONG_RULE.kronrod[i]! * (piece.t1 - piece.t0) * (ray.h0 * ray.end + (ray.h1 * ray.end ** 2) / 2)
    }
  return sum
}

const POOLS: Record<string, BasinShape> = {
  demo: { ...DEMO, wall: cove(0.3) },
  'demo, wide': { ...DEMO, wall: { kind: 'battered', run: 0.6 } },
  ell: shape(ELL, { wall: cove(0.5), features: [{ kind: 'shelf', path: box(3, 3, 5, 5), depthM: 0.4 }] }),
  'ring with steps': shape(circle(0, 0, 4), {
    islands: [circle(0.5, 0.7, 1)],
    wall: cove(0.8),
    features: [
      {
        kind: 'roundSteps',
        centre: [3.4, 2],
        treads: [
          [0.6, 0.3],
          [1, 0.6],
          [1.3, 0.9],
        ],
      },
    ],
  }),
  'narrower than its walls': shape(BEAN, { wall: cove(3) }),
  'channel with a shelf across': shape(box(0, 0, 6, 1), {
    wall: cove(0.7),
    features: [{ kind: 'shelf', path: polygon([2, -1], [2.5, -1], [3.5, 2], [3, 2]), depthM: 0.4 }],
  }),
}

describe('the strip along the shores', () => {
  it('is nothing where walls are upright', () => {
    expect(stripOf(divided(shape(ELL))).pieces).toEqual([])
  })

  it('has the area of Steiner’s formula: P n − K n²/2, K = 10 − π/2 for an L, 0 for a ring', () => {
    const n = 0.5
    expect(relative(sweptM2(divided(shape(ELL, { wall: cove(n) }))), 32 * n - (5 - Math.PI / 4) * n * n)).toBeLessThan(
      1e-12,
    )
    const ring = shape(circle(0, 0, 4), { islands: [circle(0.5, 0.7, 1)], wall: cove(n) })
    expect(relative(sweptM2(divided(ring)), 10 * Math.PI * n)).toBeLessThan(1e-12)
  })

  it('is the whole water where it is wider than that', () => {
    for (const outline of [ELL, BEAN, box(0, 0, 7, 2)]) {
      const p = divided(shape(outline, { wall: cove(5) }))
      const whole = p.cells.reduce((sum, cell) => sum + cell.areaM2, 0)
      expect(relative(sweptM2(p), whole)).toBeLessThan(1e-5)
    }
  })

  it.each(Object.entries(POOLS))(
    '%s: rays cross what their piece says, in its cells, and end where another shore is as near',
    (_, s) => {
      const p = divided(s)
      const { widthM, pieces } = stripOf(p)
      const ray = newStripRay()
      const foot = { t: 0, x: 0, y: 0, distance: 0 }
      expect(pieces.length).toBeGreaterThan(0)
      for (const piece of pieces)
        for (const share of [0.02, 0.3, 0.5, 0.77, 0.98]) {
          rayIn(p, piece, piece.t0 + (piece.t1 - piece.t0) * share, ray)
          const at = (n: number): [number, number] => [ray.x + n * ray.nx, ray.y + n * ray.ny]
          const stops = [0, ...ray.at, ray.end]
          for (let i = 1; i < stops.length; i++) {
            expect(stops[i]).toBeGreaterThanOrEqual(stops[i - 1]! - 1e-9)
            // Not so near to an edge that rounding decides.
            if (stops[i]! - stops[i - 1]! < 1e-6) continue
            const found = cellAt(p, ...at((stops[i]! + stops[i - 1]!) / 2))
            expect(found).toBe(piece.cells[i - 1])
          }
          nearestShore(p, ...at(ray.end), 2 * widthM, foot)
          expect(Math.abs(foot.distance - ray.end)).toBeLessThan(1e-8)
        }
    },
  )
})

describe('rays that end where an edge lies', () => {
  // All rays end at one centre, and an edge runs through it: rounding alone tells whether they cross it.
  it('are cut where something changes, not wherever rounding turns', () => {
    for (let i = 0; i < 40; i++) {
      const turn = 0.1 + (Math.PI * i) / 40
      const [x, y] = [14.5, -5.75]
      const across = (along: number, beside: number): [number, number] => [
        x + along * Math.cos(turn) - beside * Math.sin(turn),
        y + along * Math.sin(turn) + beside * Math.cos(turn),
      ]
      const shelf = polygon(across(-1, 0), across(1, 0), across(1, 1), across(-1, 1))
      const p = divided(
        shape(circle(x, y, 0.5), { wall: cove(0.9), features: [{ kind: 'shelf', path: shelf, depthM: 0.4 }] }),
      )
      expect(stripOf(p).pieces.length, `turned by ${turn}`).toBeLessThan(9)
      expect(relative(sweptM2(p), Math.PI / 4)).toBeLessThan(1e-9)
    }
  })
})

describe('rays over the triangles of a floor, in a corner between a line and an arc', () => {
  // The stretches of the arc go on smoothly: where one takes over from the next both are as near to some rays but for rounding.
  const p = divided(
    shape(
      {
        start: [4, 0],
        segments: [
          { to: [2.5, 3.1], c1: [3.6, 1.1], c2: [3.1, 2.1] },
          { to: [-0.87, 3.8] },
          { to: [-2.8, 1.3], bulge: 0.14 },
          { to: [-3.6, -1.7] },
          { to: [-0.67, -2.9] },
          { to: [2.5, -3.1] },
        ],
      },
      {
        floor: {
          kind: 'soundings',
          edgeDepthM: 0.6,
          points: [
            [0.62, 0.78, 1.5],
            [-0.33, -1.46, 1.2],
          ],
        },
        wall: { kind: 'battered', run: 0.094 },
      },
    ),
  )

  it('cross all the edges of their piece, in order, wherever in it they stand', () => {
    const ray = newStripRay()
    for (const piece of stripOf(p).pieces)
      for (const share of [0.05, 0.3, 0.5, 0.7, 0.95]) {
        rayIn(p, piece, piece.t0 + (piece.t1 - piece.t0) * share, ray)
        const stops = [0, ...ray.at, ray.end]
        for (let i = 1; i < stops.length; i++)
          expect(stops[i]! > stops[i - 1]!, `${piece.edges} at ${share}`).toBe(true)
      }
  })
})

describe('rays of a wide strip beside many stretches of shore', () => {
  it('end where each of them would end if it were the first that is looked at', () => {
    const p = divided(
      shape(BEAN, {
        floor: { kind: 'soundings', edgeDepthM: 0.9, points: [[3, 2.2, 1.5]] },
        wall: { kind: 'battered', run: 2 },
      }),
    )
    const fans = fansOf(p)
    const { widthM } = stripOf(p)
    const ray = newStripRay()
    const [inTurn, alone] = [0, 0].map((): Reach => ({ n: 0, by: 0, how: 0 }))
    let most = 0
    for (const { fan, rivals } of planFans(p, fans, widthM)) {
      most = Math.max(most, rivals.length)
      for (let i = 1; i < 20; i++) {
        rayAt(fans, fan, fan.t0 + ((fan.t1 - fan.t0) * i) / 20, ray)
        reachOf(fans, fan, rivals, ray, widthM, inTurn!)
        reachOf(fans, fan, [...rivals], ray, widthM, alone!)
        expect([inTurn!.by, inTurn!.how]).toEqual([alone!.by, alone!.how])
        expect(relative(inTurn!.n, alone!.n)).toBeLessThan(1e-11)
      }
    }
    expect(most).toBeGreaterThan(16)
  })
})

describe('an integral along a shore', () => {
  it('has no sure error where a value is no number, wherever that lies', () => {
    for (const gap of [0.03, 0.5, 0.97]) {
      const sums = new Float64Array(2)
      const addAt = (t: number, out: Float64Array): number => {
        out[0]! += Math.abs(t - gap) < 0.02 ? Number.NaN : t
        out[1]! += 1
        return 0
      }
      const error = integratePattern({ addAt, scales: Float64Array.of(1, 1) }, 0, 1, false, false, sums)
      expect([error, sums[0]]).toEqual([Number.NaN, Number.NaN])
      expect(sums[1]).toBeCloseTo(1, 14)
    }
  })
})

describe('Kronrod’s rules', () => {
  it.each([
    { name: '15 points about 7', rule: LONG_RULE, exactTo: 22, gaussTo: 13 },
    { name: '7 points about 3', rule: SHORT_RULE, exactTo: 11, gaussTo: 5 },
  ])(
    '$name: exact for polynomials up to degree $exactTo, its Gauss rule up to $gaussTo',
    ({ rule, exactTo, gaussTo }) => {
      const moment = (weights: Float64Array, degree: number): number =>
        weights.reduce((sum, w, i) => sum + w * rule.at[i]! ** degree, 0) * (degree + 1)
      for (let degree = 0; degree <= exactTo; degree++) expect(moment(rule.kronrod, degree)).toBeCloseTo(1, 13)
      for (let degree = 0; degree <= gaussTo; degree++) expect(moment(rule.gauss, degree)).toBeCloseTo(1, 13)
      expect(Math.abs(moment(rule.gauss, gaussTo + 1) - 1)).toBeGreaterThan(1e-9)
    },
  )
})

describe('a partition that is asked again', () => {
  it('gives at every level what a fresh one gives, whatever was asked before', () => {
    for (const s of Object.values(POOLS)) {
      const p = divided(s)
      for (const level of [0.2, 0, -0.3, -0.9, -0.3, 0.05]) {
        const fresh = measure(divided(s), level)
        const again = measure(p, level)
        expect(relative(again.volumeM3, fresh.volumeM3)).toBeLessThan(1e-12)
        expect(relative(again.wetted.totalM2, fresh.wetted.totalM2)).toBeLessThan(1e-9)
        expect(Math.abs(again.perimeterM - fresh.perimeterM)).toBeLessThan(1e-8)
      }
    }
  })
})
