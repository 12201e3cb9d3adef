import { describe, expect, it } from 'vitest'
import {
  type BasinShape,
  derivativesOf,
  type Floor,
  measure,
  type Path,
  type Point,
  type Tolerance,
  transformPath,
  uncertaintyOf,
} from '../../src/basin/index.ts'
import type { Feature } from '../../src/features/index.ts'
import { BEAN, box, circle, DEMO, divided, relative, shape } from './shapes.ts'

const RAMPED: Floor = {
  kind: 'profile',
  axis: { from: [0, 0], to: [10, 0] },
  stations: [
    [0, 1],
    [10, 2],
  ],
}
const RECTANGLE = shape(box(0, 0, 10, 5), { floor: RAMPED })

function byPath(s: BasinShape, levelM = 0): (path: string) => number | Point {
  const list = new Map(derivativesOf(divided(s), levelM).map(({ path, value }) => [path, value]))
  return (path) => {
    const value = list.get(path)
    if (value === undefined) throw new Error(path)
    return value
  }
}

const along = (value: number | Point, axis: 0 | 1): number => (value as Point)[axis]

describe('closed forms of the derivatives', () => {
  it('knows a rectangle L × W × D: by a corner D W/2 and D L/2, by depth and level L W', () => {
    const of = byPath(shape(box(0, 0, 8, 3), { floor: { kind: 'flat', depthM: 1.4 } }))
    expect(along(of('outline.segments[1].to'), 0)).toBeCloseTo((1.4 * 3) / 2, 12)
    expect(along(of('outline.segments[1].to'), 1)).toBeCloseTo((1.4 * 8) / 2, 12)
    expect(along(of('outline.start'), 0)).toBeCloseTo(-(1.4 * 3) / 2, 12)
    expect(of('floor.depthM')).toBeCloseTo(24, 12)
    expect(of('levelM')).toBeCloseTo(24, 12)
  })

  it('gives a sloping rectangle of 75.00 m³ its ± 0.73 m³ from length, width and both end depths', () => {
    // V = L W (d₀ + d₁)/2; σ of length and width 10 mm, of each depth 20 mm, all independent (JCGM 100:2008 eq. 10).
    const of = byPath(RECTANGLE)
    const ends = ['outline.segments[0].to', 'outline.segments[1].to']
    // The far station lies on the wall that the tape reaches to.
    const byLength = ends.reduce((sum, path) => sum + along(of(path), 0), 0) + (of('floor.stations[1][0]') as number)
    const byWidth = ['outline.segments[1].to', 'outline.segments[2].to'].reduce(
      (sum, path) => sum + along(of(path), 1),
      0,
    )
    expect(byLength).toBeCloseTo(7.5, 12)
    expect(byWidth).toBeCloseTo(15, 12)
    const depths = [of('floor.stations[0][1]'), of('floor.stations[1][1]')] as number[]
    expect(depths).toEqual([expect.closeTo(25, 12), expect.closeTo(25, 12)])
    expect(measure(divided(RECTANGLE), 0).volumeM3).toBeCloseTo(75, 12)
    expect(Math.hypot(0.01 * byLength, 0.01 * byWidth, 0.02 * depths[0]!, 0.02 * depths[1]!)).toBeCloseTo(
      0.7267220926874316,
      12,
    )
  })

  it('knows a cylinder with a cove: V = πR²D − 2πR r²(1 − π/4) + 2π r³(5/6 − π/4)', () => {
    const [R, D, r] = [3, 1.5, 0.4]
    const of = byPath(shape(circle(0, 0, R), { wall: { kind: 'cove', radiusM: r } }))
    const byRadius = -4 * Math.PI * R * r * (1 - Math.PI / 4) + 6 * Math.PI * r * r * (5 / 6 - Math.PI / 4)
    expect(of('wall.radiusM')).toBeCloseTo(byRadius, 9)
    expect(of('floor.depthM')).toBeCloseTo(Math.PI * R * R, 9)
    // Both ends of the diameter outward by as much: the radius grows so.
    const grown = along(of('outline.start'), 0) - along(of('outline.segments[0].to'), 0)
    expect(grown).toBeCloseTo(2 * Math.PI * R * D - 2 * Math.PI * r * r * (1 - Math.PI / 4), 9)
    expect(derivativesOf(divided(shape(circle(0, 0, R))), 0).find(({ kind }) => kind === 'radius')).toBeUndefined()
  })

  it('knows a battered cylinder: V = πD (R² − R k D + k² D²/3)', () => {
    const [R, D, k] = [3, 1.5, 0.5]
    const s = shape(circle(0, 0, R), { wall: { kind: 'battered', run: k } })
    const of = byPath(s)
    expect(measure(divided(s), 0).volumeM3).toBeCloseTo(Math.PI * D * (R * R - R * k * D + (k * k * D * D) / 3), 9)
    expect(of('wall.run')).toBeCloseTo(Math.PI * D * (-R * D + (2 * k * D * D) / 3), 9)
    expect(of('floor.depthM')).toBeCloseTo(Math.PI * (R - k * D) ** 2, 9)
    expect(of('levelM')).toBeCloseTo(Math.PI * R * R, 9)
  })

  it('takes a bulge that makes a half circle: dV/db of a segment of height c b/2', () => {
    // Area of a segment of chord c: c²/8 (θ − sin θ)/sin²(θ/2), θ = 4 atan b; at b = 1 its derivative by b is c²/2.
    const dome: Path = {
      start: [0, 0],
      segments: [{ to: [2, 0] }, { to: [2, 3] }, { to: [0, 3], bulge: 1 }, { to: [0, 0] }],
    }
    const area = (b: number): number => {
      const t = 4 * Math.atan(b)
      return (0.5 * (t - Math.sin(t))) / Math.sin(t / 2) ** 2
    }
    const of = byPath(shape(dome, { floor: { kind: 'flat', depthM: 1 } }))
    expect(of('outline.segments[2].bulge')).toBeCloseTo((area(1 + 1e-6) - area(1 - 1e-6)) / 2e-6, 8)
    expect(of('outline.segments[2].bulge')).toBeCloseTo(2, 10)
  })
})

