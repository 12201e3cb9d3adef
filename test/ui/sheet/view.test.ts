import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/basin/index.ts'
import {
  type Bed,
  fromScreen,
  fromSheet,
  type Panes,
  panBy,
  sectionFromScreen,
  sectionToScreen,
  svgMatrix,
  type Turn,
  toScreen,
  toSheet,
  turnFor,
  type View,
  zoomAt,
} from '../../../src/ui/sheet/view.ts'

const panes: Panes = { width: 900, height: 520, planHeight: 340, datumY: 380 }
const view: View = { turn: 0, scale: 40, u: 5, v: 2, stretch: 1, sectionScrollPx: 0 }
const turns: readonly Turn[] = [0, 1, 2, 3]
const coordinate = fc.double({ min: -50, max: 50, noNaN: true })
const point = fc.tuple(coordinate, coordinate)
const flat = (depthM: number): Bed => ({ deepestM: depthM, inSight: () => depthM })
const near = (a: Point, b: Point, digits = 8) => {
  expect(a[0]).toBeCloseTo(b[0], digits)
  expect(a[1]).toBeCloseTo(b[1], digits)
}

describe('the view', () => {
  test('screen and plan are each other’s inverse in all four turns', () => {
    fc.assert(
      fc.property(point, fc.constantFrom(...turns), (p, turn) => {
        near(fromSheet(toSheet(p, turn), turn), p)
        near(fromScreen({ ...view, turn }, panes, toScreen({ ...view, turn }, panes, p)), p)
      }),
      { seed: 11 },
    )
  })

  test('the SVG matrix puts a point where toScreen does', () => {
    fc.assert(
      fc.property(point, point, fc.constantFrom(...turns), (p, origin, turn) => {
        const seen = { ...view, turn }
        const numbers =
          /matrix\((.*)\)/
            .exec(svgMatrix(seen, panes, origin))?.[1]
            ?.split(' ')
            .map(Number) ?? []
        const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers
        const [x, y] = [p[0] - origin[0], p[1] - origin[1]]
        near([a * x + c * y + e, b * x + d * y + f], toScreen(seen, panes, p), 6)
      }),
      { seed: 12 },
    )
  })

  test('zooming leaves the place under the pointer where it is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 900 }),
        fc.integer({ min: 0, max: 340 }),
        fc.double({ min: 0.3, max: 4, noNaN: true }),
        (px, py, factor) => {
          near(
            fromScreen(zoomAt(view, panes, [px, py], factor, flat(2)), panes, [px, py]),
            fromScreen(view, panes, [px, py]),
          )
        },
      ),
      { seed: 13 },
    )
  })

  test('zooming over the section keeps the depth under the pointer while there is bed to scroll', () => {
    const zoomed = zoomAt(view, panes, [450, 440], 3, flat(4))
    const before = sectionFromScreen(view, panes, [0, 0], [450, 440])
    near(sectionFromScreen(zoomed, panes, [0, 0], [450, 440]), before)
  })

  test('a section that outgrows its pane shows its bed', () => {
    const zoomed = zoomAt(view, panes, [450, 100], 4, flat(2))
    const [, bedY] = sectionToScreen(zoomed, panes, [0, 0], [0, 2])
    expect(bedY).toBeGreaterThan(panes.planHeight)
    expect(bedY).toBeLessThan(panes.height)
  })

  test('panned along, the section follows its bed; scrolled by hand, it stays', () => {
    const sloping: Bed = { deepestM: 3, inSight: (v) => 1 + v.u / 10 }
    const close = zoomAt(view, panes, [450, 100], 5, sloping)
    const further = panBy(close, panes, [-400, 0], false, sloping)
    expect(further.sectionScrollPx).toBeGreaterThan(close.sectionScrollPx)
    const byHand = panBy(close, panes, [0, 60], true, sloping)
    expect(panBy(byHand, panes, [-400, 0], false, sloping).sectionScrollPx).toBe(byHand.sectionScrollPx)
  })

  test('panning moves the paper by as many pixels, the section alone up and down', () => {
    const moved = panBy(view, panes, [30, -12], false, flat(2))
    const [x, y] = toScreen(view, panes, [1, 1])
    near(toScreen(moved, panes, [1, 1]), [x + 30, y - 12])
    const scrolled = panBy({ ...view, scale: 200 }, panes, [0, -25], true, flat(3))
    expect(scrolled.sectionScrollPx).toBe(25)
    near(toScreen(scrolled, panes, [1, 1]), toScreen({ ...view, scale: 200 }, panes, [1, 1]))
  })

  test('plan and section share the horizontal: A lies above A', () => {
    const from: Point = [1.2, 3.4]
    expect(sectionToScreen(view, panes, from, [0, 0])[0]).toBe(toScreen(view, panes, from)[0])
    const along: Point = [from[0] + 2.5, from[1]]
    expect(sectionToScreen(view, panes, from, [2.5, 1])[0]).toBeCloseTo(toScreen(view, panes, along)[0], 9)
  })
})

describe('turning the sheet', () => {
  test('any axis comes to lie within half a right angle of left to right', () => {
    for (let degrees = -180; degrees <= 180; degrees += 7) {
      const a = (degrees * Math.PI) / 180
      const [u, v] = toSheet([Math.cos(a), Math.sin(a)], turnFor({ from: [0, 0], to: [Math.cos(a), Math.sin(a)] }))
      expect(u, `${degrees}°`).toBeGreaterThanOrEqual(Math.SQRT1_2 - 1e-9)
      expect(Math.abs(v)).toBeLessThanOrEqual(Math.SQRT1_2 + 1e-9)
    }
  })

  test('a turned sheet stays as it is until the axis tilts well past half a right angle', () => {
    const to = (degrees: number): Point => [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
    expect(turnFor({ from: [0, 0], to: to(48) }, 0)).toBe(0)
    expect(turnFor({ from: [0, 0], to: to(55) }, 0)).toBe(3)
    expect(turnFor({ from: [0, 0], to: to(-48) }, 0)).toBe(0)
  })
})
