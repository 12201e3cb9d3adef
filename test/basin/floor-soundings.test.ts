import { describe, expect, it } from 'vitest'
import { depthAt, type Floor, measure, type Path, type Point, partition, volumeAtLevel } from '../../src/basin/index.ts'
import { bruteDelaunay, depthOn, volumeOn } from '../support/brute-delaunay.ts'
import { soundings, volume } from './floor-shapes.ts'
import { BEAN, box, circle, divided, polygon, relative, shape } from './shapes.ts'

/** Numbers below 1 in a fixed order. */
function numbers(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 16807) % 2147483647
    return state / 2147483647
  }
}

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

  it('has nowhere a depth that was not measured, though soundings stand at a curved shore', () => {
    // On the shore, at a corner of its chords and between two; just inside it. A triangle's plane is drawn on from its chord
    // where it rises by no more than a thirty-second of its own fall.
    for (const [x, y] of [
      [4, 0],
      [4 * Math.cos(0.0123), 4 * Math.sin(0.0123)],
      [4 - 1e-5, 0],
    ] as const) {
      const p = divided(shape(circle(0, 0, 4), { floor: soundings(1.2, [x, y, 2.1]) }))
      expect(measure(p, 0).maxDepthM).toBeCloseTo(2.1, 9)
      expect(Math.min(...p.cells.map(({ minDepthM }) => minDepthM))).toBeGreaterThan(1.2 - 0.9 / 32)
    }
    const at = (k: number, depthM: number): [number, number, number] => [
      Math.round(430 * Math.cos(k)) / 100,
      Math.round(280 * Math.sin(k)) / 100,
      depthM,
    ]
    const oval: Path = {
      start: [4.3, 0],
      segments: [
        { to: [0, 2.8], c1: [4.3, 1.546], c2: [2.375, 2.8] },
        { to: [-4.3, 0], c1: [-2.375, 2.8], c2: [-4.3, 1.546] },
        { to: [0, -2.8], c1: [-4.3, -1.546], c2: [-2.375, -2.8] },
        { to: [4.3, 0], c1: [2.375, -2.8], c2: [4.3, -1.546] },
      ],
    }
    const floor = soundings(1.2, at(0.4, 1.3), at(1.9, 1.8), at(3.1, 2.2), at(4.4, 1.5))
    const p = divided({ ...shape(oval, { floor }), tolerance: { planM: 0.02, depthM: 0.02 } })
    expect(measure(p, 0).maxDepthM).toBeLessThan(2.2 + 0.01)
    expect(Math.min(...p.cells.map(({ minDepthM }) => minDepthM))).toBeGreaterThan(1.2 - 1 / 32)
  })
})