const TOLERANCE: Tolerance = { planM: 0.02, depthM: 0.03, tapeScale: 0.002, datumM: 0.015 }

/** All of the plan grown by a factor: outline, islands, floor's axis and stations; the wall stays as it is. */
function grown(s: BasinShape, k: number): BasinShape {
  const map = { a: k, b: 0, c: 0, d: k, e: 0, f: 0 }
  const far = ([x, y]: Point): Point => [k * x, k * y]
  const floor: Floor =
    s.floor.kind === 'profile'
      ? {
          ...s.floor,
          axis: { from: far(s.floor.axis.from), to: far(s.floor.axis.to) },
          stations: s.floor.stations.map(([at, depth]) => [k * at, depth] as const),
        }
      : s.floor
  return {
    ...s,
    floor,
    outline: transformPath(s.outline, map),
    islands: s.islands.map((path) => transformPath(path, map)),
  }
}

const POOLS: Record<string, BasinShape> = {
  upright: shape(BEAN, { floor: RAMPED, islands: [circle(4, 2.5, 0.5)], tolerance: TOLERANCE }),
  coved: shape(BEAN, { floor: RAMPED, wall: { kind: 'cove', radiusM: 0.4 }, tolerance: TOLERANCE }),
  battered: shape(BEAN, { floor: RAMPED, wall: { kind: 'battered', run: 0.5 }, tolerance: TOLERANCE }),
}

