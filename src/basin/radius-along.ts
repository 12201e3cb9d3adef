import { bernsteinZeros } from './bernstein.ts'
import { type ArcCurve, arcCentre, type CubicCurve, type Curve, evaluate, newJet } from './curve.ts'
import { rangeAlong, zerosAlong } from './curve-linear.ts'
import { type Foot, footOn } from './span.ts'
import { ABOUT, NEARLY } from './tolerance.ts'

/** A stretch of a curve and the way it is gone along: 1 forward, −1 back. */
export interface Stretch {
  readonly curve: Curve
  readonly t0: number
  readonly t1: number
  readonly sign: 1 | -1
}

const jet = newJet()
const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** The curve if it is an arc about a centre: its distance from there is its radius all along. */
export function arcAbout(curve: Curve, cx: number, cy: number): ArcCurve | undefined {
  if (curve.kind !== 'arc') return undefined
  const [x, y] = arcCentre(curve)
  return Math.hypot(x - cx, y - cy) <= ABOUT * Math.abs(curve.radius) ? curve : undefined
}

/** Least and greatest distance of a stretch from a centre [m]. */
export function radiusRange(curve: Curve, t0: number, t1: number, cx: number, cy: number): [number, number] {
  const about = arcAbout(curve, cx, cy)
  if (about) return [Math.abs(about.radius), Math.abs(about.radius)]
  let most = 0
  for (const t of [t0, ...farthestAlong(curve, t0, t1, cx, cy), t1]) {
    evaluate(curve, t, jet)
    most = Math.max(most, Math.hypot(jet.x - cx, jet.y - cy))
  }
  return [footOn(curve, t0, t1, cx, cy, foot).distance, most]
}

/** Where a stretch is nearest to a centre, if inside it. */
export function nearestAlong(curve: Curve, t0: number, t1: number, cx: number, cy: number): number | undefined {
  const { t } = footOn(curve, t0, t1, cx, cy, foot)
  return t > t0 && t < t1 ? t : undefined
}

/** Where inside a stretch that keeps no one distance from a centre it may be furthest from it. */
export function farthestAlong(curve: Curve, t0: number, t1: number, cx: number, cy: number): number[] {
  return arcAbout(curve, cx, cy) ? [] : farthest(curve, cx, cy).filter((t) => t > t0 && t < t1)
}

/** Where along the inside of a stretch the distance from a centre passes through a radius, ascending. */
export function radiusZeros(curve: Curve, t0: number, t1: number, cx: number, cy: number, radiusM: number): number[] {
  if (arcAbout(curve, cx, cy)) return []
  const inside = (t: number): boolean => t > t0 && t < t1
  if (curve.kind === 'line') {
    const dx = curve.x1 - curve.x0
    const dy = curve.y1 - curve.y0
    const length2 = dx * dx + dy * dy
    const middle = ((cx - curve.x0) * dx + (cy - curve.y0) * dy) / length2
    const cross = (curve.x0 - cx) * dy - (curve.y0 - cy) * dx
    const half2 = (radiusM * radiusM - (cross * cross) / length2) / length2
    if (!(half2 > 0)) return []
    const half = Math.sqrt(half2)
    return [middle - half, middle + half].filter(inside)
  }
  if (curve.kind === 'arc') {
    // On a circle the squared distance from a centre is linear in place.
    const [ax, ay] = arcCentre(curve)
    const gx = 2 * (ax - cx)
    const gy = 2 * (ay - cy)
    const c = (ax - cx) ** 2 + (ay - cy) ** 2 + curve.radius ** 2 - radiusM ** 2 - gx * ax - gy * ay
    return zerosAlong(curve, t0, t1, { c, gx, gy })
  }
  return bernsteinZeros(squaredDistance(curve, cx, cy).map((b) => b - radiusM * radiusM)).filter(inside)
}

/** Where along a curve the distance from a centre may be greatest, besides the ends. */
function farthest(curve: Curve, cx: number, cy: number): number[] {
  if (curve.kind === 'line') return []
  if (curve.kind === 'arc') {
    const [ax, ay] = arcCentre(curve)
    const far = rangeAlong(curve, 0, 1, { c: -(ax * (ax - cx) + ay * (ay - cy)), gx: ax - cx, gy: ay - cy })[1]
    const d = Math.hypot(ax - cx, ay - cy)
    // The point opposite to the centre, if the arc goes through it.
    if (far < d * Math.abs(curve.radius) * (1 - NEARLY)) return []
    footOn(
      curve,
      0,
      1,
      ax + ((ax - cx) / d) * 2 * Math.abs(curve.radius),
      ay + ((ay - cy) / d) * 2 * Math.abs(curve.radius),
      foot,
    )
    return [foot.t]
  }
  const b = squaredDistance(curve, cx, cy)
  return bernsteinZeros(b.slice(1).map((value, i) => value - b[i]!))
}

/** The squared distance along a cubic as a polynomial of degree 6 in Bernstein form. */
function squaredDistance(c: CubicCurve, cx: number, cy: number): number[] {
  const x = [c.x0 - cx, c.ax - cx, c.bx - cx, c.x1 - cx]
  const y = [c.y0 - cy, c.ay - cy, c.by - cy, c.y1 - cy]
  const three = [1, 3, 3, 1]
  const six = [1, 6, 15, 20, 15, 6, 1]
  const out = new Array<number>(7).fill(0)
  for (let i = 0; i < 4; i++)
    for (let k = 0; k < 4; k++) out[i + k]! += ((three[i]! * three[k]!) / six[i + k]!) * (x[i]! * x[k]! + y[i]! * y[k]!)
  return out
}

/** Angle that a stretch sweeps about a centre that it keeps away from, counter-clockwise [rad]. */
export function sweptAngle(curve: Curve, t0: number, t1: number, cx: number, cy: number): number {
  const about = arcAbout(curve, cx, cy)
  if (about) return about.turn * (t1 - t0)
  evaluate(curve, t0, jet)
  const ax = jet.x - cx
  const ay = jet.y - cy
  evaluate(curve, t1, jet)
  const bx = jet.x - cx
  const by = jet.y - cy
  const angle = Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
  if (curve.kind === 'line') return angle
  // A stretch as short as this against its distance can't have gone round the other way.
  const reach = Math.min(Math.hypot(ax, ay), Math.hypot(bx, by))
  if (4 * Math.hypot(bx - ax, by - ay) <= reach || t1 - t0 < NEARLY) return angle
  const middle = (t0 + t1) / 2
  return sweptAngle(curve, t0, middle, cx, cy) + sweptAngle(curve, middle, t1, cx, cy)
}
