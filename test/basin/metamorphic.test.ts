import { describe, expect, it } from 'vitest'
import {
  type Axis,
  type BasinShape,
  type Measures,
  measure,
  type Patch,
  type Path,
  type Point,
  reversePath,
  splitSegment,
  type Transform,
  transformPath,
  volumeAtLevel,
} from '../../src/basin/index.ts'
import { BEAN, box, circle, DEMO, divided, relative, shape } from './shapes.ts'

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
}

function onAxis(axis: Axis, m: Transform): Axis {
  const map = ([x, y]: Point): Point => [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f]
  return { from: map(axis.from), to: map(axis.to) }
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
    floor:
      s.floor.kind === 'flat'
        ? { kind: 'flat', depthM: s.floor.depthM * scale }
        : {
            kind: 'profile',
            axis: onAxis(s.floor.axis, m),
            stations: s.floor.stations.map(([at, d]) => [at * scale, d * scale] as const),
          },
    patches: s.patches.map(
      (patch): Patch => ({
        ...patch,
        path: path(patch.path),
        plane: { ...patch.plane, atOrigin: patch.plane.atOrigin * scale },
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

function expectSame(a: Measures, b: Measures, tolerance: number): void {
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

  it('measures the same when any segment gets another point', () => {
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

  it('takes from the water just what a feature stands in', () => {
    const bare = figures(shape(circle(0, 0, 3)))
    const shelf = figures(
      shape(circle(0, 0, 3), { features: [{ kind: 'shelf', path: circle(1, 0.4, 1), depthM: 0.4 }] }),
    )
    expect(relative(bare.volumeM3 - shelf.volumeM3, Math.PI * 1.1)).toBeLessThan(1e-12)
    expect(relative(shelf.wetted.riserM2, 2 * Math.PI * 1.1)).toBeLessThan(1e-12)
  })
})
