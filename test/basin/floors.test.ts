import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type BasinShape,
  depthAt,
  type Floor,
  flatten,
  measure,
  type Path,
  type Point,
  partition,
  volumeAtLevel,
} from '../../src/basin/index.ts'
import { bruteDelaunay, depthOn, volumeOn } from '../support/brute-delaunay.ts'
import { BEAN, box, circle, divided, polygon, relative, shape } from './shapes.ts'

const SEED = 20261125

const contours = (edgeDepthM: number, ...rings: (readonly [number, Path])[]): Floor => ({
  kind: 'contours',
  edgeDepthM,
  rings: rings.map(([depthM, path]) => ({ depthM, path })),
})

const soundings = (edgeDepthM: number | null, ...points: (readonly [number, number, number])[]): Floor => ({
  kind: 'soundings',
  edgeDepthM,
  points,
})

const volume = (s: BasinShape, levelM = 0): number => volumeAtLevel(divided(s), levelM).volumeM3

/** Prismatoid between two level sections with parallel sides: h/6 (A₁ + 4 A_m + A₂). */
const prismatoid = (h: number, a1: number, am: number, a2: number): number => (h / 6) * (a1 + 4 * am + a2)

/** Numbers below 1 in a fixed order. */
function numbers(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 16807) % 2147483647
    return state / 2147483647
  }
}

