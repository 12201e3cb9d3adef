import { describe, expect, it } from 'vitest'
import { type BasinShape, derivativesOf, measure, type Path, type Point } from '../../src/basin/index.ts'
import { BEAN, BENT, circle, divided, relative, shape } from './shapes.ts'

const DEPTH_M = 1.5

/** Each segment as so many points on the exact curve, a chord's height below 1e-7 m. */
function pointsOf(path: Path): Point[] {
  const points: Point[] = []
  let [x0, y0] = path.start
  for (const { to, bulge, c1, c2 } of path.segments as readonly {
    to: Point
    bulge?: number
    c1?: Point
    c2?: Point
  }[]) {
    const count = bulge !== undefined || c1 ? 3000 : 1
    for (let i = 0; i < count; i++) {
      const t = i / count
      if (c1 && c2) {
        const u = 1 - t
        const by = (k: 0 | 1, from: number): number =>
          u ** 3 * from + 3 * u * u * t * c1[k] + 3 * u * t * t * c2[k] + t ** 3 * to[k]
        points.push([by(0, x0), by(1, y0)])
      } else if (bulge !== undefined) {
        const turn = 4 * Math.atan(bulge)
        const radius = Math.hypot(to[0] - x0, to[1] - y0) / 2 / Math.sin(turn / 2)
        const heading = Math.atan2(to[1] - y0, to[0] - x0) - turn / 2
        const chord = 2 * radius * Math.sin((t * turn) / 2)
        points.push([x0 + chord * Math.cos(heading + (t * turn) / 2), y0 + chord * Math.sin(heading + (t * turn) / 2)])
      } else points.push([x0, y0])
    }
    ;[x0, y0] = to
  }
  return points
}

/**
 * Water under a batter by the definition, min(depth, distance / run) at the middles of squares; of the squares of distance
 * along each scan line the least is kept chord by chord.
 */
function counted(path: Path, run: number, h: number): number {
  const ring = pointsOf(path)
  const reach = run * DEPTH_M
  const [left, low, wide, tall] = [-1, -1, Math.round(7.5 / h), Math.round(6.5 / h)]
  const least = new Float64Array(wide * tall).fill(reach * reach)
  const crossings: number[][] = Array.from({ length: tall }, () => [])
  ring.forEach(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!
    const [dx, dy] = [bx - ax, by - ay]
    const length2 = dx * dx + dy * dy
    const from = (at: number, end: number): number => Math.max(0, Math.floor((at - reach - end) / h - 0.5))
    const to = (at: number, end: number, most: number): number =>
      Math.min(most - 1, Math.ceil((at + reach - end) / h - 0.5))
    for (let k = from(Math.min(ay, by), low); k <= to(Math.max(ay, by), low, tall); k++) {
      const y = low + (k + 0.5) * h
      if (ay > y !== by > y) crossings[k]!.push(ax + ((y - ay) / dy) * dx)
      for (let j = from(Math.min(ax, bx), left); j <= to(Math.max(ax, bx), left, wide); j++) {
        const x = left + (j + 0.5) * h
        const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length2))
        const [ex, ey] = [ax + t * dx - x, ay + t * dy - y]
        const d2 = ex * ex + ey * ey
        if (d2 < least[k * wide + j]!) least[k * wide + j] = d2
      }
    }
  })
  let sum = 0
  crossings.forEach((xs, k) => {
    xs.sort((a, b) => a - b)
    for (let i = 0; i + 1 < xs.length; i += 2)
      for (let j = Math.ceil((xs[i]! - left) / h - 0.5); left + (j + 0.5) * h < xs[i + 1]!; j++)
        sum += Math.sqrt(least[k * wide + j]!) / run
  })
  return sum * h * h
}

describe.each([0.4, 0.3])('walls with a run of %s about arcs, a cubic and blunt corners', (run) => {
  const p = divided(shape(BENT, { floor: { kind: 'flat', depthM: DEPTH_M }, wall: { kind: 'battered', run } }))

  it('holds as much when it is moved: derivatives by all nodes and handles sum to nothing', () => {
    let [x, y, size] = [0, 0, 0]
    for (const { kind, value } of derivativesOf(p, 0))
      if ((kind === 'node' || kind === 'handle') && typeof value !== 'number') {
        x += value[0]
        y += value[1]
        size += Math.hypot(value[0], value[1])
      }
    expect(size).toBeGreaterThan(10)
    expect(Math.hypot(x, y)).toBeLessThan(1e-8 * size)
  })

  it('holds what squares counted by the definition of the wall hold', () => {
    expect(relative(measure(p, 0).volumeM3, counted(BENT, run, 0.02))).toBeLessThan(1e-4)
  })
})

