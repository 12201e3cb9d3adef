import { describe, expect, it } from 'vitest'
import {
  type BasinShape,
  depthAt,
  measure,
  type Path,
  type Point,
  partition,
  transformPath,
  volumeAtLevel,
} from '../../src/basin/index.ts'
import { countedByDefinition } from './brute-force.ts'
import { BEAN, box, circle, divided, polygon, relative, shape } from './shapes.ts'

const batter = (run: number) => ({ kind: 'battered', run }) as const

/** A path a share of its size, drawn in toward a place. */
const shrunk = (path: Path, share: number, [x, y]: Point): Path =>
  transformPath(path, { a: share, b: 0, c: 0, d: share, e: (1 - share) * x, f: (1 - share) * y })

describe('battered walls', () => {
  it('make a frustum of a rectangle at every level', () => {
    // Prismatoid: V = h/6 (A + 4 M + B) between the floor at depth D and the water; a level h above the floor is l × w there.
    const [length, width, depth, run] = [8, 5, 2, 0.25]
    const p = divided(shape(box(0, 0, length, width), { floor: { kind: 'flat', depthM: depth }, wall: batter(run) }))
    for (const level of [0, -0.4, -1, -1.8]) {
      const at = (d: number): [number, number] => [length - 2 * run * d, width - 2 * run * d]
      const [l0, w0] = at(-level)
      const [l1, w1] = at(depth)
      const truth = ((depth + level) / 6) * (l0 * w0 + (l0 + l1) * (w0 + w1) + l1 * w1)
      const m = measure(p, level)
      expect(relative(m.volumeM3, truth)).toBeLessThan(1e-12)
      expect(relative(m.waterSurfaceM2, l0 * w0)).toBeLessThan(1e-12)
      expect(m.perimeterM).toBeCloseTo(2 * (l0 + w0), 9)
      expect(m.wetted.floorM2).toBeCloseTo(l1 * w1, 9)
      expect(m.wetted.wallM2).toBeCloseTo(Math.sqrt(1 + 1 / run ** 2) * (l0 * w0 - l1 * w1), 9)
      expect(m.centroid[0]).toBeCloseTo(length / 2, 12)
      expect(m.maxDepthM).toBeCloseTo(depth + level, 12)
    }
  })

  it('meet in the middle of a slit between an arc that is all but straight and its chord', () => {
    // Everywhere the nearer of two walls that are parallel but for the square of the slit's slope makes the depth:
    // V = ∫ h²/4b ds, h = H (1 − (2s/L)²) wide, so 2/15 H² L/b, as long as no wall comes down to the floor.
    const [length, run] = [4, 0.1]
    for (const bulge of [3e-4, 1e-3, 2e-3, 5e-3])
      for (const turn of [0, 0.1244]) {
        const outline: Path = {
          start: [0, 0],
          segments: [{ to: [-length * Math.cos(turn), -length * Math.sin(turn)], bulge }],
        }
        const divides = partition(shape(outline, { wall: batter(run) }))
        if (!divides.ok) continue
        const truth = ((2 / 15) * (bulge * (length / 2)) ** 2 * length) / run
        expect(relative(measure(divides.value, 0).volumeM3, truth)).toBeLessThan(1e-4)
      }
  })

  it('leave their water in a slit about an island as round as the pool, a millimetre wide', () => {
    const round: Path = {
      start: [1, 0],
      segments: [
        { to: [0, -1] },
        { to: [-1, 0] },
        { to: [0, 1], c1: [-0.9166666666666667, 0.5833333333333333], c2: [-0.5833333333333333, 0.9166666666666667] },
        { to: [1, 0] },
      ],
    }
    for (const share of [0.9992, 0.999, 0.99]) {
      const island = shrunk(round, share, [0, 0])
      const p = divided(shape(round, { wall: batter(0.22), islands: [island] }))
      // Over the tops of its walls each metre of water is its surface; below them there is a wedge, h²/4b for each metre of shore.
      const [low, mid, high] = [measure(p, 0), measure(p, 0.1), measure(p, 0.2)]
      const thin = 3 * Math.SQRT2 * ((1 - share) * Math.SQRT1_2) ** 2
      expect(low.volumeM3).toBeGreaterThan(thin / (4 * 0.22))
      expect(low.volumeM3).toBeLessThan((2.2 * thin) / (4 * 0.22))
      expect(relative(mid.volumeM3 - low.volumeM3, 0.1 * low.waterSurfaceM2)).toBeLessThan(1e-6)
      expect(relative(high.volumeM3 - mid.volumeM3, 0.1 * mid.waterSurfaceM2)).toBeLessThan(1e-6)
    }
  })

  it('leave their water in a slit about an island where a side comes to its corner with the handle on it', () => {
    // Beside such a corner the side runs so slowly that a step along it is a long way at once.
    const pool: Path = {
      start: [12.786, -0.25],
      segments: [
        { to: [7.859, 0.796] },
        { to: [6.802, 0.725] },
        { to: [6.123, 0.184], c1: [6.711, 0.375], c2: [6.123, 0.184] },
        { to: [6.123, -0.684], c1: [6.123, 0.184], c2: [6.123, -0.395] },
        { to: [6.579, -2.2], c1: [6.123, -0.684], c2: [6.427, -1.695] },
        { to: [8.895, -2.595] },
        { to: [12.786, -0.25], c1: [10.315, -2.018], c2: [12.786, -0.25] },
      ],
    }
    const island = shrunk(pool, 0.999, [8.494, -0.534])
    const wall = batter(0.792345)
    const p = divided(shape(pool, { floor: { kind: 'flat', depthM: 40 }, wall, islands: [island] }))
    // Upright above the datum: each metre of water is its surface, which no ray has a part in.
    const [low, mid, high] = [measure(p, 0), measure(p, 0.1), measure(p, 0.2)]
    expect(low.volumeM3).toBeGreaterThan(0)
    expect(relative(mid.volumeM3 - low.volumeM3, 0.1 * low.waterSurfaceM2)).toBeLessThan(1e-6)
    expect(relative(high.volumeM3 - low.volumeM3, 0.2 * low.waterSurfaceM2)).toBeLessThan(1e-6)
  })

  it('leave the greatest depth where a bench’s round edge turns back across the fall, beyond all that the wall makes', () => {
    // Along the fall the floor is 1.2 + 0.1 s deep; the edge, a circle of 3 m about the middle, is furthest down at s = 4 + 3.
    const fall = { from: [-2.4, -3.2], to: [2.4, 3.2] } as const
    const floor = {
      kind: 'profile',
      axis: fall,
      stations: [
        [0, 1.2],
        [8, 2],
      ],
    } as const
    const features = [{ kind: 'bench', along: { fromSegment: 0, toSegment: 0 }, widthM: 1, depthM: 0.4 }] as const
    for (const wall of [batter(0.1), { kind: 'cove', radiusM: 0.5 } as const])
      expect(measure(divided(shape(circle(0, 0, 4), { floor, wall, features })), 0).maxDepthM).toBeCloseTo(1.9, 9)
  })

  it('make a cone at a re-entrant corner: A(n) = A − P n + (5 − π/4) n² for an L', () => {
    const [depth, run] = [1.6, 0.25]
    const ell = polygon([0, 0], [9, 0], [9, 4], [4, 4], [4, 7], [0, 7])
    const p = divided(shape(ell, { floor: { kind: 'flat', depthM: depth }, wall: batter(run) }))
    for (const level of [0, -0.4, -1, -1.5]) {
      const area = (n: number): number => 48 - 32 * n + (5 - Math.PI / 4) * n * n
      const whole = (n: number): number => 48 * n - 16 * n * n + ((5 - Math.PI / 4) * n ** 3) / 3
      const truth = (whole(run * depth) - whole(-level * run)) / run
      const m = measure(p, level)
      expect(relative(m.volumeM3, truth)).toBeLessThan(1e-12)
      expect(relative(m.waterSurfaceM2, area(-level * run))).toBeLessThan(1e-12)
      expect(m.perimeterM).toBeCloseTo(32 - 2 * (5 - Math.PI / 4) * -level * run, 9)
    }
  })

  it('make a frustum of a cone of a round basin, and add an upright face above the datum', () => {
    const [radius, depth, run] = [3, 1.5, 0.4]
    const p = divided(shape(circle(-4, 7, radius), { floor: { kind: 'flat', depthM: depth }, wall: batter(run) }))
    const foot = radius - run * depth
    const frustum = ((Math.PI * depth) / 3) * (radius ** 2 + radius * foot + foot ** 2)
    const m = measure(p, 0.1)
    expect(relative(m.volumeM3, frustum + 0.1 * Math.PI * radius ** 2)).toBeLessThan(1e-12)
    const slant = Math.PI * (radius + foot) * Math.hypot(depth, radius - foot)
    expect(relative(m.wetted.wallM2, slant + 0.1 * 2 * Math.PI * radius)).toBeLessThan(1e-12)
    expect(m.perimeterM).toBeCloseTo(2 * Math.PI * radius, 12)
  })

  it('meet as a roof in a stadium, however far below the floor lies', () => {
    // 6 m of a triangle 4 m wide and 2 m high, and a cone of radius and height 2 m: 24 + 8π/3.
    const outline: Path = {
      start: [-3, -2],
      segments: [{ to: [3, -2] }, { to: [3, 2], bulge: 1 }, { to: [-3, 2] }, { to: [-3, -2], bulge: 1 }],
    }
    for (const depthM of [2.05, 2.8, 3, 6]) {
      const m = measure(divided(shape(outline, { floor: { kind: 'flat', depthM }, wall: batter(1) })), 0)
      expect(Math.abs(m.volumeM3 - (24 + (8 * Math.PI) / 3))).toBeLessThan(1e-10)
      // Where it is turned, rays beside the joints may be off by as much.
      expect(m.errorBoundM3).toBeLessThan(1e-6)
      expect(m.wetted.wallM2).toBeCloseTo(Math.SQRT2 * (24 + 4 * Math.PI), 9)
      expect(m.maxDepthM).toBeCloseTo(2, 9)
    }
  })

  it('follow Steiner’s formula in a stadium and in a ring about an island, on flat floors', () => {
    // V = A D − P M0 + K M1, M0 = kD²/2, M1 = k²D³/6; lateral √(1 + k²)(P D − K k D²/2) with K the turn toward the water.
    const [depth, run] = [1.2, 0.5]
    const stadium: Path = {
      start: [-3, -2],
      segments: [{ to: [3, -2] }, { to: [3, 2], bulge: 1 }, { to: [-3, 2] }, { to: [-3, -2], bulge: 1 }],
    }
    const cases: { s: BasinShape; area: number; perimeter: number; turn: number }[] = [
      {
        s: shape(stadium, { floor: { kind: 'flat', depthM: depth }, wall: batter(run) }),
        area: 24 + 4 * Math.PI,
        perimeter: 12 + 4 * Math.PI,
        turn: 2 * Math.PI,
      },
      {
        s: shape(circle(0, 0, 4), {
          islands: [circle(0.4, -0.3, 1)],
          floor: { kind: 'flat', depthM: depth },
          wall: batter(run),
        }),
        area: 15 * Math.PI,
        perimeter: 10 * Math.PI,
        turn: 0,
      },
    ]
    for (const { s, area, perimeter, turn } of cases) {
      const m = measure(divided(s), 0)
      const truth = area * depth - (perimeter * run * depth ** 2) / 2 + (turn * run ** 2 * depth ** 3) / 6
      expect(relative(m.volumeM3, truth)).toBeLessThan(1e-12)
      const lateral = Math.hypot(1, run) * (perimeter * depth - (turn * run * depth ** 2) / 2)
      expect(relative(m.wetted.wallM2, lateral)).toBeLessThan(1e-12)
    }
  })

  it('meet in a hipped roof where they are gentler than the water is deep', () => {
    // A hipped roof over l × w with slope 1/k upside down: V = w² (3 l − w) / (12 k).
    const [length, width, run] = [7, 3, 1.5]
    const p = divided(shape(box(0, 0, length, width), { floor: { kind: 'flat', depthM: 3 }, wall: batter(run) }))
    const m = measure(p, 0)
    expect(relative(m.volumeM3, (width ** 2 * (3 * length - width)) / (12 * run))).toBeLessThan(1e-12)
    expect(m.maxDepthM).toBeCloseTo(width / 2 / run, 9)
    expect(m.wetted.floorM2).toBeLessThan(1e-9)
    expect(relative(m.wetted.wallM2, length * width * Math.hypot(1, 1 / run))).toBeLessThan(1e-12)
    // A round basin likewise is a cone.
    const cone = measure(divided(shape(circle(0, 0, 2), { floor: { kind: 'flat', depthM: 5 }, wall: batter(1) })), 0)
    expect(relative(cone.volumeM3, (Math.PI * 8) / 3)).toBeLessThan(1e-12)
  })

  it('cut a sloping floor as counting squares by the definition does', () => {
    const s = shape(box(0, 0, 10, 4), { floor: profile(1, 2, 10), wall: batter(0.3) })
    const p = divided(s)
    const levels = [0, -0.3, -1.1]
    countedByDefinition(s, levels, 400, [-0.0071, -3.0043], 10.02).forEach(({ volume, area }, i) => {
      const m = measure(p, levels[i]!)
      expect(relative(m.volumeM3, volume)).toBeLessThan(1e-3)
      expect(relative(m.waterSurfaceM2, area)).toBeLessThan(6e-3)
    })
  })

  it('is the law of its definition on a freeform sloping pool with features, an island and a re-entrant shore, at any level', () => {
    const s = shape(BEAN, {
      islands: [circle(4, 2.2, 0.5)],
      floor: profile(0.8, 2, 9),
      wall: batter(0.45),
      features: [
        { kind: 'shelf', path: box(2.6, 3.2, 4.6, 6), depthM: 0.35 },
        {
          kind: 'roundSteps',
          centre: [9, 2.4],
          treads: [
            [0.6, 0.3],
            [0.9, 0.6],
            [1.2, 0.9],
          ],
        },
      ],
    })
    const p = divided(s)
    const levels = [0.1, 0, -0.25, -0.7, -1.2]
    countedByDefinition(s, levels, 240, [0, -3], 10).forEach(({ volume, area }, i) => {
      const m = measure(p, levels[i]!)
      expect(relative(m.volumeM3, volume)).toBeLessThan(1e-3)
      expect(relative(m.waterSurfaceM2, area)).toBeLessThan(6e-3)
    })
  })

  it('has its shore all about where the floor comes up to the water at an end, under an upright wall and a leaning one', () => {
    // A zero-depth entry 5 m wide, 2 m deep after 10 m, full to the datum; a lake's shore is its outline: 2 (10 + 5) m.
    const beach = {
      floor: {
        kind: 'profile',
        axis: { from: [0, 2.5], to: [10, 2.5] },
        stations: [
          [0, 0],
          [10, 2],
        ],
      },
    } as const
    for (const wall of [{ kind: 'vertical' }, batter(0.2)] as const) {
      const p = divided(shape(box(0, 0, 10, 5), { ...beach, wall }))
      expect(measure(p, 0).perimeterM).toBeCloseTo(30, 9)
      // Lower by a hundredth, the water ends 5 cm before the entry: two sides and two ends.
      if (wall.kind === 'vertical') expect(measure(p, -0.01).perimeterM).toBeCloseTo(2 * (9.95 + 5), 9)
    }
  })
  it('has the water surface as the derivative of its volume', () => {
    const p = divided(shape(BEAN, { floor: profile(0.8, 2, 9), wall: batter(0.6) }))
    const h = 1e-4
    for (const level of [0.05, -0.2, -0.65, -1.1, -1.6]) {
      const slope = (volumeAtLevel(p, level + h).volumeM3 - volumeAtLevel(p, level - h).volumeM3) / (2 * h)
      expect(relative(slope, volumeAtLevel(p, level).waterSurfaceM2)).toBeLessThan(1e-6)
    }
  })

  it('tell wall from floor at a point, with the slope of each', () => {
    const p = divided(shape(box(0, 0, 8, 4), { floor: { kind: 'flat', depthM: 1 }, wall: batter(0.5) }))
    const wall = depthAt(p, 0.2, 2)
    expect(wall).toMatchObject({ part: 'wall', slope: 2 })
    expect(wall?.depthM).toBeCloseTo(0.4, 12)
    expect(depthAt(p, 4, 2)).toEqual({ depthM: 1, part: 'floor', slope: 0 })
  })

  it('stand upright with no run, and are refused with less than none', () => {
    const upright = measure(divided(shape(BEAN)), -0.2)
    expect(measure(divided(shape(BEAN, { wall: batter(0) })), -0.2)).toEqual(upright)
    const s = shape(BEAN, { wall: batter(-0.1) })
    const result = partition(s)
    expect(result.ok ? '' : result.problem.code).toBe('run-negative')
    const none = partition({ ...s, wall: batter(Number.NaN) })
    expect(none.ok ? '' : none.problem.code).toBe('not-a-number')
  })
})

function profile(from: number, to: number, lengthM: number) {
  return {
    kind: 'profile' as const,
    axis: { from: [0, 0] as const, to: [lengthM, 0] as const },
    stations: [
      [0, from],
      [lengthM, to],
    ] as const,
  }
}
