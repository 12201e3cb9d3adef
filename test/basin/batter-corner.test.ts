import { describe, expect, it } from 'vitest'
import { measure } from '../../src/basin/index.ts'
import { box, divided, shape } from './shapes.ts'

type Vertex = readonly [number, number]

/** What is left of a convex polygon where a linear function is positive. */
function clipped(polygon: readonly Vertex[], f: (v: Vertex) => number): Vertex[] {
  return polygon.flatMap((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!
    const [fa, fb] = [f(a), f(b)]
    const cut: Vertex[] =
      fa > 0 !== fb > 0 ? [[a[0] + (fa / (fa - fb)) * (b[0] - a[0]), a[1] + (fa / (fa - fb)) * (b[1] - a[1])]] : []
    return fa > 0 ? [a, ...cut] : cut
  })
}

function areaOf(polygon: readonly Vertex[]): number {
  return polygon.reduce((sum, [x, y], i) => {
    const [u, v] = polygon[(i + 1) % polygon.length]!
    return sum + (x * v - u * y) / 2
  }, 0)
}

describe.each([
  {
    length: 9.084831162821501,
    width: 3.684393854578957,
    run: 0.261971553589683,
    axis: { from: [0, 0.3], to: [8.37663858142153, 3.8165442316588276] },
    stations: [
      [1.3250224851071835, 0.39791533555835484],
      [3.9458441860042512, 1.2671869123587385],
    ],
    from: -0.4,
  },
  {
    length: 9.77277860371396,
    width: 5.66005822236184,
    run: 0.5249857499962672,
    axis: { from: [0, 0.3], to: [9.568662894320592, 3.2052866321332654] },
    stations: [
      [1.0302798845805228, 0.4575939599424601],
      [3.279649997362867, 1.1512190801557154],
    ],
    from: -0.6921,
  },
] as const)('low water in a box of $length m with leaning walls, whose floor’s own shore passes a corner', (pool) => {
  const { length, width, run, axis, stations } = pool
  // For some mm of level the only wet rays of a stretch of wall lie between two that are looked at first.
  const p = divided(
    shape(box(0, 0, length, width), {
      floor: { kind: 'profile', axis, stations },
      wall: { kind: 'battered', run },
    }),
  )
  const [dx, dy] = [axis.to[0] - axis.from[0], axis.to[1] - axis.from[1]]
  const unit = Math.hypot(dx, dy)
  const depthAt = ([x, y]: Vertex): number => {
    const s = ((x - axis.from[0]) * dx + (y - axis.from[1]) * dy) / unit
    const slope = (stations[1][1] - stations[0][1]) / (stations[1][0] - stations[0][0])
    return stations[0][1] + slope * (s - stations[0][0])
  }

  it('has the surface of its polygon at every level', () => {
    let checked = 0
    for (let level = pool.from; level > pool.from - 0.3; level -= 0.0003) {
      const in_ = -level * run
      const inner: Vertex[] = [
        [in_, in_],
        [length - in_, in_],
        [length - in_, width - in_],
        [in_, width - in_],
      ]
      // Dry where the plane between the stations is, for before the first the floor is level and above the water.
      const wet = clipped(inner, (v) => depthAt(v) + level)
      expect([level, measure(p, level).waterSurfaceM2 - areaOf(wet)]).toEqual([level, expect.closeTo(0, 9)])
      checked++
    }
    expect(checked).toBeGreaterThan(900)
  })
})
