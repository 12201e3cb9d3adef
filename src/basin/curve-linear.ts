import { type Curve, evaluate, newJet } from './curve.ts'
import { cubicRoots, quadraticRoots } from './polynomial.ts'

/** A depth (or any number) that is linear in the plan: value(x, y) = c + gx·x + gy·y. */
export interface Linear {
  readonly c: number
  readonly gx: number
  readonly gy: number
}

const jet = newJet()

/** Least and greatest value of a linear function along a stretch of a curve. */
export function rangeAlong(curve: Curve, t0: number, t1: number, f: Linear): [number, number] {
  let lo = Infinity
  let hi = -Infinity
  for (const t of [t0, ...turningPoints(curve, f), t1]) {
    if (t < t0 || t > t1) continue
    evaluate(curve, t, jet)
    const value = f.c + f.gx * jet.x + f.gy * jet.y
    if (value < lo) lo = value
    if (value > hi) hi = value
  }
  return [lo, hi]
}

/** Where along a curve a linear function turns from rising to falling, or back; some may lie off the curve’s ends. */
export function turningPoints(curve: Curve, f: Linear): number[] {
  if (curve.kind === 'line') return []
  if (curve.kind === 'arc') {
    const points: number[] = []
    const across = Math.atan2(f.gy, f.gx) + Math.PI / 2
    const lo = Math.min(curve.heading, curve.heading + curve.turn)
    const hi = Math.max(curve.heading, curve.heading + curve.turn)
    for (let k = Math.ceil((lo - across) / Math.PI); across + k * Math.PI < hi; k++)
      points.push((across + k * Math.PI - curve.heading) / curve.turn)
    return points
  }
  const d = (ux: number, uy: number): number => f.gx * ux + f.gy * uy
  return quadraticRoots(
    d(curve.ax - curve.x0, curve.ay - curve.y0),
    d(curve.bx - curve.ax, curve.by - curve.ay),
    d(curve.x1 - curve.bx, curve.y1 - curve.by),
  )
}

/** Where along the inside of a stretch a linear function passes through zero, ascending. */
export function zerosAlong(curve: Curve, t0: number, t1: number, f: Linear): number[] {
  if (curve.kind === 'line') {
    const d0 = f.c + f.gx * curve.x0 + f.gy * curve.y0
    const d1 = f.c + f.gx * curve.x1 + f.gy * curve.y1
    if (d0 > 0 === d1 > 0) return []
    const t = d0 / (d0 - d1)
    return t > t0 && t < t1 ? [t] : []
  }
  if (curve.kind === 'cubic') {
    const { c, gx, gy } = f
    const roots = cubicRoots(
      c + gx * curve.x0 + gy * curve.y0,
      c + gx * curve.ax + gy * curve.ay,
      c + gx * curve.bx + gy * curve.by,
      c + gx * curve.x1 + gy * curve.y1,
    )
    return roots.length === 0 || (roots[0]! > t0 && roots[roots.length - 1]! < t1)
      ? roots
      : roots.filter((t) => t > t0 && t < t1)
  }
  const breaks = [t0, ...turningPoints(curve, f).filter((t) => t > t0 && t < t1), t1]
  const zeros: number[] = []
  for (let i = 1; i < breaks.length; i++) {
    const t = bisect(curve, breaks[i - 1]!, breaks[i]!, f)
    if (t !== undefined && t > t0 && t < t1) zeros.push(t)
  }
  return zeros
}

function bisect(curve: Curve, from: number, to: number, f: Linear): number | undefined {
  const value = (t: number): number => {
    evaluate(curve, t, jet)
    return f.c + f.gx * jet.x + f.gy * jet.y
  }
  let lo = from
  let hi = to
  const v0 = value(lo)
  const v1 = value(hi)
  if (v0 > 0 === v1 > 0) return undefined
  let t = lo + ((hi - lo) * v0) / (v0 - v1)
  for (let i = 0; i < 80; i++) {
    const v = value(t)
    if (v === 0) return t
    if (v > 0 === v0 > 0) lo = t
    else hi = t
    const slope = f.gx * jet.dx + f.gy * jet.dy
    let next = t - v / slope
    if (!(next > lo && next < hi)) next = (lo + hi) / 2
    if (next === t || next <= lo || next >= hi) return next
    t = next
  }
  return t
}
