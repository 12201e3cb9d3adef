import { describe, expect, it } from 'vitest'
import { type BasinShape, measure, meshOf, type Path, pathLength } from '../../src/basin/index.ts'
import { type Feature, patchesOf } from '../../src/features/index.ts'
import { BEAN, box, circle, divided, polygon, relative, shape } from '../basin/shapes.ts'
import { expectWithinWidth } from '../basin/within-width.ts'

const W = 0.45
const SEAT = 0.4
const FLOOR = 1.5

function bench(fromSegment: number, toSegment: number, widthM = W): Feature {
  return { kind: 'bench', along: { fromSegment, toSegment }, widthM, depthM: SEAT }
}

function seat(outline: Path, feature: Feature, parts: Partial<BasinShape> = {}) {
  const bare = measure(divided(shape(outline, parts)), 0)
  const p = divided(shape(outline, { ...parts, features: [feature] }))
  const m = measure(p, 0)
  return { p, m, areaM2: m.wetted.featureM2, byVolumeM2: (bare.volumeM3 - m.volumeM3) / (FLOOR - SEAT) }
}

const STADIUM: Path = {
  start: [-3, -2],
  segments: [{ to: [3, -2] }, { to: [3, 2], bulge: 1 }, { to: [-3, 2] }, { to: [-3, -2], bulge: 1 }],
}
const ELL = polygon([0, 0], [9, 0], [9, 4], [4, 4], [4, 7], [0, 7])

/** A regular polygon of a side, starting with its lowest side. */
function regular(corners: number, sideM: number): Path {
  const points: [number, number][] = [[0, 0]]
  for (let i = 0; i < corners - 1; i++) {
    const a = (2 * Math.PI * i) / corners
    const [x, y] = points[i]!
    points.push([x + sideM * Math.cos(a), y + sideM * Math.sin(a)])
  }
  return polygon(...points)
}

describe('a bench along the wall has the closed form’s area and riser', () => {
  const quarter = (Math.PI / 4) * W * W
  it.each<[string, Path, Feature, number, number]>([
    ['a straight wall', box(0, 0, 8, 4), bench(0, 0), 8 * W, 8],
    ['two walls and their mitre', box(0, 0, 8, 4), bench(0, 1), 12 * W - W * W, 12 - 2 * W],
    ['two walls over the last segment', box(0, 0, 8, 4), bench(3, 0), 12 * W - W * W, 12 - 2 * W],
    ['all four walls', box(0, 0, 8, 4), bench(0, 3), 24 * W - 4 * W * W, 24 - 8 * W],
    ['all walls, counted from another', box(0, 0, 8, 4), bench(2, 1), 24 * W - 4 * W * W, 24 - 8 * W],
    ['a round pool', circle(3, 1, 3), bench(0, 1), Math.PI * (9 - (3 - W) ** 2), 2 * Math.PI * (3 - W)],
    ['a re-entrant corner, round about it', ELL, bench(2, 3), 8 * W + quarter, 8 + (Math.PI / 2) * W],
    ['one side of a re-entrant corner, square', ELL, bench(2, 2), 5 * W, 5 + W],
    [
      'a stadium all round',
      STADIUM,
      bench(0, 3),
      pathLength(STADIUM) * W - Math.PI * W * W,
      pathLength(STADIUM) - 2 * Math.PI * W,
    ],
    [
      'a stadium’s round end, square at its ends',
      STADIUM,
      bench(1, 1),
      (Math.PI / 2) * (4 - (2 - W) ** 2),
      Math.PI * (2 - W) + 2 * W,
    ],
    [
      'a round island-like bulge seen from outside',
      {
        start: [0, 0],
        segments: [{ to: [8, 0] }, { to: [8, 4] }, { to: [5, 4] }, { to: [3, 4], bulge: -1 }, { to: [0, 4] }],
      },
      bench(3, 3),
      (Math.PI / 2) * ((1 + W) ** 2 - 1),
      Math.PI * (1 + W),
    ],
    [
      'a side of a hexagon, carried on to the walls beyond at 120°',
      regular(6, 3),
      bench(0, 0),
      3 * W + W * W * Math.tan(Math.PI / 6),
      3 + 2 * W * Math.tan(Math.PI / 6),
    ],
    [
      'a side of an octagon, carried on at 135°',
      regular(8, 3),
      bench(3, 3),
      3 * W + W * W * Math.tan(Math.PI / 4),
      3 + 2 * W,
    ],
    [
      'a side of a triangle, cut off by the others',
      regular(3, 6),
      bench(1, 1),
      6 * W - (W * W) / Math.tan(Math.PI / 3),
      6 - (2 * W) / Math.tan(Math.PI / 3),
    ],
    ['an almost round polygon, square at its ends', regular(24, 1), bench(0, 0), W, 1 + 2 * W],
  ])('%s', (_, outline, feature, areaM2, riserM) => {
    const { m, areaM2: wet, byVolumeM2, p } = seat(outline, feature)
    expect(relative(wet, areaM2)).toBeLessThan(1e-12)
    expect(relative(byVolumeM2, areaM2)).toBeLessThan(1e-11)
    expect(relative(m.wetted.riserM2, riserM * (FLOOR - SEAT))).toBeLessThan(1e-11)
    const mesh = meshOf(p)
    expect(mesh.ok || mesh.problem.code).toBe(true)
  })

  it('is the same with the outline travelled the other way', () => {
    const clockwise = polygon([0, 7], [4, 7], [4, 4], [9, 4], [9, 0], [0, 0])
    expect(relative(seat(clockwise, bench(1, 2)).areaM2, 8 * W + (Math.PI / 4) * W * W)).toBeLessThan(1e-12)
  })

  it('is the same far from the origin', () => {
    const far = polygon(
      [500000, 5000000],
      [500009, 5000000],
      [500009, 5000004],
      [500004, 5000004],
      [500004, 5000007],
      [500000, 5000007],
    )
    expect(relative(seat(far, bench(2, 3)).areaM2, 8 * W + (Math.PI / 4) * W * W)).toBeLessThan(1e-8)
  })
})

