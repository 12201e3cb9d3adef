import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { areaOf, overlapOf, type Path, type Point, partition, untangle } from '../../src/basin/index.ts'
import { BEAN, box, circle, polygon, relative, shape } from './shapes.ts'

const SEED = 20261125

const codeOf = (outline: Path): string => {
  const result = partition(shape(outline))
  return result.ok ? 'sound' : result.problem.code
}

const BOW_TIE = polygon([0, 0], [6, 4], [6, 0], [0, 4])
const EIGHT_OF_ARCS: Path = {
  start: [0, 0],
  segments: [
    { to: [2, 0], bulge: -1 },
    { to: [4, 0], bulge: 1 },
    { to: [2, 0], bulge: 1 },
    { to: [0, 0], bulge: -1 },
  ],
}
const CROSSED_BEAN: Path = {
  start: [0, 2.2],
  segments: [
    { to: [4, 4.6], c1: [0, 4], c2: [1.8, 5] },
    { to: [8, 0.2], c1: [5.65, 4.3], c2: [6.4, 3.6] },
    { to: [7.6, 3.8], c1: [10.4, 4.1], c2: [10.6, 0.6] },
    { to: [0, 2.2], c1: [4.6, -0.2], c2: [0, 0] },
  ],
}

describe('an untangled line', () => {
  it.each<[string, Path, string]>([
    ['a bow tie', BOW_TIE, 'crosses-itself'],
    ['a star of five', polygon([0, 3], [2, -3], [-3, 1], [3, 1], [-2, -3]), 'crosses-itself'],
    ['a comb with four crossings', polygon([0, 0], [9, 0], [9, 3], [7, -1], [5, 3], [3, -1], [0, 3]), 'crosses-itself'],
    [
      'a figure of eight that touches in a point',
      polygon([0, 0], [3, 2], [6, 0], [6, 4], [3, 2], [0, 4]),
      'crosses-itself',
    ],
    ['a point on a side', polygon([0, 0], [6, 0], [6, 4], [3, 0], [0, 4]), 'crosses-itself'],
    ['a figure of eight of arcs', EIGHT_OF_ARCS, 'crosses-itself'],
    ['cubics that cross', CROSSED_BEAN, 'crosses-itself'],
    [
      'an arc across two lines',
      { start: [0, 0], segments: [{ to: [6, 0], bulge: -0.9 }, { to: [6, 1] }, { to: [0, 1] }] },
      'crosses-itself',
    ],
    [
      'a cubic with a loop',
      { start: [0, 0], segments: [{ to: [1, 0], c1: [6, 5], c2: [-5, 5] }, { to: [0.5, -3] }] },
      'crosses-itself',
    ],
    ['a spike', polygon([0, 0], [6, 0], [6, 2], [9, 2], [6, 2], [6, 4], [0, 4]), 'doubles-back'],
    ['a spike inward', polygon([0, 0], [6, 0], [6, 2], [1, 2], [6, 2], [6, 4], [0, 4]), 'doubles-back'],
  ])('can be measured where the drawn one can’t: %s', (_, drawn, code) => {
    expect(codeOf(drawn)).toBe(code)
    const proposal = untangle(drawn)
    expect(proposal && codeOf(proposal)).toBe('sound')
  })

  it('passes the points of a bow tie the other way round', () => {
    expect(untangle(BOW_TIE)).toEqual(polygon([0, 0], [6, 0], [6, 4], [0, 4], [0, 0]))
  })

  it('passes the points the other way round also where the line that closes the path, which isn’t written, is crossed', () => {
    expect(untangle(polygon([0, 0], [8, 0], [2, 5], [6, 5]))).toEqual(polygon([0, 0], [8, 0], [6, 5], [2, 5], [0, 0]))
    expect(untangle(polygon([0, 0], [6, 5], [2, 5], [8, 0]))).toEqual(polygon([0, 0], [2, 5], [6, 5], [8, 0], [0, 0]))
  })

  it(`is the same whether the closing line is written or not, and keeps every point (seed ${SEED})`, () => {
    const corner = fc.record({ r: fc.integer({ min: 20, max: 40 }), off: fc.integer({ min: -3, max: 3 }) })
    fc.assert(
      fc.property(fc.array(corner, { minLength: 4, maxLength: 9 }), (corners) => {
        const points = corners.map(({ r, off }, i): Point => {
          const angle = (2 * Math.PI * (i + off / 10)) / corners.length
          return [r * Math.cos(angle), r * Math.sin(angle)]
        })
        // The last two change places: the line between them and the start is crossed.
        points.push(...points.splice(-2).reverse())
        if (codeOf(polygon(...points)) === 'sound') return
        const proposal = untangle(polygon(...points))
        expect(proposal).toEqual(untangle(polygon(...points, points[0]!)))
        const kept = new Set(proposal?.segments.map(({ to }) => to.join()))
        expect(points.filter((point) => !kept.has(point.join()))).toEqual([])
      }),
      { seed: SEED, numRuns: 100 },
    )
  })

  it('takes the tip of a spike away and nothing else', () => {
    const drawn = polygon([0, 0], [6, 0], [6, 2], [9, 2], [6, 2], [6, 4], [0, 4])
    expect(untangle(drawn)).toEqual(polygon([0, 0], [6, 0], [6, 2], [6, 4], [0, 4], [0, 0]))
  })

  it('keeps both lobes of an eight, less the gap that parts them', () => {
    const proposal = untangle(EIGHT_OF_ARCS)!
    expect(relative(Math.abs(areaOf(proposal)), 2 * Math.PI)).toBeLessThan(2e-3)
  })

  it('keeps the curves that don’t cross as they are', () => {
    const kept = untangle(CROSSED_BEAN)!.segments
    expect(kept).toContainEqual(CROSSED_BEAN.segments[0])
  })

  it('is the line itself where that is free', () => {
    for (const path of [BEAN, box(0, 0, 6, 4), circle(0, 0, 2)]) expect(untangle(path)).toBe(path)
  })

  it(`can be measured, for any order of up to fourteen points (seed ${SEED}), but where the line has a spike too many`, () => {
    let tried = 0
    let sound = 0
    const place = fc.integer({ min: 0, max: 1_000_000 }).map((i) => i / 100_000)
    fc.assert(
      fc.property(fc.array(fc.tuple(place, place), { minLength: 4, maxLength: 14 }), (points) => {
        const drawn = polygon(...(points as Point[]))
        if (codeOf(drawn) !== 'crosses-itself') return
        tried++
        const proposal = untangle(drawn)
        if (!proposal) return
        sound++
        expect(codeOf(proposal)).toBe('sound')
      }),
      { seed: SEED, numRuns: 150 },
    )
    expect(tried).toBeGreaterThan(60)
    expect(sound / tried).toBeGreaterThan(0.95)
  })

  it('is not looked for in a scribble', () => {
    const scribble = polygon(...Array.from({ length: 120 }, (_, i): Point => [(i * 7919) % 101, (i * 104729) % 97]))
    expect(untangle(scribble)).toBeUndefined()
  })
})

describe('what two outlines have in common', () => {
  const area = (a: Path, b: Path): number => {
    const result = overlapOf(a, b)
    if (!result.ok) throw new Error(result.problem.code)
    return result.value
  }

  it.each<[string, Path, Path, number]>([
    ['nothing, where they are apart', box(0, 0, 4, 3), box(5, 0, 9, 3), 0],
    ['nothing, where they share a side', box(0, 0, 4, 3), box(4, 1, 9, 3), 0],
    ['the corner of two boxes', box(0, 0, 4, 3), box(3, 1, 7, 9), 2],
    ['all of the inner one', box(0, 0, 4, 3), circle(2, 1.5, 1), Math.PI],
    ['all of both, where they are one', circle(1, 1, 2), circle(1, 1, 2), 4 * Math.PI],
    // Two circles of radius 1, their centres 1 apart: 2π/3 − √3/2 (the lens).
    ['a lens', circle(0, 0, 1), circle(1, 0, 1), (2 * Math.PI) / 3 - Math.sqrt(3) / 2],
  ])('is %s', (_, a, b, expected) => {
    expect(area(a, b)).toBeCloseTo(expected, 12)
    expect(area(b, a)).toBeCloseTo(expected, 12)
  })
})
