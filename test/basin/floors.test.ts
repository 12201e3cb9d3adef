import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type BasinShape, type Floor, measure, type Path, type Point, partition } from '../../src/basin/index.ts'
import { contours, soundings, volume } from './floor-shapes.ts'
import { BEAN, box, circle, divided, polygon, relative, shape } from './shapes.ts'

const SEED = 20261125

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