describe('errors that many measurements share', () => {
  for (const [name, pool] of Object.entries(POOLS)) {
    for (const levelM of [0, -0.6])
      it(`moves the volume by the tape’s scale as growing the whole plan does: ${name}, level ${levelM}`, () => {
        const h = 1e-4
        const at = (k: number): number => measure(divided(grown(pool, k)), levelM).volumeM3
        const slope = (at(1 + h) - at(1 - h)) / (2 * h)
        const tape = uncertaintyOf(divided(pool), levelM).contributions.find(({ what }) => what === 'tape')!
        expect(relative(tape.sigmaM3, 0.002 * slope)).toBeLessThan(1e-7)
      })

    it(`says the same of the scale as the derivatives of all that is measured in plan: ${name}`, () => {
      const p = divided(pool)
      let sum = 0
      const places = new Map<string, Point>([
        ['floor.axis.from', [0, 0]],
        ['floor.axis.to', [10, 0]],
      ])
      const listed: [string, Path][] = [
        ['outline', pool.outline],
        ...pool.islands.map((path, i): [string, Path] => [`islands[${i}]`, path]),
      ]
      for (const [where, { start, segments }] of listed) {
        places.set(`${where}.start`, start)
        segments.forEach(({ to, c1, c2 }, i) => {
          places.set(`${where}.segments[${i}].to`, to)
          if (c1) places.set(`${where}.segments[${i}].c1`, c1)
          if (c2) places.set(`${where}.segments[${i}].c2`, c2)
        })
      }
      for (const { path, kind, value } of derivativesOf(p, 0)) {
        if (kind === 'station') sum += (value as number) * (path === 'floor.stations[1][0]' ? 10 : 0)
        const place = places.get(path)
        if (place) sum += along(value, 0) * place[0] + along(value, 1) * place[1]
      }
      const tape = uncertaintyOf(p, 0).contributions.find(({ what }) => what === 'tape')!
      expect(relative(0.002 * sum, tape.sigmaM3)).toBeLessThan(1e-8)
      if (name === 'upright') expect(relative(sum, 2 * measure(p, 0).volumeM3)).toBeLessThan(1e-12)
    })
  }

  it('says the same of the scale where benches go with the wall: Σ P ∂V/∂P + w ∂V/∂w + r ∂V/∂r = 2 V', () => {
    const features: Feature[] = [
      { kind: 'bench', along: { fromSegment: 0, toSegment: 3 }, widthM: 0.5, depthM: 0.4 },
      {
        kind: 'roundSteps',
        centre: [9, 2.4],
        treads: [
          [0.7, 0.2],
          [1.1, 0.6],
        ],
      },
    ]
    for (const outline of [BEAN, box(0, 0, 9, 4)]) {
      const p = divided(shape(outline, { features }))
      const sizes = new Map<string, number>([
        ['features[0].widthM', 0.5],
        ['features[1].treads[0][0]', 0.7],
        ['features[1].treads[1][0]', 1.1],
      ])
      const places = new Map<string, Point>([
        ['outline.start', outline.start],
        ['features[1].centre', [9, 2.4]],
      ])
      outline.segments.forEach(({ to, c1, c2 }, i) => {
        places.set(`outline.segments[${i}].to`, to)
        if (c1) places.set(`outline.segments[${i}].c1`, c1)
        if (c2) places.set(`outline.segments[${i}].c2`, c2)
      })
      let sum = 0
      for (const { path, value } of derivativesOf(p, -0.1)) {
        const place = places.get(path)
        if (place) sum += along(value, 0) * place[0] + along(value, 1) * place[1]
        const size = sizes.get(path)
        if (size !== undefined) sum += (value as number) * size
      }
      expect(relative(sum, 2 * measure(p, -0.1).volumeM3)).toBeLessThan(1e-8)
    }
  })

  it('knows a round pool with a seat all round: V = πR²D − π(R² − (R − w)²)(D − d)', () => {
    const [R, D, w, d] = [3, 1.5, 0.45, 0.5]
    const seat: Feature = { kind: 'bench', along: { fromSegment: 0, toSegment: 1 }, widthM: w, depthM: d }
    const s = shape(circle(0, 0, R), { features: [seat], tolerance: { planM: 0.02, depthM: 0 } })
    const of = byPath(s)
    const byRadius = 2 * Math.PI * (R * D - w * (D - d))
    expect(along(of('outline.start'), 0) - along(of('outline.segments[0].to'), 0)).toBeCloseTo(byRadius, 9)
    expect(of('features[0].widthM')).toBeCloseTo(-2 * Math.PI * (R - w) * (D - d), 9)
    // Two nodes across from each other, each of which moves the radius by half and shifts the rest of its way.
    expect(measure(divided(s), 0).sigmaM3).toBeCloseTo((0.02 * byRadius) / Math.SQRT2, 9)
  })

  it('lowers all depths together by the waterline: the surface, where walls are upright', () => {
    const p = divided({ ...DEMO, tolerance: TOLERANCE })
    const waterline = uncertaintyOf(p, -0.1).contributions.find(({ what }) => what === 'waterline')!
    expect(relative(waterline.sigmaM3, 0.015 * measure(p, -0.1).waterSurfaceM2)).toBeLessThan(1e-12)
  })

  it('counts one depth once, however many footprints it makes', () => {
    const bench = { kind: 'bench', along: { fromSegment: 0, toSegment: 2 }, widthM: 0.5, depthM: 0.4 } as const
    const s = shape(box(0, 0, 10, 5), { features: [bench], tolerance: { planM: 0, depthM: 0.02 } })
    const list = derivativesOf(divided(s), 0).filter(({ path }) => path === 'features[0].depthM')
    expect(list.length).toBe(1)
    const benchM2 = 0.5 * (10 + 5 + 10) - 2 * 0.5 * 0.5
    expect(list[0]!.value).toBeCloseTo(benchM2, 10)
    expect(measure(divided(s), 0).sigmaM3).toBeCloseTo(0.02 * Math.hypot(benchM2, 50 - benchM2), 10)
  })
})

