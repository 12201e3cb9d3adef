import type { Fan, Fans, Ray } from './cove-fan.ts'
import { type ArcCurve, arcCentre, evaluate, type LineCurve, newJet } from './curve.ts'
import type { Shore } from './shores.ts'
import { HAIR, NEARLY, ROUND_RAD, ROUNDING, TIE } from './tolerance.ts'

/** How far a ray is nearer to its own foot than to any other shore, and what ends it (−1: the radius asked for). */
export interface Reach {
  n: number
  by: number
}

const jet = newJet()

/** Stretches that could end a ray of a fan before it is r long. */
export function rivalsOf(fans: Fans, fan: Fan, r: number): number[] {
  const own = fan.shore >= 0 ? fans.shores[fan.shore]! : undefined
  const minX = own ? own.minX : fan.x
  const maxX = own ? own.maxX : fan.x
  const minY = own ? own.minY : fan.y
  const maxY = own ? own.maxY : fan.y
  const tight = 1 / r
  const harmless = smoothlyJoined(fans, fan, r)
  const rivals: number[] = []
  fans.shores.forEach((shore, i) => {
    if (harmless.has(i)) return
    if (
      shore.minX > maxX + 2 * r ||
      shore.maxX < minX - 2 * r ||
      shore.minY > maxY + 2 * r ||
      shore.maxY < minY - 2 * r
    )
      return
    // A stretch that bends less than the circle of radius r can't meet it beside its own touch, nor can one that goes on smoothly.
    if (i === fan.shore && fans.bend[i]! <= tight) return
    if (fan.shore >= 0 && fan.neighbours.includes(i) && fans.bend[i]! <= tight && fans.bend[fan.shore]! <= tight) return
    if (fan.shore < 0 && fan.neighbours.includes(i) && fans.bend[i]! <= tight) return
    rivals.push(i)
  })
  return rivals
}

/**
 * Stretches that go on smoothly from a fan's own and bend less than the circle of radius r, as far as π r along the shore:
 * they can't come into a circle that touches the shore at any foot of the fan.
 * Source: a curve that bends no more than its tangent circle stays outside it for half a turn (comparison of curves,
 *   A. Schur 1921, from memory).
 */
function smoothlyJoined(fans: Fans, fan: Fan, r: number): ReadonlySet<number> {
  const joined = new Set<number>()
  if (fan.shore < 0 || fans.bend[fan.shore]! > 1 / r) return joined
  const reachM = Math.PI * r - lengthAbove(fans.shores[fan.shore]!)
  const walk = (from: number, walkedM: number): void => {
    for (const next of fans.fans[from]!.neighbours) {
      const endM = walkedM + lengthAbove(fans.shores[next]!)
      if (next === fan.shore || endM > reachM || fans.bend[next]! > 1 / r || joined.has(next)) continue
      joined.add(next)
      walk(next, endM)
    }
  }
  walk(fan.shore, 0)
  return joined
}

/** A length that the stretch is no longer than [m]. */
function lengthAbove({ curve, t0, t1 }: Shore): number {
  const steps = curve.kind === 'line' ? 1 : 16
  let length = 0
  evaluate(curve, t0, jet)
  let { x, y } = jet
  for (let i = 1; i <= steps; i++) {
    evaluate(curve, t0 + ((t1 - t0) * i) / steps, jet)
    length += Math.hypot(jet.x - x, jet.y - y)
    x = jet.x
    y = jet.y
  }
  return length * 1.01
}

/**
 * Length of a ray up to the cut locus, at most r [m].
 * Equation: the circle that touches the shore at P with its centre on the ray meets Q where ρ = |Q − P|² / (2 N·(Q − P));
 *   n = min(r, 1/κ, min over Q of ρ). On a line ρ = δ/(1 − N·m), on a circle ρ = (|v|² − R²)/(2(R − N·v)) from outside,
 *   (R² − |v|²)/(2(R + N·v)) from inside, at the ends of a stretch by Q.
 * Symbols: N unit normal; δ distance of P from the line, m its normal toward P; v = P − centre; κ curvature toward N.
 * Source: definition of the medial axis by inscribed circles; own derivation.
 * Accuracy: rounding on lines and arcs, 1e-12 on cubics.
 */
export function reachOf(fans: Fans, fan: Fan, rivals: readonly number[], ray: Ray, r: number, out: Reach): void {
  out.n = r
  out.by = -1
  if (ray.h1 < 0 && -ray.h0 / ray.h1 < r) {
    out.n = -ray.h0 / ray.h1
    out.by = -2
  }
  for (const i of rivals) {
    const shore = fans.shores[i]!
    // ρ ≥ |Q − P|/2, so a stretch whose box is further than twice what is left can't end the ray.
    const awayX = Math.max(shore.minX - ray.x, ray.x - shore.maxX, 0)
    const awayY = Math.max(shore.minY - ray.y, ray.y - shore.maxY, 0)
    if (awayX * awayX + awayY * awayY > 4 * out.n * out.n) continue
    const touching = i === fan.shore || (fan.shore < 0 && fan.neighbours.includes(i))
    const n =
      shore.curve.kind === 'line' && !touching
        ? toLine(ray, shore, shore.curve)
        : shore.curve.kind === 'arc' && !touching && Math.abs(shore.curve.turn) > ROUND_RAD
          ? toArc(ray, shore, shore.curve)
          : shore.curve.kind === 'line' || (i === fan.shore && shore.curve.kind === 'arc')
            ? Infinity
            : bySearch(ray, shore, out.n, touching)
    // A tie keeps the first, or rounding would make it flicker along the shore.
    if (n < out.n * (1 - TIE)) {
      out.n = n
      out.by = i
    }
  }
}