describe('a floor of contours', () => {
  it('agrees with the prismatoid formula for a hopper that begins at the walls, off the middle, at every level', () => {
    const s = shape(box(0, 0, 9, 5), { floor: contours(1, [2.5, box(2, 1.5, 7.5, 3)]) })
    // Section at fraction f of the fall: every side moves evenly from the wall to the ring.
    const section = (f: number): number => (9 - 3.5 * f) * (5 - 3.5 * f)
    expect(relative(volume(s), 45 + prismatoid(1.5, section(0), section(0.5), section(1)))).toBeLessThan(1e-12)
    for (const f of [0.2, 0.5, 0.9]) {
      const rest = prismatoid(1.5 * (1 - f), section(f), section((1 + f) / 2), section(1))
      expect(relative(volume(s, -1 - 1.5 * f), rest)).toBeLessThan(1e-11)
    }
  })

  it('agrees with two prismatoids and a prism for two nested rings in either order, and for two side by side', () => {
    const outer = box(1, 1, 8, 4)
    const inner = box(4, 1.5, 7, 3)
    const truth = 50 + prismatoid(0.5, 50, 8.5 * 4, 21) + prismatoid(1.2, 21, 5 * 2.25, 4.5)
    const nested = shape(box(0, 0, 10, 5), { floor: contours(1, [1.5, outer], [2.7, inner]) })
    const turned = shape(box(0, 0, 10, 5), { floor: contours(1, [2.7, inner], [1.5, outer]) })
    expect(relative(volume(nested), truth)).toBeLessThan(1e-12)
    expect(relative(volume(turned), truth)).toBeLessThan(1e-12)
    // Each hopper stands in a half of its own, divided by a straight contour of the edge's depth all but in the middle.
    const left = [1.2, box(0.5, 0.5, 4.5, 4.5)] as const
    const right = [1.2, box(5.5, 0.5, 9.5, 4.5)] as const
    const beside = contours(1.2, left, right, [2, box(1.5, 1.5, 3.5, 3.5)], [3, box(6, 1, 9, 4)])
    const both = 60 + prismatoid(0.8, 16, 9, 4) + prismatoid(1.8, 16, 3.5 ** 2, 9)
    expect(relative(volume(shape(box(0, 0, 10, 5), { floor: beside })), both)).toBeLessThan(1e-12)
  })

  it('may rise to a mound, may stand out of the water, and is level without a ring', () => {
    const mound = shape(box(0, 0, 6, 6), { floor: contours(2, [-0.5, box(2, 2, 4, 4)]) })
    // Wet down to the datum: a frustum of the mound's sides, cut where the depth passes zero at 4/5 of the way in.
    const side = 6 - 4 * 0.8
    expect(relative(volume(mound), 72 - prismatoid(2, 36, ((6 + side) / 2) ** 2, side * side))).toBeLessThan(1e-12)
    expect(relative(measure(divided(mound), 0).waterSurfaceM2, 36 - side * side)).toBeLessThan(1e-12)
    expect(
      relative(
        volume(shape(BEAN, { floor: contours(1.3) })),
        volume(shape(BEAN, { floor: { kind: 'flat', depthM: 1.3 } })),
      ),
    ).toBeLessThan(1e-12)
  })

  it('gives an island outside the rings the depth of the edge, and leaves the floor as it is under one inside', () => {
    const hopper = contours(1, [2, box(4, 1, 9, 4)])
    const plain = volume(shape(box(0, 0, 10, 5), { floor: hopper }))
    const within = shape(box(0, 0, 10, 5), { floor: hopper, islands: [circle(6, 2.5, 0.8)] })
    expect(relative(volume(within), plain - Math.PI * 0.64 * 2)).toBeLessThan(1e-12)
    const beside = divided(shape(box(0, 0, 10, 5), { floor: hopper, islands: [box(2, 2, 3, 3)] }))
    for (const x of [2 - 1e-6, 3 + 1e-6]) expect(depthAt(beside, x, 2.5)!.depthM).toBeCloseTo(1, 5)
  })

  it('comes to the cone’s frustum between circles about one centre, within the bound that it states', () => {
    const frustum = (R: number, r: number, a: number, b: number): number =>
      Math.PI * (R * R * a + ((b - a) / 3) * (R * R + R * r + r * r))
    for (const r of [0.7, 1.3, 2, 3.4]) {
      const m = measure(divided(shape(circle(1, 2, 4), { floor: contours(1.2, [2.4, circle(1, 2, r)]) })), 0)
      const truth = frustum(4, r, 1.2, 2.4)
      expect(relative(m.volumeM3, truth)).toBeLessThan(1e-6)
      expect(m.errors.modelM3).toBeGreaterThan(Math.abs(m.volumeM3 - truth))
      expect(m.errors.modelM3 / truth).toBeLessThan(1e-3)
    }
    // A chord twice as fine leaves a quarter of the error: what polygons of N sides do, drawn as such.
    const ngon = (n: number, r: number): Path =>
      polygon(
        ...Array.from(
          { length: n },
          (_, i): Point => [r * Math.cos((2 * Math.PI * i) / n), r * Math.sin((2 * Math.PI * i) / n)],
        ),
      )
    const off = (n: number): number =>
      relative(volume(shape(ngon(n, 4), { floor: contours(1.2, [2.4, ngon(n, 2)]) })), frustum(4, 2, 1.2, 2.4))
    expect(off(16) / off(64)).toBeGreaterThan(15)
    expect(off(64) / off(256)).toBeGreaterThan(15)
  })

  it('comes to the closed form between parallel stadiums, and between a square and a circle', () => {
    const stadium = (r: number): Path => ({
      start: [-3, -r],
      segments: [{ to: [3, -r] }, { to: [3, r], bulge: 1 }, { to: [-3, r] }, { to: [-3, -r], bulge: 1 }],
    })
    const section = (r: number): number => 12 * r + Math.PI * r * r
    const m = measure(divided(shape(stadium(2), { floor: contours(1, [2.2, stadium(0.8)]) })), 0)
    const truth = section(2) + prismatoid(1.2, section(2), section(1.4), section(0.8))
    expect(relative(m.volumeM3, truth)).toBeLessThan(2e-6)
    expect(m.errors.modelM3).toBeGreaterThan(Math.abs(m.volumeM3 - truth))
    // Cones stand on the arcs with their tips at the square's corners, triangles on its sides with theirs on the circle.
    const [R, a, edge, deep] = [4, 1, 1.2, 2.4]
    const cones = (Math.PI * R * R - 4 * a * R) * ((deep + 2 * edge) / 3)
    const sides = 4 * a * (R - a) * ((2 * deep + edge) / 3)
    const square = measure(divided(shape(circle(0, 0, R), { floor: contours(edge, [deep, box(-a, -a, a, a)]) })), 0)
    expect(relative(square.volumeM3, cones + sides + 4 * a * a * deep)).toBeLessThan(2e-6)
    expect(square.errors.modelM3).toBeGreaterThan(Math.abs(square.volumeM3 - cones - sides - 4 * a * a * deep))
  })

  it('comes to what polygons of short chords give where no closed form is known, within the bound that it states', () => {
    const chords = (path: Path): Path => polygon(...flatten(path, 1e-5))
    for (const rings of [
      [[2.4, circle(1, 0.3, 2)]],
      [
        [2.4, circle(1, 0.3, 1)],
        [1.5, circle(0.5, 0.3, 2.3)],
      ],
    ] as (readonly [number, Path])[][]) {
      const m = measure(divided(shape(circle(0, 0, 4), { floor: contours(1.2, ...rings) })), 0)
      const fine = contours(1.2, ...rings.map(([depth, path]) => [depth, chords(path)] as const))
      const truth = volume(shape(chords(circle(0, 0, 4)), { floor: fine }))
      expect(relative(m.volumeM3, truth)).toBeLessThan(3e-5)
      expect(m.errors.modelM3).toBeGreaterThan(Math.abs(m.volumeM3 - truth))
    }
  })

  it('refuses contours that meet, cross or lie outside, and says where', () => {
    const wrong = (floor: Floor, islands: Path[] = []): unknown => {
      const result = partition(shape(box(0, 0, 10, 5), { floor, islands }))
      if (result.ok) return undefined
      const { code, path, at, hint } = result.problem
      expect(hint.length).toBeGreaterThan(0)
      return [code, path, at?.length ?? 0]
    }
    const a = box(2, 1, 5, 4)
    expect(wrong(contours(1, [2, a], [3, box(4, 2, 7, 3)]))).toEqual(['rings-meet', 'floor.rings[1].path', 2])
    expect(wrong(contours(1, [2, a], [2, a]))).toEqual(['rings-meet', 'floor.rings[1].path', expect.any(Number)])
    expect(wrong(contours(1, [2, a], [3, box(3, 2, 5, 3)]))).toEqual([
      'rings-meet',
      'floor.rings[1].path',
      expect.any(Number),
    ])
    expect(wrong(contours(1, [2, box(8, 1, 12, 4)]))).toEqual(['ring-meets-shore', 'floor.rings[0].path', 2])
    expect(wrong(contours(1, [2, box(0, 1, 3, 4)]))).toEqual([
      'ring-meets-shore',
      'floor.rings[0].path',
      expect.any(Number),
    ])
    expect(wrong(contours(1, [2, box(11, 1, 12, 4)]))).toEqual(['ring-outside', 'floor.rings[0].path', 1])
    expect(wrong(contours(1, [2, box(-1, -1, 11, 6)]))).toEqual(['ring-outside', 'floor.rings[0].path', 1])
    expect(wrong(contours(1, [2, box(4, 2, 5, 3)]), [circle(4.5, 2.5, 1.2)])).toEqual([
      'ring-outside',
      'floor.rings[0].path',
      1,
    ])
    expect(wrong(contours(1, [2, a]), [circle(5, 2.5, 0.5)])).toEqual(['ring-meets-shore', 'floor.rings[0].path', 2])
    expect(wrong(contours(1, [2, polygon([2, 1], [5, 4], [5, 1], [2, 4])]))).toEqual([
      'crosses-itself',
      'floor.rings[0].path',
      1,
    ])
    expect(wrong(contours(1, [2, polygon([2, 1], [5, 4])]))).toEqual(['too-few-points', 'floor.rings[0].path', 0])
    expect(wrong(contours(1, [Number.NaN, a]))).toEqual(['not-a-number', 'floor.rings[0].depthM', 0])
    expect(wrong(contours(Number.POSITIVE_INFINITY, [2, a]))).toEqual(['not-a-number', 'floor.edgeDepthM', 0])
    // What is wrong with the outline comes first.
    const crossed = partition(shape(polygon([0, 0], [5, 4], [5, 0], [0, 4]), { floor: contours(1, [2, a]) }))
    expect(!crossed.ok && crossed.problem.code).toBe('crosses-itself')
  })
})

