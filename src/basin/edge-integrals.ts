import { type Curve, evaluate, newJet } from './curve.ts'
import { GAUSS_ARC, GAUSS_CUBIC, GAUSS_FINE, GAUSS_LINE, type GaussRule, gaussRule, integrate } from './gauss.ts'
import { COARSE_RULE_AGREES, ROUNDING } from './tolerance.ts'

/** Rules for arcs that turn by no more than `turn` [rad]; the remainder of Gauss's rule for e^{3iθ} is below 1e-16 with each. */
const SHORT_ARCS: readonly { readonly turn: number; readonly rule: GaussRule }[] = [
  { turn: 0.12, rule: gaussRule(5) },
  { turn: 0.3, rule: gaussRule(6) },
  { turn: 0.7, rule: gaussRule(8) },
]

/**
 * The rule that integrates a curve's polynomials (or an arc's trigonometric ones, up to the third harmonic) to the last
 * bits, over a stretch that takes `share` of the curve.
 */
export function ruleFor(curve: Curve, share = 1): GaussRule {
  if (curve.kind === 'line') return GAUSS_LINE
  if (curve.kind === 'cubic') return GAUSS_CUBIC
  const turn = Math.abs(curve.turn * share)
  for (const short of SHORT_ARCS) if (turn <= short.turn) return short.rule
  return GAUSS_ARC
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
  const rule = ruleFor(curve, t1 - t0)
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

const COARSE = gaussRule(10)

/** Adds ∫dl, ∫x dl, ∫y dl of a cubic's stretch by one rule. */
function byRule(curve: Curve, t0: number, t1: number, rule: GaussRule, out: LengthMoments): LengthMoments {
  out.length = 0
  out.lengthX = 0
  out.lengthY = 0
  for (let i = 0; i < rule.at.length; i++) {
    evaluate(curve, t0 + (t1 - t0) * rule.at[i]!, jet)
    const weight = rule.weight[i]! * (t1 - t0) * Math.sqrt(jet.dx * jet.dx + jet.dy * jet.dy)
    out.length += weight
    out.lengthX += weight * jet.x
    out.lengthY += weight * jet.y
  }
  return out
}

const coarse: LengthMoments = { length: 0, lengthX: 0, lengthY: 0 }

/**
 * ∫dl, ∫x dl, ∫y dl of a stretch. Cubics by 16 points where 10 give the same to 1e-9 (the remainder falls by a power of the
 * number of points, so that 16 are then good to 1e-14), else by adaptive quadrature.
 */
export function lengthMoments(curve: Curve, t0: number, t1: number): LengthMoments {
  if (curve.kind === 'line') {
    const length = Math.hypot(curve.x1 - curve.x0, curve.y1 - curve.y0) * (t1 - t0)
    evaluate(curve, (t0 + t1) / 2, jet)
    return { length, lengthX: length * jet.x, lengthY: length * jet.y }
  }
  if (curve.kind === 'arc') {
    const rule = ruleFor(curve, t1 - t0)
    let x = 0
    let y = 0
    for (let i = 0; i < rule.at.length; i++) {
      evaluate(curve, t0 + (t1 - t0) * rule.at[i]!, jet)
      x += rule.weight[i]! * jet.x
      y += rule.weight[i]! * jet.y
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
  byRule(curve, t0, t1, COARSE, coarse)
  const fine = byRule(curve, t0, t1, GAUSS_FINE, { length: 0, lengthX: 0, lengthY: 0 })
  const agrees = COARSE_RULE_AGREES * size
  if (
    Math.abs(fine.length - coarse.length) <= agrees &&
    Math.abs(fine.lengthX - coarse.lengthX) <= agrees * reach &&
    Math.abs(fine.lengthY - coarse.lengthY) <= agrees * reach
  )
    return fine
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
