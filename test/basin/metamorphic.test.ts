import { describe, expect, it } from 'vitest'
import {
  type Axis,
  type BasinShape,
  type Floor,
  type Measures,
  measure,
  type Patch,
  type Path,
  type Plane,
  type Point,
  reversePath,
  splitSegment,
  type Transform,
  transformPath,
  volumeAtLevel,
} from '../../src/basin/index.ts'
import { BEAN, box, circle, DEMO, divided, polygon, relative, shape } from './shapes.ts'

const POOLS: Record<string, BasinShape> = {
  demo: DEMO,
  'arcs with an island': shape(
    {
      start: [0, 0],
      segments: [
        { to: [8, 0], bulge: -0.2 },
        { to: [8, 4], bulge: 0.6 },
        { to: [2, 4] },
        { to: [0, 2], bulge: 0.4142135623730951 },
      ],
    },
    {
      islands: [circle(5, 2, 0.7)],
      floor: {
        kind: 'profile',
        axis: { from: [0, 1], to: [8, 2] },
        stations: [
          [0, -0.2],
          [5, 1],
          [8, 2],
        ],
      },
      features: [{ kind: 'shelf', path: box(-1, 2.5, 3, 6), depthM: 0.5 }],
    },
  ),
  'bean with a cove': shape(BEAN, {
    wall: { kind: 'cove', radiusM: 0.35 },
    floor: {
      kind: 'profile',
      axis: { from: [0, 2], to: [9, 2] },
      stations: [
        [0, 1],
        [9, 2],
      ],
    },
  }),
  'an oblong with a ramp, a bench and leaning walls': shape(box(0, 0, 8, 4), {
    wall: { kind: 'battered', run: 0.3 },
    floor: {
      kind: 'profile',
      axis: { from: [0, 0], to: [8, 1] },
      stations: [
        [1, 1],
        [7, 2],
      ],
    },
    features: [
      { kind: 'ramp', path: box(-1, -1, 2, 5), axis: { from: [0, 1], to: [2, 1.5] }, fromDepthM: 0.1, toDepthM: 0.7 },
      { kind: 'bench', along: { fromSegment: 1, toSegment: 1 }, widthM: 0.45, depthM: 0.5 },
    ],
  }),
  'an L with leaning walls and an island': shape(polygon([0, 0], [9, 0], [9, 4], [4, 4], [4, 7], [0, 7], [0, 0]), {
    wall: { kind: 'battered', run: 0.5 },
    islands: [circle(2, 2, 0.4)],
  }),
  'a hopper with a shelf': shape(box(0, 0, 10, 5), {
    floor: { kind: 'contours', edgeDepthM: 1, rings: [{ depthM: 2.5, path: box(5.5, 1.4, 8.5, 3.7) }] },
    features: [{ kind: 'shelf', path: circle(0, 2, 1.5), depthM: 0.4 }],
  }),
  'soundings in a pool of arcs': shape(circle(0, 0, 4), {
    floor: {
      kind: 'soundings',
      edgeDepthM: 1,
      points: [
        [0.3, 0.2, 1.9],
        [2, -1, 1.5],
        [-1.7, 1.1, 1.6],
        [-0.8, -2.2, 1.3],
      ],
    },
  }),
  'a cap in a freeform pool': shape(BEAN, {
    floor: { kind: 'dish', form: 'cap', centre: [5, 2.4], radiusM: 2.2, edgeDepthM: 1, depthM: 2 },
    features: [{ kind: 'shelf', path: box(3.6, 3, 5.2, 6), depthM: 0.35 }],
  }),
  'a cone cut by a wall': shape(box(0, 0, 8, 4), {
    floor: { kind: 'dish', form: 'cone', centre: [6.5, 1.4], radiusM: 2.5, edgeDepthM: 1, depthM: 2.2 },
  }),
}

/** A plane motion as a map of points. */
const mapOf =
  (m: Transform) =>
  ([x, y]: Point): Point => [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f]

function onAxis(axis: Axis, m: Transform): Axis {
  return { from: mapOf(m)(axis.from), to: mapOf(m)(axis.to) }
}