describe('a floor of soundings', () => {
  it('gives the pyramids of a prismoidal program’s examples', () => {
    // Source: hpmuseum.org forum archive, thread 13022 (a program for the prismoidal formula): h 10, 8 × 6 gives 160;
    // h 11.313708, 8 × 8 gives 241.359.
    expect(volume(shape(box(0, 0, 8, 6), { floor: soundings(0, [4, 3, 10]) }))).toBeCloseTo(160, 10)
    expect(volume(shape(box(0, 0, 8, 8), { floor: soundings(0, [4, 4, 11.313708]) }))).toBeCloseTo(241.359, 3)
    // The tip may lie anywhere: the base and the height decide.
    expect(volume(shape(box(0, 0, 8, 6), { floor: soundings(0, [1, 5.2, 10]) }))).toBeCloseTo(160, 10)
  })

  it('gives a plane back where all soundings lie on one, at every level and with the same wetted area', () => {
    const random = numbers(7)
    const plane = (x: number, y: number): number => 1 + 0.12 * x + 0.05 * y
    const points = Array.from({ length: 300 }, () => {
      const x = 10 * random()
      const y = 6 * random()
      return [x, y, plane(x, y)] as const
    })
    const corners = [
      [0, 0],
      [10, 0],
      [10, 6],
      [0, 6],
    ].map(([x, y]) => [x!, y!, plane(x!, y!)] as const)
    const p = divided(shape(box(0, 0, 10, 6), { floor: soundings(null, ...points, ...corners) }))
    const u = Math.hypot(0.12, 0.05)
    const axis = { from: [0, 0] as Point, to: [0.12 / u, 0.05 / u] as Point }
    const same = divided(
      shape(box(0, 0, 10, 6), {
        floor: {
          kind: 'profile',
          axis,
          stations: [
            [0, 1],
            [20, 1 + 20 * u],
          ],
        },
      }),
    )
    for (const levelM of [0.1, 0, -1.2, -1.6, -2.1]) {
      const a = measure(p, levelM)
      const b = measure(same, levelM)
      expect(relative(a.volumeM3, b.volumeM3)).toBeLessThan(1e-9)
      expect(relative(a.waterSurfaceM2, b.waterSurfaceM2)).toBeLessThan(1e-9)
      expect(relative(a.wetted.totalM2, b.wetted.totalM2)).toBeLessThan(1e-9)
      expect(relative(a.perimeterM, b.perimeterM)).toBeLessThan(1e-9)
    }
  })

  it('agrees with a Delaunay triangulation by trying all triples, in rectangles, round re-entrant corners and islands', () => {
    const random = numbers(11)
    const ell: Point[] = [
      [0, 0],
      [9, 0.2],
      [9.1, 3.9],
      [4.2, 4.1],
      [3.9, 7],
      [0.1, 6.8],
    ]
    const horseshoe: Point[] = [
      [0, 0],
      [8, 0.1],
      [8.2, 6],
      [5.6, 6.1],
      [5.5, 2.2],
      [2.6, 2.1],
      [2.4, 5.8],
      [0.2, 6.2],
    ]
    const oblong: Point[] = [
      [0, 0],
      [10, 0.3],
      [9.7, 6],
      [-0.2, 5.6],
    ]
    const rock: Point[] = [
      [4, 2],
      [5.1, 2.2],
      [4.8, 3.3],
      [3.9, 3.1],
    ]
    for (const [outline, islands] of [
      [oblong, []],
      [ell, []],
      [horseshoe, []],
      [oblong, [rock]],
    ] as const) {
      const loops = [outline, ...islands] as Point[][]
      const shore = loops.flat()
      const inner: (readonly [number, number, number])[] = []
      const bare = divided(shape(polygon(...outline), { islands: islands.map((i) => polygon(...i)) }))
      while (inner.length < 12) {
        const x = 10 * random()
        const y = 7 * random()
        if (depthAt(bare, x, y)) inner.push([x, y, 1 + 2 * random()])
      }
      const points = [...shore, ...inner.map(([x, y]): Point => [x, y])]
      const depths = [...shore.map(() => 0.9), ...inner.map(([, , d]) => d)]
      const triangles = bruteDelaunay(points, loops)
      const p = divided({ ...bare.shape, floor: soundings(0.9, ...inner) })
      expect(relative(volumeAtLevel(p, 0).volumeM3, volumeOn(triangles, points, depths))).toBeLessThan(1e-12)
      let tried = 0
      for (let i = 0; i < 200; i++) {
        const x = 10 * random()
        const y = 7 * random()
        const d = depthAt(p, x, y)
        if (!d) continue
        tried++
        expect(d.depthM).toBeCloseTo(depthOn(triangles, points, depths, x, y)!, 9)
      }
      expect(tried).toBeGreaterThan(60)
    }
  })

  it('takes a sounding on the shore for the depth there: at a corner, on a side, on an arc, a millimetre beside it', () => {
    const outline = polygon([0, 0], [10, 1], [9, 6], [-1, 5])
    const s = shape(outline, { floor: soundings(1, [10, 1, 2], [5, 0.5, 1.7], [4, 3, 2.5]) })
    const p = divided(s)
    expect(depthAt(p, 10 - 1e-7, 1 + 1e-7)!.depthM).toBeCloseTo(2, 5)
    expect(depthAt(p, 5, 0.5 + 1e-7)!.depthM).toBeCloseTo(1.7, 5)
    expect(depthAt(p, 4, 3)!.depthM).toBeCloseTo(2.5, 9)
    expect(depthAt(p, 1e-7, 1e-7)!.depthM).toBeCloseTo(1, 5)
    const third = Math.PI / 3
    const round = (r: number): Floor => soundings(1, [r * Math.cos(third), r * Math.sin(third), 1.8], [0, 0, 2])
    const on = volume(shape(circle(0, 0, 3), { floor: round(3) }))
    const rounded = soundings(1, [1.5, 2.599, 1.8], [0, 0, 2])
    expect(relative(volume(shape(circle(0, 0, 3), { floor: rounded })), on)).toBeLessThan(1e-3)
    expect(relative(volume(shape(circle(0, 0, 3), { floor: round(3.0005) })), on)).toBeLessThan(1e-9)
  })

  it('lets the shore continue the nearest sounding where no depth is given along it, evenly where two are as near', () => {
    const one = shape(BEAN, { floor: soundings(null, [4, 2, 1.7]) })
    expect(relative(volume(one), 1.7 * measure(divided(one), 0).waterSurfaceM2)).toBeLessThan(1e-12)
    const two = divided(shape(box(0, 0, 4, 2), { floor: soundings(null, [1, 1, 1], [3, 1, 3]) }))
    for (const y of [0, 1, 2 - 1e-9]) {
      expect(depthAt(two, 1e-9, y + 1e-10)!.depthM).toBeCloseTo(1, 6)
      expect(depthAt(two, 4 - 1e-9, y + 1e-10)!.depthM).toBeCloseTo(3, 6)
    }
    const between = divided(shape(polygon([0, 0], [2, 0], [4, 0], [4, 2], [0, 2]), { floor: two.shape.floor }))
    expect(depthAt(between, 2, 1e-9)!.depthM).toBeCloseTo(2, 6)
  })

  it('takes soundings in line and soundings given twice, refuses one place with two depths, outside, or none', () => {
    const line = soundings(1, [1, 2, 1.5], [2, 2, 1.8], [3, 2, 2.2], [4, 2, 1.2])
    const twice = soundings(1, [1, 2, 1.5], [2, 2, 1.8], [2, 2, 1.8], [3, 2, 2.2], [4, 2, 1.2])
    const s = shape(box(0, 0, 6, 4), { floor: line })
    expect(relative(volume({ ...s, floor: twice }), volume(s))).toBeLessThan(1e-13)
    const wrong = (floor: Floor, islands: Path[] = []): unknown => {
      const result = partition(shape(box(0, 0, 6, 4), { floor, islands }))
      return result.ok ? undefined : [result.problem.code, result.problem.path, result.problem.at]
    }
    expect(wrong(soundings(1, [2, 2, 1.5], [1, 1, 2], [2, 2, 1.6]))).toEqual([
      'soundings-coincide',
      'floor.points[2]',
      [[2, 2]],
    ])
    expect(wrong(soundings(1, [2, 2, 1.5], [6.2, 2, 1.6]))).toEqual(['sounding-outside', 'floor.points[1]', [[6.2, 2]]])
    expect(wrong(soundings(1, [2, 2, 1.5]), [circle(2, 2, 0.5)])).toEqual([
      'sounding-outside',
      'floor.points[0]',
      [[2, 2]],
    ])
    expect(wrong(soundings(null))).toEqual(['soundings-too-few', 'floor.points', undefined])
    expect(wrong(soundings(1, [2, Number.NaN, 1]))).toEqual(['not-a-number', 'floor.points[0]', undefined])
    expect(wrong(soundings(Number.NaN, [2, 2, 1]))).toEqual(['not-a-number', 'floor.edgeDepthM', undefined])
    expect(relative(volume(shape(box(0, 0, 6, 4), { floor: soundings(1.1) })), 26.4)).toBeLessThan(1e-13)
    // A stated tolerance of the places lets a sounding stray by three standard deviations.
    const loose = {
      ...shape(box(0, 0, 6, 4), { floor: soundings(1, [6.1, 2, 1.6]) }),
      tolerance: { planM: 0.04, depthM: 0.02 },
    }
    expect(partition(loose).ok).toBe(true)
  })

  it('finds the line where a feature meets a triangulated floor, against counting', () => {
    const random = numbers(5)
    const points = Array.from({ length: 40 }, () => [10 * random(), 6 * random(), 0.4 + random()] as const)
    const s = shape(box(0, 0, 10, 6), {
      floor: soundings(0.5, ...points),
      features: [{ kind: 'shelf', path: box(2, 1, 7, 5), depthM: 0.8 }],
    })
    const p = divided(s)
    const bare = divided({ ...s, patches: [] })
    let counted = 0
    for (let i = 0; i < 400; i++)
      for (let k = 0; k < 300; k++) {
        const x = (i + 0.5) / 40
        const y = (k + 0.5) / 50
        const d = depthAt(bare, x, y)!.depthM
        const covered = x > 2 && x < 7 && y > 1 && y < 5 ? Math.min(d, 0.8) : d
        counted += (d - covered) / 2000
        if ((i + k) % 7 === 0) expect(Math.abs(depthAt(p, x, y)!.depthM - covered)).toBeLessThan(1e-9)
      }
    expect(relative(measure(bare, 0).volumeM3 - measure(p, 0).volumeM3, counted)).toBeLessThan(5e-4)
  })
})

