import { type Curve, evaluate, newJet } from './curve.ts'
import { descend, searchFoot } from './foot-search.ts'
import { norm } from './norm.ts'
import { quadraticRoots } from './polynomial.ts'
import { ROUND_RAD } from './tolerance.ts'

/**
 * A stretch of a curve that rises or falls throughout in x and in y and bends one way only, by at most a quarter turn:
 * so its ends bound it, it leaves them for good, and it meets a line at most twice.
 */
export interface Span {
  readonly curve: Curve
  readonly t0: number
  readonly t1: number
  /** Ring that it bounds, −1 for a break line; its place along that ring. */
  readonly ring: number
  readonly index: number
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** Where a curve has to be cut to be made of spans; cuts nearer than the grain to an end or another cut are left out. */
export function spanCuts(curve: Curve, grainM: number): number[] {
  if (curve.kind === 'line') return [0, 1]
  const raw: number[] = []
  if (curve.kind === 'arc') {
    const quarter = Math.PI / 2
    const a = curve.heading
    const b = curve.heading + curve.turn
    const lo = Math.min(a, b)
    const hi = Math.max(a, b)
    for (let k = Math.ceil(lo / quarter); k * quarter < hi; k++) raw.push((k * quarter - a) / curve.turn)
  } else {
    const { x0, y0, ax, ay, bx, by, x1, y1 } = curve
    raw.push(...quadraticRoots(ax - x0, bx - ax, x1 - bx), ...quadraticRoots(ay - y0, by - ay, y1 - by))
    // Inflections: the cross product of first and second derivative is a quadratic.
    const ux = ax - x0
    const uy = ay - y0
    const vx = bx - ax
    const vy = by - ay
    const wx = x1 - bx
    const wy = y1 - by
    raw.push(...quadraticRoots(ux * vy - uy * vx, (ux * wy - uy * wx) / 2, vx * wy - vy * wx))
  }
  raw.sort((p, q) => p - q)
  const cuts = [0]
  const jet = newJet()
  let px = curve.x0
  let py = curve.y0
  for (const t of raw) {
    if (!(t > 0 && t < 1)) continue
    evaluate(curve, t, jet)
    const room = Math.max(Math.abs(jet.x - px), Math.abs(jet.y - py))
    const rest = Math.max(Math.abs(curve.x1 - jet.x), Math.abs(curve.y1 - jet.y))
    if (room <= 4 * grainM || rest <= 4 * grainM) continue
    cuts.push(t)
    px = jet.x
    py = jet.y
  }
  cuts.push(1)
  return cuts
}

/** The spans of a curve, appended to `out` and numbered on from its place in the ring. */
export function pushSpans(curve: Curve, ring: number, grainM: number, out: Span[], firstIndex: number): number {
  const cuts = spanCuts(curve, grainM)
  const jet = newJet()
  let x0 = curve.x0
  let y0 = curve.y0
  let index = firstIndex
  for (let i = 1; i < cuts.length; i++) {
    const last = i === cuts.length - 1
    const t1 = cuts[i]!
    let x1 = curve.x1
    let y1 = curve.y1
    if (!last) {
      evaluate(curve, t1, jet)
      x1 = jet.x
      y1 = jet.y
    }
    out.push({
      curve,
      t0: cuts[i - 1]!,
      t1,
      ring,
      index: index++,
      x0,
      y0,
      x1,
      y1,
      minX: Math.min(x0, x1),
      minY: Math.min(y0, y1),
      maxX: Math.max(x0, x1),
      maxY: Math.max(y0, y1),
    })
    x0 = x1
    y0 = y1
  }
  return index
}

/** A point of a curve nearest to a place: its t within [t0, t1] and the distance. */
export interface Foot {
  t: number
  x: number
  y: number
  distance: number
}

const jet = newJet()

/**
 * Writes the point of a curve's stretch that is nearest to (x, y) into `out`; a stretch bends by at most half a turn. A
 * guess spares the search where the foot is known to lie near it.
 */
export function footOn(curve: Curve, t0: number, t1: number, x: number, y: number, out: Foot, guess?: number): Foot {
  let t: number
  if (curve.kind === 'line') {
    const dx = curve.x1 - curve.x0
    const dy = curve.y1 - curve.y0
    const len2 = dx * dx + dy * dy
    t = len2 === 0 ? t0 : ((x - curve.x0) * dx + (y - curve.y0) * dy) / len2
    t = Math.min(Math.max(t, t0), t1)
  } else if (curve.kind === 'arc' && Math.abs(curve.turn) > ROUND_RAD) {
    const cx = curve.x0 - curve.radius * Math.sin(curve.heading)
    const cy = curve.y0 + curve.radius * Math.cos(curve.heading)
    const middle = curve.heading + (curve.turn * (t0 + t1)) / 2
    // Angle from the middle of the stretch, so that the nearer end is taken where the foot falls outside.
    const s = Math.sign(curve.radius)
    const mx = s * Math.sin(middle)
    const my = -s * Math.cos(middle)
    const angle = Math.atan2(mx * (y - cy) - my * (x - cx), mx * (x - cx) + my * (y - cy))
    t = (t0 + t1) / 2 + angle / curve.turn
    t = Math.min(Math.max(t, t0), t1)
  } else t = guess === undefined ? searchFoot(curve, t0, t1, x, y) : descend(curve, x, y, guess, t0, t1)
  evaluate(curve, t, jet)
  out.t = t
  out.x = jet.x
  out.y = jet.y
  out.distance = norm(x - jet.x, y - jet.y)
  return out
}
