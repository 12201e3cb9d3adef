import { type Curve, evaluate, newJet } from './curve.ts'
import { GAUSS_ARC, GAUSS_CUBIC, GAUSS_LINE, type GaussRule, integrate } from './gauss.ts'
import { ROUNDING } from './tolerance.ts'

/** The rule that integrates a curve's polynomials (or an arc's trigonometric ones) to the last bits. */
export function ruleFor(curve: Curve): GaussRule {
  return curve.kind === 'line' ? GAUSS_LINE : curve.kind === 'arc' ? GAUSS_ARC : GAUSS_CUBIC
}

/** Boundary integrals of a stretch travelled from t0 to t1, for the area to its left. */
export interface AreaMoments {
  area: number
  areaX: number
  areaY: number
}

const jet = newJet()

/** Adds ∫ of area, x and y to the left: ½∮(x dy − y dx), ½∮x² dy, −½∮y² dx (Green's theorem). */
export function addMoments(curve: Curve, t0: number, t1: number, sign: number, out: AreaMoments): void {
  const rule = ruleFor(curve)
  const h = sign * (t1 - t0)
  let a = 0
  let mx = 0
  let my = 0
  for (let i = 0; i < rule.at.length; i++) {
    evaluate(curve, t0 + (t1 - t0) * rule.at[i]!, jet)
    const w = rule.weight[i]!
    a += w * (jet.x * jet.dy - jet.y * jet.dx)
    mx += w * jet.x * jet.x * jet.dy
    my -= w * jet.y * jet.y * jet.dx
  }
  out.area += (h * a) / 2
  out.areaX += (h * mx) / 2
  out.areaY += (h * my) / 2
}

export interface LengthMoments {
  length: number
  lengthX: number
  lengthY: number
}

/** ∫dl, ∫x dl, ∫y dl of a stretch; cubics by adaptive quadrature. */
export function lengthMoments(curve: Curve, t0: number, t1: number): LengthMoments {
  if (curve.kind === 'line') {
    const length = Math.hypot(curve.x1 - curve.x0, curve.y1 - curve.y0) * (t1 - t0)
    evaluate(curve, (t0 + t1) / 2, jet)
    return { length, lengthX: length * jet.x, lengthY: length * jet.y }
  }
  if (curve.kind === 'arc') {
    let x = 0
    let y = 0
    for (let i = 0; i < GAUSS_ARC.at.length; i++) {
      evaluate(curve, t0 + (t1 - t0) * GAUSS_ARC.at[i]!, jet)
      x += GAUSS_ARC.weight[i]! * jet.x
      y += GAUSS_ARC.weight[i]! * jet.y
    }
    const length = curve.radius * curve.turn * (t1 - t0)
    return { length, lengthX: length * x, lengthY: length * y }
  }
  const size =
    Math.abs(curve.ax - curve.x0) +
    Math.abs(curve.bx - curve.ax) +
    Math.abs(curve.x1 - curve.bx) +
    Math.abs(curve.ay - curve.y0) +
    Math.abs(curve.by - curve.ay) +
    Math.abs(curve.y1 - curve.by)
  const reach = Math.abs(curve.x0) + Math.abs(curve.y0) + size
  const tolerance = 64 * ROUNDING * size
  const along = (weigh: (x: number, y: number) => number, scale: number): number =>
    integrate(
      (t) => {
        evaluate(curve, t, jet)
        return Math.hypot(jet.dx, jet.dy) * weigh(jet.x, jet.y)
      },
      t0,
      t1,
      tolerance * scale,
    )
  return { length: along(() => 1, 1), lengthX: along((x) => x, reach), lengthY: along((_, y) => y, reach) }
}