describe('triangulated floors', () => {
  const moved = (s: BasinShape, move: (p: Point) => Point, path: (p: Path) => Path): BasinShape => {
    const { floor } = s
    const set = (): Floor => {
      if (floor.kind === 'contours')
        return { ...floor, rings: floor.rings.map((ring) => ({ ...ring, path: path(ring.path) })) }
      if (floor.kind === 'soundings')
        return { ...floor, points: floor.points.map(([x, y, d]) => [...move([x, y]), d] as const) }
      return floor
    }
    return { ...s, outline: path(s.outline), islands: s.islands.map(path), floor: set() }
  }

  // A grid of soundings: every square of it has two diagonals that are as good as each other.
  const grid = soundings(
    0.8,
    ...Array.from({ length: 24 }, (_, i) => {
      const [x, y] = [1.3 + (i % 6), 0.9 + Math.floor(i / 6)]
      return [x, y, 1 + 0.4 * Math.sin(2 * x) + 0.3 * Math.cos(3 * y)] as const
    }),
  )
  const shapes: [string, BasinShape][] = [
    ['soundings in a grid', shape(box(0, 0, 8, 5), { floor: grid })],
    ['a hopper in a freeform pool', shape(BEAN, { floor: contours(1, [2, circle(5, 2.5, 1.1)]) })],
    ['soundings in a freeform pool', shape(BEAN, { floor: soundings(1, [5, 2, 2], [3, 2, 1.6], [6, 3, 2.2]) })],
    [
      'a hopper round an island',
      shape(circle(3, 3, 3), { floor: contours(1, [2, circle(3.2, 3, 1.5)]), islands: [circle(3, 3, 0.5)] }),
    ],
  ]

  it('keep their figures when they are moved, turned and mirrored, and grow with scale', () => {
    for (const [name, s] of shapes) {
      const before = measure(divided(s), 0)
      for (const [angle, k, mirrored] of [
        [0.7, 1, 1],
        [2.1, 1, -1],
        [-1.3, 3, 1],
      ] as const) {
        const [c, n] = [Math.cos(angle), Math.sin(angle)]
        const move = ([x, y]: Point): Point => [
          40 + k * (c * x - n * mirrored * y),
          -7 + k * (n * x + c * mirrored * y),
        ]
        const after = measure(divided(moved(s, move, (path) => turn(path, move, mirrored))), 0)
        expect(relative(after.volumeM3, before.volumeM3 * k * k), name).toBeLessThan(1e-9)
        expect(relative(after.waterSurfaceM2, before.waterSurfaceM2 * k * k), name).toBeLessThan(1e-9)
      }
    }
  })

  it('weigh each measured depth so that the weights sum to one and give the depth, everywhere', () => {
    for (const [name, s] of shapes) {
      const p = divided(s)
      const { floor } = s
      if (floor.kind !== 'contours' && floor.kind !== 'soundings') throw new Error(name)
      const depths = floor.kind === 'contours' ? floor.rings.map((r) => r.depthM) : floor.points.map(([, , d]) => d)
      const all = [floor.edgeDepthM!, ...depths]
      for (const cell of p.cells) {
        const { plane, weights } = p.floor.pieces[cell.strip]!
        for (const [x, y] of [
          [cell.centreX, cell.centreY],
          [cell.minX, cell.maxY],
        ] as const) {
          const at = (f: { atOrigin: number; dx: number; dy: number }): number => f.atOrigin + f.dx * x + f.dy * y
          const sum = weights.reduce((t, w) => t + at(w.plane), 0)
          const depth = weights.reduce((t, w) => t + at(w.plane) * all[w.depthIndex]!, 0)
          expect(Math.abs(sum - 1), name).toBeLessThan(1e-8)
          expect(Math.abs(depth - at(plane)), name).toBeLessThan(1e-8)
        }
      }
    }
  })

  it('change their volume with each measured depth as the weights say', () => {
    for (const [name, s] of shapes) {
      const p = divided(s)
      const shareOf = new Map<number, number>()
      for (const cell of p.cells)
        for (const { depthIndex, plane } of p.floor.pieces[cell.strip]!.weights)
          shareOf.set(
            depthIndex,
            (shareOf.get(depthIndex) ?? 0) +
              cell.areaM2 * (plane.atOrigin + plane.dx * cell.centreX + plane.dy * cell.centreY),
          )
      const deeper = (index: number, by: number): Floor => {
        const { floor } = s
        if (floor.kind === 'contours')
          return {
            ...floor,
            edgeDepthM: floor.edgeDepthM + (index === 0 ? by : 0),
            rings: floor.rings.map((r, i) => ({ ...r, depthM: r.depthM + (index === i + 1 ? by : 0) })),
          }
        if (floor.kind !== 'soundings') throw new Error(name)
        return {
          ...floor,
          edgeDepthM: floor.edgeDepthM! + (index === 0 ? by : 0),
          points: floor.points.map(([x, y, d], i) => [x, y, d + (index === i + 1 ? by : 0)] as const),
        }
      }
      const h = 1e-5
      for (const index of [...shareOf.keys()].slice(0, 5)) {
        const slope = (volume({ ...s, floor: deeper(index, h) }) - volume({ ...s, floor: deeper(index, -h) })) / (2 * h)
        expect(Math.abs(slope - shareOf.get(index)!), name).toBeLessThan(1e-5)
      }
    }
  })

  it('keep under walls what Steiner’s formula says: fans of narrow triangles that meet at the corners of the pool', () => {
    const floor = contours(0.8, [2, circle(5, 3, 1.5)])
    const s = shape(box(0, 0, 10, 6), { floor })
    const r = 0.3
    const coved = measure(divided({ ...s, wall: { kind: 'cove', radiusM: r } }), 0)
    // What a cove takes hangs on distances alone, whatever the floor; at four square corners K = 8.
    const taken = 32 * r * r * (1 - Math.PI / 4) - 8 * r ** 3 * (5 / 6 - Math.PI / 4)
    expect(relative(coved.volumeM3, volume(s) - taken)).toBeLessThan(1e-8)
    expect(coved.maxDepthM).toBeCloseTo(2, 9)
    expect(measure(divided({ ...s, wall: { kind: 'battered', run: 0.3 } }), 0).maxDepthM).toBeCloseTo(2, 9)
  })

  it('are found for any soundings whatever, with a volume between the least and the greatest depth', () => {
    const place = fc.tuple(
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 0, max: 24 }),
      fc.integer({ min: 0, max: 30 }),
    )
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 1, maxLength: 40 }),
        fc.boolean(),
        fc.constantFrom<Path>(
          box(0, 0, 10, 6),
          BEAN,
          circle(5, 3, 4),
          polygon([0, 0], [10, 0], [10, 6], [6, 6], [5, 1], [4, 6], [0, 6]),
        ),
        (places, isEdgeKnown, outline) => {
          const points = places.map(([x, y, d]) => [x / 4, y / 4, 1 + d / 10] as const)
          const result = partition(shape(outline, { floor: soundings(isEdgeKnown ? 1 : null, ...points) }))
          if (!result.ok) {
            expect(['sounding-outside', 'soundings-coincide']).toContain(result.problem.code)
            return
          }
          const m = measure(result.value, 0)
          const depths = [...points.map(([, , d]) => d), ...(isEdgeKnown ? [1] : [])]
          expect(m.volumeM3).toBeGreaterThan(m.waterSurfaceM2 * Math.min(...depths) - m.errorBoundM3 - 1e-9)
          expect(m.volumeM3).toBeLessThan(m.waterSurfaceM2 * Math.max(...depths) + m.errorBoundM3 + 1e-9)
        },
      ),
      { seed: SEED, numRuns: 300 },
    )
  })
})