/** The plane that has at the moved places the depths, times a scale, that it had at the places. */
function onPlane({ atOrigin, dx, dy }: Plane, m: Transform, scale: number): Plane {
  const square = m.a * m.a + m.b * m.b
  const x = (scale * (m.a * dx + m.c * dy)) / square
  const y = (scale * (m.b * dx + m.d * dy)) / square
  return { atOrigin: scale * atOrigin - x * m.e - y * m.f, dx: x, dy: y }
}

function onFloor(floor: Floor, m: Transform, scale: number): Floor {
  switch (floor.kind) {
    case 'flat':
      return { kind: 'flat', depthM: floor.depthM * scale }
    case 'profile':
      return {
        kind: 'profile',
        axis: onAxis(floor.axis, m),
        stations: floor.stations.map(([at, d]) => [at * scale, d * scale] as const),
      }
    case 'contours':
      return {
        kind: 'contours',
        edgeDepthM: floor.edgeDepthM * scale,
        rings: floor.rings.map(({ depthM, path }) => ({ depthM: depthM * scale, path: transformPath(path, m) })),
      }
    case 'soundings':
      return {
        kind: 'soundings',
        edgeDepthM: floor.edgeDepthM === null ? null : floor.edgeDepthM * scale,
        points: floor.points.map(([x, y, d]) => [...mapOf(m)([x, y]), d * scale] as const),
      }
    case 'dish':
      return {
        ...floor,
        centre: mapOf(m)(floor.centre),
        radiusM: floor.radiusM * scale,
        edgeDepthM: floor.edgeDepthM * scale,
        depthM: floor.depthM * scale,
      }
    default:
      throw new Error('unknown floor')
  }
}

/** A shape moved, turned, mirrored or scaled in plan; depths stay unless `vertical` scales them too. */
function moved(s: BasinShape, m: Transform, scale = 1): BasinShape {
  const path = (p: Path): Path => transformPath(p, m)
  return {
    ...s,
    outline: path(s.outline),
    islands: s.islands.map(path),
    freeboardM: s.freeboardM * scale,
    wall: s.wall.kind === 'cove' ? { kind: 'cove', radiusM: s.wall.radiusM * scale } : s.wall,
    floor: onFloor(s.floor, m, scale),
    patches: s.patches.map(
      (patch): Patch => ({
        ...patch,
        path: path(patch.path),
        plane: onPlane(patch.plane, m, scale),
        ...(patch.band
          ? { band: { axis: onAxis(patch.band.axis, m), fromM: patch.band.fromM * scale, toM: patch.band.toM * scale } }
          : {}),
        ...(patch.except ? { except: path(patch.except) } : {}),
      }),
    ),
  }
}

function figures(s: BasinShape, levelM = 0): Measures {
  return measure(divided(s), levelM)
}

function expectSame(a: Measures, b: Measures, within: number): void {
  // Where chords stand for curves, each answer is as good as the bound that it states for them.
  const tolerance = within + (a.errors.modelM3 + b.errors.modelM3) / b.volumeM3
  for (const [x, y] of [
    [a.volumeM3, b.volumeM3],
    [a.waterSurfaceM2, b.waterSurfaceM2],
    [a.wetted.floorM2, b.wetted.floorM2],
    [a.wetted.wallM2, b.wetted.wallM2],
    [a.wetted.riserM2 + 1, b.wetted.riserM2 + 1],
    [a.wetted.featureM2 + 1, b.wetted.featureM2 + 1],
    [a.perimeterM, b.perimeterM],
    [a.maxDepthM, b.maxDepthM],
  ] as const)
    expect(relative(x, y)).toBeLessThan(tolerance)
}

const turn = (angle: number): Transform => ({
  a: Math.cos(angle),
  b: Math.sin(angle),
  c: -Math.sin(angle),
  d: Math.cos(angle),
  e: 0,
  f: 0,
})

function restarted(path: Path): Path {
  const [first, ...rest] = path.segments
  return {
    start: first!.to,
    segments: [...rest, ...(rest[rest.length - 1]!.to === path.start ? [] : closing(path)), first!],
  }
}

function closing(path: Path): Path['segments'] {
  const last = path.segments[path.segments.length - 1]!.to
  return last[0] === path.start[0] && last[1] === path.start[1] ? [] : [{ to: path.start }]
}