describe('what makes a volume uncertain', () => {
  for (const [name, pool] of Object.entries(POOLS))
    it(`sums the causes by their squares, and agrees with the figure beside the volume: ${name}`, () => {
      const p = divided(pool)
      const { sigmaM3, contributions } = uncertaintyOf(p, 0)
      expect(sigmaM3).toBeCloseTo(Math.hypot(...contributions.map((it) => it.sigmaM3)), 12)
      for (const { sigmaM3: part } of contributions) expect(part).toBeGreaterThan(0)
      expect(relative(measure(p, 0).sigmaM3, sigmaM3)).toBeLessThan(name === 'upright' ? 1e-14 : 1e-2)
      expect(measure(p, 0).errors.measurementM3).toBe(measure(p, 0).sigmaM3)
    })

  it('counts what a wall leaves of a step beside the shore, also in the quick figure beside the volume', () => {
    // Without the cove the step along the bench would be 1.5 m high in place of some 1.2.
    const pool = shape(box(0, 0, 9, 5), {
      floor: { kind: 'flat', depthM: 2 },
      wall: { kind: 'cove', radiusM: 1 },
      features: [{ kind: 'bench', along: { fromSegment: 0, toSegment: 3 }, widthM: 0.3, depthM: 0.5 }],
    })
    const p = divided({ ...pool, tolerance: { planM: 0.02, depthM: 1e-9 } })
    expect(relative(measure(p, 0).sigmaM3, uncertaintyOf(p, 0).sigmaM3)).toBeLessThan(1e-3)
  })

  it('names the measurements that matter most, greatest first', () => {
    const { largest } = uncertaintyOf(divided({ ...RECTANGLE, tolerance: { planM: 0.02, depthM: 0.02 } }), 0)
    expect(
      largest
        .map(({ path }) => path)
        .slice(0, 2)
        .sort(),
    ).toEqual(['floor.stations[0][1]', 'floor.stations[1][1]'])
    expect(largest[0]!.sigmaM3).toBeCloseTo(0.5, 12)
    // By hand: a corner of the deep end moves the end wall by 5 m² and the long wall by 25/3 m².
    expect(largest[2]!.sigmaM3).toBeCloseTo(0.02 * Math.hypot(5, 25 / 3), 12)
    expect(largest[2]!.path).toMatch(/^outline\.segments\[[01]\]\.to$/)
    const taped = uncertaintyOf(divided({ ...RECTANGLE, tolerance: { planM: 0.2, depthM: 0.001 } }), 0)
    expect(taped.largest.every(({ kind }) => kind === 'node')).toBe(true)
  })

  it('is nothing without a tolerance', () => {
    const { sigmaM3, largest, contributions } = uncertaintyOf(divided(RECTANGLE), 0)
    expect(sigmaM3).toBe(0)
    expect(largest).toEqual([])
    expect(contributions.every((it) => it.sigmaM3 === 0)).toBe(true)
  })
})