describe('a round island whose two arcs meet at a joint of less and less of a corner', () => {
  // dV/db of one arc is the same from both sides: a joint that opens by 1e-6 rad takes no water of its own.
  const withIsland = (by: number): BasinShape =>
    shape(circle(1, 0, 4), {
      islands: [
        {
          start: [0.1, -0.5],
          segments: [
            { to: [-1.1, -0.5], bulge: 1 },
            { to: [0.1, -0.5], bulge: 1 + by },
          ],
        },
      ],
      wall: { kind: 'battered', run: 0.6 },
    })
  for (const by of [1e-3, 1e-4, 5e-5, 2e-5, 1e-5, 2e-6, 6e-7])
    it(`holds what its derivative says: ${by} rad`, () => {
      const p = divided(withIsland(0))
      const slope = derivativesOf(p, 0).find(({ path }) => path === 'islands[0].segments[1].bulge')!.value as number
      const { volumeM3, errorBoundM3 } = measure(p, 0)
      const grown = measure(divided(withIsland(by)), 0)
      expect(errorBoundM3 + grown.errorBoundM3).toBeLessThan(1e-9)
      expect(Math.abs(grown.volumeM3 - volumeM3 - slope * by)).toBeLessThan(1e-9 + by * by)
    })
})

describe('a slit in the shore whose round tip is as narrow as places have digits', () => {
  // Two lines with half a circle between them: of the places' last digits its joints turn by up to some 1e-6 rad.
  const slit = (widthM: number): BasinShape => {
    const [x0, y0] = [12.5, -7.25]
    const [cos, sin] = [Math.cos(0.3), Math.sin(0.3)]
    const place = (u: number, v: number): Point => [x0 + u * cos - v * sin, y0 + u * sin + v * cos]
    return shape(
      {
        start: place(0, 0),
        segments: [
          { to: place(2, 0) },
          { to: place(2, 3) },
          { to: place(2 + widthM, 3), bulge: -1 },
          { to: place(2 + widthM, 0) },
          { to: place(3, 0) },
          { to: place(3, 5) },
          { to: place(0, 5) },
        ],
      },
      { wall: { kind: 'battered', run: 0.9 } },
    )
  }
  const volumeOf = (widthM: number): number => measure(divided(slit(widthM)), 0).volumeM3
  const rate = (volumeOf(2e-5) - volumeOf(1e-5)) / 1e-5
  const closed = volumeOf(1e-5) - rate * 1e-5
  for (const widthM of [1e-6, 1e-7, 3e-8, 1e-8, 3e-9, 1e-9])
    it(`holds what a line in its place leaves, within the bound: ${widthM} m`, () => {
      const { volumeM3, errorBoundM3 } = measure(divided(slit(widthM)), 0)
      expect(Math.abs(volumeM3 - closed - rate * widthM)).toBeLessThan(errorBoundM3 + 1e-9)
      expect(errorBoundM3).toBeLessThan(5e-6)
    })
})

describe('a smooth joint of two cubics, opened by moving a handle by some 1e-6 m', () => {
  const pool = (segment: number, handle: 'c1' | 'c2', along: 0 | 1, by: number): BasinShape =>
    shape(
      {
        ...BEAN,
        segments: BEAN.segments.map((each, i) => {
          if (i !== segment) return each
          const [x, y] = each[handle]!
          return { ...each, [handle]: along === 0 ? [x + by, y] : [x, y + by] }
        }),
      },
      { wall: { kind: 'battered', run: 1 } },
    )
  const whole = divided(pool(0, 'c1', 0, 0))
  const before = measure(whole, 0)
  for (const [segment, handle, along] of [
    [1, 'c1', 1],
    [3, 'c2', 0],
    [2, 'c1', 0],
  ] as const)
    it(`holds what the derivative says, within the bound: ${handle} of segment ${segment}`, () => {
      const path = `outline.segments[${segment}].${handle}`
      const slope = derivativesOf(whole, 0).find((each) => each.path === path)!.value as Point
      for (const micro of [-8, -4, -2, -1.5, -1, -0.5, 0.5, 1, 1.5, 2, 4, 8]) {
        const by = micro * 1e-6
        const { volumeM3, errorBoundM3 } = measure(divided(pool(segment, handle, along, by)), 0)
        const off = Math.abs(volumeM3 - before.volumeM3 - slope[along] * by)
        expect(off, `moved by ${by}`).toBeLessThan(errorBoundM3 + before.errorBoundM3 + 1e-8)
      }
    })
})