describe.each([
  ['the example, run 1', { ...DEMO, wall: { kind: 'battered', run: 1 } }],
  ['the example, run 0.5', { ...DEMO, wall: { kind: 'battered', run: 0.5 } }],
  [
    'an island in a bean',
    shape(BEAN, { ...POOLS['bean with a cove'], wall: { kind: 'battered', run: 1 }, islands: [circle(4, 2.4, 0.7)] }),
  ],
] as [string, BasinShape][])('leaning walls over a floor that falls: %s', (_, pool) => {
  // Curves are cut elsewhere, and rays pass ends of edges that they did not pass before.
  it('hold the same however they are turned, within a third of the bounds that they state', () => {
    for (const levelM of [0, -0.45]) {
      const truth = figures(pool, levelM)
      for (const angle of [0.3, 1.1, 2.5, 4]) {
        const { volumeM3, errorBoundM3 } = figures(moved(pool, turn(angle)), levelM)
        expect(Math.abs(volumeM3 - truth.volumeM3)).toBeLessThan((errorBoundM3 + truth.errorBoundM3) / 3)
      }
    }
  })
})

describe.each(Object.entries(POOLS))('a pool and its likenesses: %s', (_, pool) => {
  const truth = figures(pool)
  const low = figures(pool, -0.45)

  it('measures the same wherever it lies, also at map coordinates', () => {
    expectSame(figures(moved(pool, { a: 1, b: 0, c: 0, d: 1, e: 12.5, f: -7.25 })), truth, 1e-9)
    // Coordinates of a map grid keep a nanometre: that is all that is lost.
    expectSame(figures(moved(pool, { a: 1, b: 0, c: 0, d: 1, e: 345678, f: 5432109 })), truth, 1e-7)
  })

  it('measures the same however it is turned', () => {
    for (const angle of [0.3, Math.PI / 4, Math.PI / 2, 2.5]) {
      expectSame(figures(moved(pool, turn(angle))), truth, 1e-9)
      expectSame(figures(moved(pool, turn(angle)), -0.45), low, 1e-8)
    }
  })

  it('measures the same in the mirror', () => {
    expectSame(figures(moved(pool, { a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 }), -0.45), low, 1e-8)
  })

  it('scales its volume by k³, areas by k², lengths by k', () => {
    for (const k of [0.01, 3, 900]) {
      const m = figures(moved(pool, { a: k, b: 0, c: 0, d: k, e: 0, f: 0 }, k))
      expect(relative(m.volumeM3, truth.volumeM3 * k ** 3)).toBeLessThan(1e-9)
      expect(relative(m.wetted.totalM2, truth.wetted.totalM2 * k * k)).toBeLessThan(1e-9)
      expect(relative(m.perimeterM, truth.perimeterM * k)).toBeLessThan(1e-9)
    }
  })

  it('measures the same from any first point and in either direction', () => {
    expectSame(figures({ ...pool, outline: restarted(pool.outline) }), truth, 1e-11)
    expectSame(
      figures({ ...pool, outline: reversePath(pool.outline), islands: pool.islands.map(reversePath) }),
      truth,
      1e-11,
    )
    expectSame(
      figures({ ...pool, patches: pool.patches.map((q) => ({ ...q, path: reversePath(q.path) })) }, -0.45),
      low,
      1e-9,
    )
  })

  it('measures the same when any segment gets another point, but where the floor is triangulated from the points', () => {
    // A point more on a straight shore is a corner more for the triangles of contours and soundings: another floor, by its
    // definition. On an arc the triangulation sets its own points.
    if (pool.floor.kind === 'contours') return
    for (let i = 0; i < pool.outline.segments.length; i++)
      for (const t of [0.25, 0.6])
        expectSame(figures({ ...pool, outline: splitSegment(pool.outline, i, t) }), truth, 1e-9)
  })

  it('measures the same with its features in another order, or twice', () => {
    expectSame(figures({ ...pool, patches: [...pool.patches].reverse() }, -0.45), low, 1e-10)
    expectSame(figures({ ...pool, patches: [...pool.patches, ...pool.patches] }, -0.45), low, 1e-10)
  })

  it('measures the same with a feature buried under the floor', () => {
    const buried: Patch = { path: box(1, 1, 4, 3), plane: { atOrigin: 9, dx: 0.1, dy: 0 }, feature: 90 }
    expectSame(figures({ ...pool, patches: [...pool.patches, buried] }, -0.45), low, 1e-9)
  })

  it('has its water surface as the derivative of volume by level, and a volume that is convex in it', () => {
    const p = divided(pool)
    const h = 1e-3
    let before = -Infinity
    for (let level = -1.73; level < 0.3; level += 0.107) {
      const down = volumeAtLevel(p, level - h).volumeM3
      const here = volumeAtLevel(p, level)
      const up = volumeAtLevel(p, level + h).volumeM3
      const slope = (up - down) / (2 * h)
      const lo = volumeAtLevel(p, level - h).waterSurfaceM2
      const hi = volumeAtLevel(p, level + h).waterSurfaceM2
      expect(slope).toBeGreaterThanOrEqual(lo - 1e-6)
      expect(slope).toBeLessThanOrEqual(hi + 1e-6)
      expect(here.waterSurfaceM2).toBeGreaterThanOrEqual(before - 1e-9)
      before = here.waterSurfaceM2
    }
  })
})

