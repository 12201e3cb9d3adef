import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  eyeOf,
  fitTo,
  frameOf,
  HOME,
  LENS_DEGREES,
  panned,
  turned,
  type Vector,
  type View,
  zoomed,
} from '../../../src/ui/solid/turntable.ts'

const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const SEED = 20261124

/** Where a point lands in the picture, −1 to 1 both ways, by the pinhole's own definition. */
function seen(point: Vector, view: View, target: Vector, distanceM: number, aspect: number): [number, number] {
  const { right, up, back } = frameOf(view)
  const { eye } = eyeOf(view, { target, distanceM })
  const from = minus(point, eye)
  const away = -dot(from, back)
  const tan = Math.tan((LENS_DEGREES * Math.PI) / 360)
  return [dot(from, right) / (away * tan * aspect), dot(from, up) / (away * tan)]
}

const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true })
const tilt = fc.double({ min: 0.35, max: Math.PI / 2, noNaN: true })
const place = fc.double({ min: -40, max: 40, noNaN: true })
const points = fc.array(fc.tuple(place, place, fc.constant(0.2)), { minLength: 3, maxLength: 30 })

describe('the turntable', () => {
  test('right, up and back are square to each other and of unit length at every angle', () => {
    fc.assert(
      fc.property(angle, tilt, (azimuth, t) => {
        const { right, up, back } = frameOf({ azimuth, tilt: t })
        for (const axis of [right, up, back]) expect(dot(axis, axis)).toBeCloseTo(1, 12)
        for (const [a, b] of [
          [right, up],
          [up, back],
          [back, right],
        ] as const)
          expect(dot(a, b)).toBeCloseTo(0, 12)
      }),
      { seed: SEED },
    )
  })

  test('from straight above at azimuth 0 the picture is the plan: x to the right, y up', () => {
    const { right, up, back } = frameOf({ azimuth: 0, tilt: Math.PI / 2 })
    const near = (a: Vector, b: Vector) => a.forEach((part, k) => void expect(part).toBeCloseTo(b[k]!, 12))
    near(right, [1, 0, 0])
    near(up, [0, 1, 0])
    near(back, [0, 0, 1])
  })

  test('a whole turn comes back, and the tilt stops at its limits', () => {
    let view = HOME
    for (let i = 0; i < 72; i++) view = turned(view, Math.PI / 36, 0)
    expect(view.azimuth).toBeCloseTo(HOME.azimuth, 9)
    expect(turned(HOME, 0, 9).tilt).toBeCloseTo(Math.PI / 2, 12)
    const low = turned(HOME, 0, -9).tilt
    expect(low).toBeGreaterThan(0.2)
    expect(turned({ ...HOME, tilt: low }, 0, -9).tilt).toBe(low)
  })

  test('the fit keeps every point in the picture, touches its edge, and leaves even margins that way', () => {
    fc.assert(
      fc.property(points, angle, tilt, fc.double({ min: 0.4, max: 3, noNaN: true }), (at, azimuth, t, aspect) => {
        fc.pre(at.some((p) => Math.hypot(p[0] - at[0]![0], p[1] - at[0]![1]) > 1))
        const view = { ...HOME, azimuth, tilt: t }
        const fit = fitTo(at, view, aspect)
        const all = at.map((point) => seen(point, view, fit.target, fit.distanceM, aspect))
        const [xs, ys] = [all.map((p) => p[0]), all.map((p) => p[1])]
        const reach = Math.max(...xs.map(Math.abs), ...ys.map(Math.abs))
        expect(reach).toBeLessThan(1.001)
        expect(reach).toBeGreaterThan(0.98)
        const wide = Math.max(...xs) - Math.min(...xs) > Math.max(...ys) - Math.min(...ys)
        const tight = wide ? xs : ys
        expect(Math.abs(Math.max(...tight) + Math.min(...tight))).toBeLessThan(0.03)
      }),
      { seed: SEED, numRuns: 200 },
    )
  })

  test('zooming in by two halves the distance, and its limits hold', () => {
    const fit = { target: [1, 2, 0] as Vector, distanceM: 30 }
    const far = minus(eyeOf(HOME, fit).eye, fit.target)
    const near = minus(eyeOf(zoomed(HOME, 2), fit).eye, fit.target)
    expect(Math.hypot(...near)).toBeCloseTo(Math.hypot(...far) / 2, 9)
    expect(zoomed(HOME, 1e6).zoom).toBeLessThan(20)
    expect(zoomed(HOME, 1e-6).zoom).toBeGreaterThan(0.2)
  })

  test('the picture is never moved further aside than it may be', () => {
    const view = panned(HOME, 30, -40, 5)
    expect(Math.hypot(view.panX, view.panY)).toBeCloseTo(5, 12)
    expect(panned(HOME, 1, 2, 5)).toMatchObject({ panX: 1, panY: 2 })
  })
})
