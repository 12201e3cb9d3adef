import { STRAIGHT } from './tolerance.ts'

/**
 * The exact curves of a plan, t from 0 to 1. An arc is kept as its first point, the direction there, its turn and its
 * signed radius, so a nearly straight one loses no digits to a far centre:
 * P(t) = P₀ + 2ρ sin(φ/2) (cos(τ + φ/2), sin(τ + φ/2)), φ = t · turn.
 */
export interface LineCurve {
  readonly kind: 'line'
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

export interface ArcCurve {
  readonly kind: 'arc'
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
  /** Direction of travel at the first point [rad]. */
  readonly heading: number
  /** Turn from first to last point, positive counter-clockwise [rad]. */
  readonly turn: number
  /** Radius, with the sign of the turn [m]. */
  readonly radius: number
}

export interface CubicCurve {
  readonly kind: 'cubic'
  readonly x0: number
  readonly y0: number
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  readonly x1: number
  readonly y1: number
}

export type Curve = LineCurve | ArcCurve | CubicCurve

/** Where a curve is at t, and its derivative by t. */
export interface Jet {
  x: number
  y: number
  dx: number
  dy: number
}

/** A fresh place to write a point and a derivative into; the inner loops reuse one instead of making garbage. */
export function newJet(): Jet {
  return { x: 0, y: 0, dx: 0, dy: 0 }
}

/** Writes the point at t and the derivative by t into `out`. */
export function evaluate(c: Curve, t: number, out: Jet): Jet {
  if (c.kind === 'line') {
    const dx = c.x1 - c.x0
    const dy = c.y1 - c.y0
    if (t <= 0.5) {
      out.x = c.x0 + t * dx
      out.y = c.y0 + t * dy
    } else {
      out.x = c.x1 - (1 - t) * dx
      out.y = c.y1 - (1 - t) * dy
    }
    out.dx = dx
    out.dy = dy
    return out
  }
  if (c.kind === 'arc') {
    const phi = t * c.turn
    const speed = c.radius * c.turn
    out.dx = speed * Math.cos(c.heading + phi)
    out.dy = speed * Math.sin(c.heading + phi)
    if (t <= 0.5) {
      const chord = 2 * c.radius * Math.sin(phi / 2)
      out.x = c.x0 + chord * Math.cos(c.heading + phi / 2)
      out.y = c.y0 + chord * Math.sin(c.heading + phi / 2)
    } else {
      const rest = c.turn - phi
      const chord = 2 * c.radius * Math.sin(rest / 2)
      out.x = c.x1 - chord * Math.cos(c.heading + phi + rest / 2)
      out.y = c.y1 - chord * Math.sin(c.heading + phi + rest / 2)
    }
    return out
  }
  const u = 1 - t
  const b0 = u * u * u
  const b1 = 3 * u * u * t
  const b2 = 3 * u * t * t
  const b3 = t * t * t
  out.x = b0 * c.x0 + b1 * c.ax + b2 * c.bx + b3 * c.x1
  out.y = b0 * c.y0 + b1 * c.ay + b2 * c.by + b3 * c.y1
  const d0 = 3 * u * u
  const d1 = 6 * u * t
  const d2 = 3 * t * t
  out.dx = d0 * (c.ax - c.x0) + d1 * (c.bx - c.ax) + d2 * (c.x1 - c.bx)
  out.dy = d0 * (c.ay - c.y0) + d1 * (c.by - c.ay) + d2 * (c.y1 - c.by)
  return out
}

/** The second derivative of a cubic by t, along x and along y: both are linear in t. */
export function secondX(c: CubicCurve, t: number): number {
  return 6 * ((1 - t) * (c.x0 - 2 * c.ax + c.bx) + t * (c.ax - 2 * c.bx + c.x1))
}

export function secondY(c: CubicCurve, t: number): number {
  return 6 * ((1 - t) * (c.y0 - 2 * c.ay + c.by) + t * (c.ay - 2 * c.by + c.y1))
}

/** A line. */
export function lineCurve(x0: number, y0: number, x1: number, y1: number): LineCurve {
  return { kind: 'line', x0, y0, x1, y1 }
}

/** An arc from its ends and its bulge, tan(turn/4); one that rounding can't tell from its chord gives the line. */
export function arcCurve(x0: number, y0: number, x1: number, y1: number, bulge: number): ArcCurve | LineCurve {
  if (Math.abs(bulge) < STRAIGHT) return lineCurve(x0, y0, x1, y1)
  const turn = 4 * Math.atan(bulge)
  const chord = Math.hypot(x1 - x0, y1 - y0)
  return {
    kind: 'arc',
    x0,
    y0,
    x1,
    y1,
    heading: Math.atan2(y1 - y0, x1 - x0) - turn / 2,
    turn,
    radius: chord / (2 * Math.sin(turn / 2)),
  }
}

/** The centre of an arc. */
export function arcCentre(c: ArcCurve): [number, number] {
  return [c.x0 - c.radius * Math.sin(c.heading), c.y0 + c.radius * Math.cos(c.heading)]
}

/** How far a curve reaches from its start, by its end and handles, or the bulge of an arc: what is below the grain is a point [m]. */
export function sizeOf(c: Curve): number {
  const chord = Math.hypot(c.x1 - c.x0, c.y1 - c.y0)
  if (c.kind === 'cubic')
    return Math.max(chord, Math.hypot(c.ax - c.x0, c.ay - c.y0), Math.hypot(c.bx - c.x0, c.by - c.y0))
  return c.kind === 'arc' ? Math.max(chord, sagittaOf(c)) : chord
}

/** How far an arc rises over its chord [m]. */
export function sagittaOf(c: ArcCurve): number {
  return (Math.hypot(c.x1 - c.x0, c.y1 - c.y0) / 2) * Math.abs(Math.tan(c.turn / 4))
}

/** A speed that a curve nowhere exceeds between two places of it [m for each unit of t]: the one of a cubic's hodograph there. */
export function fastest(c: Curve, t0: number, t1: number): number {
  if (c.kind === 'line') return Math.hypot(c.x1 - c.x0, c.y1 - c.y0)
  if (c.kind === 'arc') return Math.abs(c.radius * c.turn)
  const blossom = (u: number, v: number): number => {
    const [w0, w1, w2] = [(1 - u) * (1 - v), (1 - u) * v + u * (1 - v), u * v]
    return Math.hypot(
      w0 * (c.ax - c.x0) + w1 * (c.bx - c.ax) + w2 * (c.x1 - c.bx),
      w0 * (c.ay - c.y0) + w1 * (c.by - c.ay) + w2 * (c.y1 - c.by),
    )
  }
  return 3 * Math.max(blossom(t0, t0), blossom(t0, t1), blossom(t1, t1))
}