describe('sums', () => {
  it('adds up when a line splits a pool in two', () => {
    const floor = {
      kind: 'profile',
      axis: { from: [0, 0], to: [10, 3] },
      stations: [
        [1, 0.8],
        [4, 1.3],
        [9, 2.2],
      ],
    } as const
    const whole = figures(shape(box(0, 0, 10, 5), { floor }), -0.3)
    for (const x of [1, 3.3, 7.9]) {
      const left = figures(shape(box(0, 0, x, 5), { floor }), -0.3)
      const right = figures(shape(box(x, 0, 10, 5), { floor }), -0.3)
      expect(relative(left.volumeM3 + right.volumeM3, whole.volumeM3)).toBeLessThan(1e-13)
      expect(relative(left.wetted.floorM2 + right.wetted.floorM2, whole.wetted.floorM2)).toBeLessThan(1e-13)
    }
  })

  it('adds up over a cut through a hollow', () => {
    const floor = { kind: 'dish', form: 'cap', centre: [5, 2], radiusM: 2.5, edgeDepthM: 1, depthM: 2.1 } as const
    const whole = figures(shape(box(0, 0, 10, 5), { floor }))
    for (const x of [4.1, 5, 7]) {
      const left = figures(shape(box(0, 0, x, 5), { floor }))
      const right = figures(shape(box(x, 0, 10, 5), { floor }))
      expect(relative(left.volumeM3 + right.volumeM3, whole.volumeM3)).toBeLessThan(1e-12)
      expect(relative(left.wetted.floorM2 + right.wetted.floorM2, whole.wetted.floorM2)).toBeLessThan(1e-9)
    }
  })

  it('doesn’t add up over a cut where the new wall has a cove or leans, or is a shore to a triangulated floor: it takes its own', () => {
    const r = 0.4
    const cove = { wall: { kind: 'cove', radiusM: r } } as const
    const parts = (more: Parameters<typeof shape>[1]): number =>
      figures(shape(box(0, 0, 4, 5), more)).volumeM3 + figures(shape(box(4, 0, 10, 5), more)).volumeM3
    const whole = (more: Parameters<typeof shape>[1]): number => figures(shape(box(0, 0, 10, 5), more)).volumeM3
    // Two coves of 5 m more, and four corners: each takes r²(1 − π/4) l, less 2 r³(5/6 − π/4) for a corner (Steiner).
    const lost = 2 * 5 * r * r * (1 - Math.PI / 4) - 8 * r ** 3 * (5 / 6 - Math.PI / 4)
    expect(whole(cove) - parts(cove)).toBeCloseTo(lost, 10)
    // Two batters of run k: each takes k D²/2 l, less 2 k² D³/6 · 2 for its corners.
    const [k, d] = [0.5, 1.5]
    const batter = { wall: { kind: 'battered', run: k } } as const
    expect(whole(batter) - parts(batter)).toBeCloseTo(k * d * d * 5 - (8 * k * k * d ** 3) / 6, 10)
  })

  it('takes from the water just what a feature stands in', () => {
    const bare = figures(shape(circle(0, 0, 3)))
    const shelf = figures(
      shape(circle(0, 0, 3), { features: [{ kind: 'shelf', path: circle(1, 0.4, 1), depthM: 0.4 }] }),
    )
    expect(relative(bare.volumeM3 - shelf.volumeM3, Math.PI * 1.1)).toBeLessThan(1e-12)
    expect(relative(shelf.wetted.riserM2, 2 * Math.PI * 1.1)).toBeLessThan(1e-12)
  })
})
