import { describe, expect, it } from 'vitest'
import { depthAt, type Floor, flatten, measure, type Path, type Point, partition } from '../../src/basin/index.ts'
import { contours, volume } from './floor-shapes.ts'
import { BEAN, box, circle, divided, polygon, relative, shape } from './shapes.ts'

/** Prismatoid between two level sections with parallel sides: h/6 (A₁ + 4 A_m + A₂). */
const prismatoid = (h: number, a1: number, am: number, a2: number): number => (h / 6) * (a1 + 4 * am + a2)

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

  it('takes finer chords where a contour all but touches the shore, and only there', () => {
    const touching = divided(shape(circle(0, 0, 4), { floor: contours(1.2, [2.4, circle(0.5997, 0, 3.4)]) }))
    const apart = divided(shape(circle(0, 0, 4), { floor: contours(1.2, [2.4, circle(0.5, 0, 3.4)]) }))
    expect(touching.cells.length).toBeLessThan(1.2 * apart.cells.length)
    // A touching pair leaves the same floor as one that is a little further apart: V moves on evenly.
    const at = (x: number): number => volume(shape(circle(0, 0, 4), { floor: contours(1.2, [2.4, circle(x, 0, 3.4)]) }))
    const [before, here] = [at(0.59) - at(0.58), at(0.5997) - at(0.5897)]
    expect(Math.abs(here - before)).toBeLessThan(0.2 * Math.abs(before))
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