function toPoint(ray: Ray, x: number, y: number): number {
  const dx = x - ray.x
  const dy = y - ray.y
  const toward = ray.nx * dx + ray.ny * dy
  return toward > 0 ? (dx * dx + dy * dy) / (2 * toward) : Infinity
}

function toEnds(ray: Ray, shore: Shore): number {
  evaluate(shore.curve, shore.t0, jet)
  const first = toEnd(ray, jet.x, jet.y, jet.dx, jet.dy)
  evaluate(shore.curve, shore.t1, jet)
  return Math.min(first, toEnd(ray, jet.x, jet.y, -jet.dx, -jet.dy))
}

/** By an end of a stretch, from where it runs on in a direction: at a ray's own foot it ends the ray at once or not at all. */
function toEnd(ray: Ray, x: number, y: number, dx: number, dy: number): number {
  const near = 64 * ROUNDING * (Math.abs(x) + Math.abs(y))
  if (Math.abs(x - ray.x) + Math.abs(y - ray.y) > near) return toPoint(ray, x, y)
  return ray.nx * dx + ray.ny * dy > TIE * Math.hypot(dx, dy) ? 0 : Infinity
}

function toLine(ray: Ray, shore: Shore, c: LineCurve): number {
  const length = Math.hypot(c.x1 - c.x0, c.y1 - c.y0)
  const ux = (c.x1 - c.x0) / length
  const uy = (c.y1 - c.y0) / length
  let delta = (ray.y - c.y0) * ux - (ray.x - c.x0) * uy
  let m = ray.ny * ux - ray.nx * uy
  if (delta < 0) {
    delta = -delta
    m = -m
  }
  if (m < 1 && delta > 0) {
    const n = delta / (1 - m)
    const s = ((ray.x + n * ray.nx - c.x0) * ux + (ray.y + n * ray.ny - c.y0) * uy) / length
    if (s >= shore.t0 && s <= shore.t1) return n
  }
  return toEnds(ray, shore)
}

function toArc(ray: Ray, shore: Shore, c: ArcCurve): number {
  const [cx, cy] = arcCentre(c)
  const radius = Math.abs(c.radius)
  const vx = ray.x - cx
  const vy = ray.y - cy
  const gap = vx * vx + vy * vy - radius * radius
  const along = ray.nx * vx + ray.ny * vy
  const bottom = gap > 0 ? radius - along : radius + along
  // On the very circle: its own centre is the end.
  if (Math.abs(gap) < NEARLY * radius * radius && bottom < NEARLY * radius) return gap > 0 ? Infinity : radius
  if (bottom > 0) {
    const n = Math.abs(gap) / (2 * bottom)
    const qx = ray.x + n * ray.nx - cx
    const qy = ray.y + n * ray.ny - cy
    const middle = c.heading + (c.turn * (shore.t0 + shore.t1)) / 2
    const s = Math.sign(c.radius)
    const mx = s * Math.sin(middle)
    const my = -s * Math.cos(middle)
    const angle = Math.abs(Math.atan2(mx * qy - my * qx, mx * qx + my * qy))
    if (angle <= (Math.abs(c.turn) * (shore.t1 - shore.t0)) / 2) return n
  }
  return toEnds(ray, shore)
}

/** Least ρ along a stretch by sampling and golden section; beside P itself the curvature answers. */
function bySearch(ray: Ray, shore: Shore, limit: number, touching: boolean): number {
  const { curve, t0, t1 } = shore
  const value = (t: number): number => {
    evaluate(curve, t, jet)
    // Too near to its own foot both lengths are rounding; the curvature has answered there.
    if (touching && Math.hypot(jet.x - ray.x, jet.y - ray.y) < 10 * HAIR * limit) return Infinity
    return toPoint(ray, jet.x, jet.y)
  }
  // Fine enough to see every dip that a curve of this length can make at this distance.
  const steps = Math.min(
    24,
    Math.max(8, Math.ceil((6 * Math.hypot(shore.maxX - shore.minX, shore.maxY - shore.minY)) / limit)),
  )
  let best = Infinity
  let at = 0
  for (let i = 0; i <= steps; i++) {
    const v = value(t0 + ((t1 - t0) * i) / steps)
    if (v < best) {
      best = v
      at = i
    }
  }
  if (best > 2 * limit) return best
  let a = t0 + ((t1 - t0) * Math.max(0, at - 1)) / steps
  let b = t0 + ((t1 - t0) * Math.min(steps, at + 1)) / steps
  const golden = (Math.sqrt(5) - 1) / 2
  let p = b - golden * (b - a)
  let q = a + golden * (b - a)
  let vp = value(p)
  let vq = value(q)
  for (let i = 0; i < 48; i++) {
    if (vp < vq) {
      b = q
      q = p
      vq = vp
      p = b - golden * (b - a)
      vp = value(p)
    } else {
      a = p
      p = q
      vp = vq
      q = a + golden * (b - a)
      vq = value(q)
    }
  }
  return Math.min(best, vp, vq)
}