/** A path under a similarity; a mirror turns its arcs the other way. */
function turn(path: Path, move: (p: Point) => Point, mirrored: number): Path {
  return {
    start: move(path.start),
    segments: path.segments.map(({ to, bulge, c1, c2 }) => ({
      to: move(to),
      ...(bulge !== undefined && { bulge: bulge * mirrored }),
      ...(c1 && c2 && { c1: move(c1), c2: move(c2) }),
    })),
  }
}

describe('features as deep as a sounding but for a hair', () => {
  // Where their depths meet a floor's triangles, lines run about the sounding at a distance of some 1e-7 m.
  const pool = (lackM: number): BasinShape =>
    shape(circle(0, 0, 3), {
      floor: soundings(0.9, [2.2, 0, 0.66], [-1.57, 0, 1.5], [1.34, 0, 1.09], [0.52, 0, 1.5], [1.22, 0, 1.2]),
      features: [
        { kind: 'shelf', path: box(0.25, -0.5, 1.25, 0.25), depthM: 1.2 - lackM },
        { kind: 'bench', along: { fromSegment: 1, toSegment: 0 }, widthM: 0.5, depthM: 0.9 - lackM },
      ],
    })

  it('hold what the very depth holds', () => {
    for (const lackM of [1e-10, 1e-9, 4e-9, 2e-8, 1e-7])
      expect(Math.abs(volume(pool(lackM)) - volume(pool(0)))).toBeLessThan(20 * lackM + 1e-9)
  })
})
