import { describe, expect, it } from 'vitest'
import {
  areaOf,
  boundsOf,
  fitLoop,
  flatten,
  measure,
  nearestOn,
  type Path,
  type Point,
  pathLength,
  pointOn,
  reversePath,
  STARTING_OUTLINES,
  smoothThrough,
  splitSegment,
  svgPathOf,
  transformPath,
} from '../../src/basin/index.ts'
import { BEAN, circle, divided, polygon, relative, shape } from './shapes.ts'

const MIXED: Path = {
  start: [1, 1],
  segments: [{ to: [5, 1] }, { to: [5, 4], bulge: 0.7 }, { to: [1, 4], c1: [4, 6], c2: [2, 3] }],
}

describe('path geometry', () => {
  it('gives π r² and 2π r for a circle, and the sign of its direction', () => {
    expect(relative(areaOf(circle(1000, -2000, 3)), 9 * Math.PI)).toBeLessThan(1e-12)
    expect(areaOf(reversePath(circle(0, 0, 3)))).toBeLessThan(0)
    expect(relative(pathLength(circle(1, 1, 3)), 6 * Math.PI)).toBeLessThan(1e-14)
  })

  it('boxes arcs and cubics at their extremes', () => {
    const round = boundsOf(circle(1, 2, 3))
    expect([round.minX, round.minY, round.maxX, round.maxY].map((v) => Math.round(v * 1e12) / 1e12)).toEqual([
      -2, -1, 4, 5,
    ])
    const { minX, maxX, minY, maxY } = boundsOf(MIXED)
    for (const [x, y] of flatten(MIXED, 1e-4)) {
      expect(x).toBeGreaterThanOrEqual(minX - 1e-12)
      expect(x).toBeLessThanOrEqual(maxX + 1e-12)
      expect(y).toBeGreaterThanOrEqual(minY - 1e-12)
      expect(y).toBeLessThanOrEqual(maxY + 1e-12)
    }
  })

  it('takes an arc that rounding can’t tell from its chord for the chord', () => {
    for (const bulge of [5e-324, 1e-79, -1e-20]) {
      const path: Path = { start: [0, 0], segments: [{ to: [4, 0], bulge }, { to: [4, 3] }, { to: [0, 3] }] }
      expect(boundsOf(path)).toEqual({ minX: 0, minY: 0, maxX: 4, maxY: 3 })
      expect(areaOf(path)).toBeCloseTo(12, 12)
    }
  })

  it('keeps the shape when a segment is split, reversed, or moved and moved back', () => {
    for (let i = 0; i < 4; i++) {
      const split = splitSegment(MIXED, i, 0.3)
      expect(split.segments.length).toBe(4)
      expect(relative(areaOf(split), areaOf(MIXED))).toBeLessThan(1e-13)
      expect(relative(pathLength(split), pathLength(MIXED))).toBeLessThan(1e-13)
    }
    expect(relative(areaOf(reversePath(MIXED)), -areaOf(MIXED))).toBeLessThan(1e-13)
    const mirrored = transformPath(MIXED, { a: -1, b: 0, c: 0, d: 1, e: 3, f: 0 })
    expect(relative(areaOf(mirrored), -areaOf(MIXED))).toBeLessThan(1e-13)
    expect(transformPath(mirrored, { a: -1, b: 0, c: 0, d: 1, e: 3, f: 0 })).toEqual({
      ...MIXED,
      segments: MIXED.segments.map((s) => expect.objectContaining({ to: s.to })),
    })
  })

  it('finds the nearest point: none of a thousand others is nearer', () => {
    for (const [x, y] of [
      [3, 3],
      [7, 2.5],
      [0, 0],
      [3, 7],
      [-4, 2],
    ] as Point[]) {
      const near = nearestOn(MIXED, x, y)
      expect(pointOn(MIXED, near.segmentIndex, near.t)).toEqual(near.point)
      for (let k = 0; k < 4; k++)
        for (let i = 0; i <= 250; i++) {
          const [px, py] = pointOn(MIXED, k, i / 250)
          expect(Math.hypot(px - x, py - y)).toBeGreaterThanOrEqual(near.distanceM - 1e-9)
        }
    }
  })

  it('flattens within the height asked for', () => {
    for (const chordM of [0.1, 0.001]) {
      const ring = flatten(circle(0, 0, 3), chordM)
      for (let i = 0; i < ring.length; i++) {
        const a = ring[i]!
        const b = ring[(i + 1) % ring.length]!
        expect(3 - Math.hypot((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)).toBeLessThanOrEqual(chordM * 1.0001)
      }
    }
  })

  it('flattens an arc that is all but straight into few sides, however flat', () => {
    for (const bulge of [1e-6, 1e-9, 1e-12]) {
      const sliver: Path = { start: [0, 0], segments: [{ to: [10, 0] }, { to: [0, 0], bulge }] }
      // A quarter of the rise in place of the whole: half as long a chord, and one more for rounding.
      expect(flatten(sliver, (5 * bulge) / 4).length).toBeLessThanOrEqual(4)
    }
  })

  it('writes SVG path data: lines, arcs and cubics as themselves', () => {
    expect(svgPathOf(MIXED)).toMatch(/^M1 1L5 1A[\d.]+ [\d.]+ 0 0 1 5 4C4 6 2 3 1 4Z$/)
  })
})

describe('starting outlines', () => {
  it.each(STARTING_OUTLINES.rows.map((row) => [row.id, row] as const))(
    '%s closes, holds water, and has the measures asked for',
    (_, row) => {
      const made = row.make({})
      if (!made.ok) throw new Error(made.problem.code)
      const p = divided(shape(made.value))
      expect(measure(p, 0).volumeM3).toBeGreaterThan(10)
      const { minX, minY, maxX, maxY } = boundsOf(made.value)
      expect(minX).toBeCloseTo(0, 9)
      expect(minY).toBeCloseTo(0, 9)
      const defaults = new Map(row.parameters.map((q) => [q.id, q.defaultM]))
      if (defaults.has('lengthM')) expect(maxX).toBeCloseTo(defaults.get('lengthM')!, 9)
      if (defaults.has('widthM')) expect(maxY).toBeCloseTo(defaults.get('widthM')!, 9)
      const wrong = row.make({ [row.parameters[0]!.id]: -1 })
      expect(!wrong.ok && wrong.problem.code).toBe('parameter-out-of-range')
    },
  )

  it('gives the kidney of tangent arcs the area of the golden one', () => {
    // Source: KIDNEY-PLANE in test/golden/basin/cases.json, the same four arcs.
    const made = STARTING_OUTLINES.get('kidney')!.make({})
    expect(made.ok && relative(areaOf(made.value), 29.030205592450386)).toBeLessThan(1e-12)
  })

  it('gives the ellipse its exact area and keeps within a hundred-thousandth of it', () => {
    const made = STARTING_OUTLINES.get('ellipse')!.make({ lengthM: 10, widthM: 6 })
    if (!made.ok) throw new Error()
    expect(relative(areaOf(made.value), 15 * Math.PI)).toBeLessThan(1e-13)
    for (const [x, y] of flatten(made.value, 1e-6))
      expect(Math.abs(Math.hypot((x - 5) / 5, (y - 3) / 3) - 1)).toBeLessThan(1e-5)
  })
})

describe('hand-drawn loops', () => {
  const stroke = (n: number, shake: number): Point[] =>
    Array.from({ length: n }, (_, i): Point => {
      const a = (i / (n - 1)) * 2 * Math.PI * 0.98
      const r = 3 + 0.8 * Math.cos(2 * a) + shake * Math.sin(i * 12.9898)
      return [5 + 1.4 * r * Math.cos(a), 3 + r * Math.sin(a)]
    })

  it('become few cubics, smooth at every joint and within the tolerance', () => {
    for (const [tolerance, shake, most] of [
      [0.05, 0.01, 10],
      [0.1, 0.02, 8],
      [0.02, 0, 10],
    ] as const) {
      const fitted = fitLoop(stroke(200, shake), tolerance)
      if (!fitted.ok) throw new Error(fitted.problem.code)
      const { segments, start } = fitted.value
      expect(segments.length).toBeLessThanOrEqual(most)
      segments.forEach((s, i) => {
        const after = segments[(i + 1) % segments.length]!
        const ux = s.to[0] - s.c2![0]
        const uy = s.to[1] - s.c2![1]
        const vx = after.c1![0] - s.to[0]
        const vy = after.c1![1] - s.to[1]
        expect(Math.abs(ux * vy - uy * vx) / (Math.hypot(ux, uy) * Math.hypot(vx, vy))).toBeLessThan(1e-9)
        expect(ux * vx + uy * vy).toBeGreaterThan(0)
      })
      expect(segments[segments.length - 1]!.to).toEqual(start)
      for (const [x, y] of stroke(200, shake))
        expect(nearestOn(fitted.value, x, y).distanceM).toBeLessThanOrEqual(tolerance * 1.01)
      expect(measure(divided(shape(fitted.value)), 0).volumeM3).toBeGreaterThan(40)
    }
  })

  it('lose the overshoot where the hand closes the loop', () => {
    const overshot = [
      ...stroke(200, 0),
      ...stroke(200, 0)
        .slice(0, 12)
        .map(([x, y]): Point => [x - 0.2, y + 0.05]),
    ]
    expect(fitLoop(overshot, 0.05).ok).toBe(true)
  })

  it('are a problem where they cross, are too short, or bound nothing', () => {
    const code = (points: Point[], tolerance = 0.05): string => {
      const result = fitLoop(points, tolerance)
      return result.ok ? 'ok' : result.problem.code
    }
    const eight = Array.from(
      { length: 100 },
      (_, i): Point => [3 * Math.sin((i / 50) * Math.PI), 2 * Math.sin((i / 25) * Math.PI)],
    )
    expect(code([...eight.slice(30), ...eight.slice(0, 30)])).toBe('loop-crosses-itself')
    expect(code([[0, 0]])).toBe('loop-too-short')
    expect(
      code([
        [0, 0],
        [1, 0],
        [2, 0.001],
        [3, 0],
      ]),
    ).toBe('no-area')
    expect(code(stroke(50, 0), 0)).toBe('tolerance-not-positive')
    expect(
      code([
        [0, 0],
        [Number.NaN, 1],
        [2, 2],
      ]),
    ).toBe('not-a-number')
  })
})

describe('smooth curves through points', () => {
  it('pass through every point and bend without a jump', () => {
    const points: Point[] = [
      [0, 0],
      [4, -1],
      [7, 2],
      [5, 5],
      [1, 4],
    ]
    const segments = smoothThrough(points, true)
    expect(segments.map((s) => s.to)).toEqual([...points.slice(1), points[0]])
    const path = { start: points[0]!, segments }
    const h = 1e-5
    for (let i = 0; i < 5; i++) {
      const at = (k: number, t: number): Point => pointOn(path, k, t)
      const bend = (k: number, t: number): number => {
        const [a, b, c] = [at(k, t - h), at(k, t), at(k, t + h)]
        const dx = (c[0] - a[0]) / (2 * h)
        const dy = (c[1] - a[1]) / (2 * h)
        const ddx = (c[0] - 2 * b[0] + a[0]) / h ** 2
        const ddy = (c[1] - 2 * b[1] + a[1]) / h ** 2
        return (dx * ddy - dy * ddx) / Math.hypot(dx, dy) ** 3
      }
      expect(bend(i, 1 - 2 * h)).toBeCloseTo(bend((i + 1) % 5, 2 * h), 2)
    }
  })

  it('come to a circle’s area as the points grow dense, and are lines for fewer than three', () => {
    const points = Array.from(
      { length: 24 },
      (_, i): Point => [Math.cos((i * Math.PI) / 12), Math.sin((i * Math.PI) / 12)],
    )
    expect(relative(areaOf({ start: points[0]!, segments: smoothThrough(points, true) }), Math.PI)).toBeLessThan(1e-4)
    expect(
      smoothThrough(
        [
          [0, 0],
          [1, 1],
        ],
        true,
      ),
    ).toEqual([{ to: [1, 1] }])
    expect(smoothThrough(points, false).length).toBe(23)
    expect(areaOf(polygon(...points))).toBeGreaterThan(0)
    expect(areaOf(BEAN)).toBeLessThan(0)
  })
})