describe('a bench wider than the wall’s radius or the half width', () => {
  it('covers a round pool wholly, from just its radius up', () => {
    for (const widthM of [3, 3.5, 5.9, 7]) {
      const { areaM2, m } = seat(circle(3, 1, 3), bench(0, 1, widthM))
      expect(relative(areaM2, 9 * Math.PI)).toBeLessThan(1e-12)
      expect(m.wetted.riserM2).toBeLessThan(1e-9)
    }
  })

  it('fills a stadium’s end up to its centre, for beyond it the wall’s ends are nearer', () => {
    expect(relative(seat(STADIUM, bench(1, 1, 3)).areaM2, 2 * Math.PI)).toBeLessThan(1e-12)
  })

  it('covers a narrow arm to the wall opposite', () => {
    expect(relative(seat(box(0, 0, 8, 4), bench(0, 3, 1.9)).areaM2, 32 - 4.2 * 0.2)).toBeLessThan(1e-12)
    expect(relative(seat(box(0, 0, 8, 4), bench(0, 3, 2.5)).areaM2, 32)).toBeLessThan(1e-12)
    expect(relative(seat(box(0, 0, 8, 4), bench(0, 0, 5)).areaM2, 32)).toBeLessThan(1e-12)
  })
})

describe('a bench along cubics', () => {
  it('takes Steiner’s area P w − π w² of a smooth outline within what it states', () => {
    const p = pathLength(BEAN)
    const { areaM2, byVolumeM2, m } = seat(BEAN, bench(0, 3))
    const expected = p * W - Math.PI * W * W
    expect(relative(areaM2, expected)).toBeLessThan(1e-7)
    expect(relative(byVolumeM2, expected)).toBeLessThan(1e-7)
    expect(relative(m.wetted.riserM2, (p - 2 * Math.PI * W) * (FLOOR - SEAT))).toBeLessThan(1e-6)
    const patches = patchesOf([bench(0, 3)], BEAN)
    if (!patches.ok) throw new Error()
    expect(m.errors.modelM3).toBeGreaterThanOrEqual(Math.abs(areaM2 - expected) * (FLOOR - SEAT) - 1e-12)
    expect(m.errors.modelM3).toBeLessThan(1e-5)
    for (const patch of patches.value) expect(patch.offM).toBeLessThan(2e-7)
  })

  it('is where the wall is within its width, also where the wall bends more tightly', () => {
    for (const widthM of [0.45, 1.2, 1.7]) {
      const { p } = seat(BEAN, bench(0, 3, widthM))
      expect(expectWithinWidth(p, BEAN, widthM)).toBeGreaterThan(800)
    }
  })
})

describe('a bench that makes no sense is a problem', () => {
  it.each<[string, Feature, string]>([
    ['no width', bench(0, 0, 0), 'width-not-positive @ features[0].widthM'],
    ['width that is no number', bench(0, 0, Number.NaN), 'not-a-number @ features[0].widthM'],
    ['a side too many', bench(0, 4), 'no-such-side @ features[0].along.toSegment'],
    ['half a side', bench(0.5, 1), 'no-such-side @ features[0].along.fromSegment'],
    ['a side before the first', bench(-1, 1), 'no-such-side @ features[0].along.fromSegment'],
  ])('%s', (_, feature, expected) => {
    const result = patchesOf([feature], box(0, 0, 8, 4))
    expect(!result.ok && `${result.problem.code} @ ${result.problem.path}`).toBe(expected)
  })
})
