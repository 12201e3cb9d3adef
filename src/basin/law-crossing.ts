import { type Curve, lineCurve } from './curve.ts'
import { type CurveFit, fitCurve, type Tracing } from './fit-curve.ts'
import type { Vec } from './fit-run.ts'
import { circleAbout } from './floor-dish.ts'
import { planeAt } from './planes.ts'
import { lawAt, lawGradient, type RadialLaw, radiusAtDepth } from './radial-law.ts'
import { OFFSET_FIT } from './tolerance.ts'
import type { Plane } from './types.ts'

/**
 * The curves within the rim on which a plane has the depth of a radial law: a circle about the centre where the plane is
 * level; where it slopes, the conic in which it cuts the sphere or the cone, seen from above.
 * Equation: cone ρ = a / (k − g cos ψ), a conic with its focus at the centre; cap (1 + g²)(x − x₀)² + y² = T, an ellipse with
 *   x₀ = −σ g B / (1 + g²), B = S + σ a, T = g² B² / (1 + g²) − σ a (2S + σ a), within the rim where σ (B + σ g x) is large enough.
 * Symbols: a the plane's depth at the centre less the law's; k the cone's fall outward; g the plane's fall, along x and
 *   ψ = 0; S the sphere's radius; σ = 1 for a hollow, −1 for a mound.
 * Accuracy: circles and rays exact; conics by cubics within OFFSET_FIT of the rim's radius. The depth goes on across the
 *   curve without a step, so a volume is off by the square of that only.
 */
export function lawCrossings(law: RadialLaw, plane: Plane, grainM: number): Curve[] {
  const { x, y, radiusM, depthM, edgeDepthM } = law
  const g = Math.hypot(plane.dx, plane.dy)
  if (g === 0) {
    const depth = plane.atOrigin
    if (!(depth > Math.min(depthM, edgeDepthM) && depth < Math.max(depthM, edgeDepthM))) return []
    const r = radiusAtDepth(law, depth)
    // At the rim itself there is an edge already, and a speck at the centre is no region.
    return r <= 4 * grainM || radiusM - r <= 4 * grainM ? [] : circleAbout(x, y, r)
  }
  const a = planeAt(plane, x, y) - depthM
  const placed = (along: number, across: number): Vec => [
    x + (along * plane.dx - across * plane.dy) / g,
    y + (along * plane.dy + across * plane.dx) / g,
  ]
  if (law.form === 'cone') {
    const k = (edgeDepthM - depthM) / radiusM
    if (Math.abs(a) <= grainM * Math.max(g, Math.abs(k))) return rays(law, k / g, placed)
    const sign = Math.sign(a)
    // Within the rim where |k − g cos ψ| ≥ |a| / R, on the branch where ρ is positive.
    const limit = (k - a / radiusM) / g
    return traced(law, plane, placed, sign > 0 ? Math.PI : 0, Math.acos(clamped(-sign * limit)), (psi) => {
      const rho = Math.min(radiusM, a / (k - g * Math.cos(psi)))
      return [rho * Math.cos(psi), rho * Math.sin(psi)]
    })
  }
  const sigma = depthM > edgeDepthM ? 1 : -1
  const h = Math.abs(depthM - edgeDepthM)
  const s = (radiusM * radiusM + h * h) / (2 * h)
  const b = s + sigma * a
  const t = (g * g * b * b) / (1 + g * g) - sigma * a * (2 * s + sigma * a)
  if (!(t > 0)) return []
  const x0 = (-sigma * g * b) / (1 + g * g)
  const half = Math.sqrt(t / (1 + g * g))
  const limit = ((s - h - b) / (sigma * g) - x0) / half
  return traced(law, plane, placed, sigma > 0 ? 0 : Math.PI, Math.acos(clamped(sigma * limit)), (u) => [
    x0 + half * Math.cos(u),
    Math.sqrt(t) * Math.sin(u),
  ])
}

function clamped(cosine: number): number {
  return Math.min(1, Math.max(-1, cosine))
}

/** Where the plane goes through the tip of a cone: two rays, or the tip alone. */
function rays(law: RadialLaw, cosine: number, placed: (along: number, across: number) => Vec): Curve[] {
  if (!(Math.abs(cosine) < 1)) return []
  const sine = Math.sqrt(1 - cosine * cosine)
  return [1, -1].map((side) => lineCurve(law.x, law.y, ...placed(law.radiusM * cosine, side * law.radiusM * sine)))
}

/** Cubics along a conic for parameters up to `reach` to both sides of its axis; all of it where that is half a turn. */
function traced(
  law: RadialLaw,
  plane: Plane,
  placed: (along: number, across: number) => Vec,
  axis: number,
  reach: number,
  at: (t: number) => Vec,
): Curve[] {
  if (reach === 0) return []
  const pointAt = (t: number): Vec => onCrossing(law, plane, placed(...at(t)))
  const headingAt = (t: number): Vec => {
    const [px, py] = pointAt(t)
    const [lx, ly] = lawGradient(law, px, py)
    const nx = lx - plane.dx
    const ny = ly - plane.dy
    const n = Math.hypot(nx, ny) || 1
    // Square to the gradient of the difference, to the side that the curve goes to.
    const step = 1e-3 * reach
    const [ax, ay] = placed(...at(t - step))
    const [bx, by] = placed(...at(t + step))
    const way = -ny * (bx - ax) + nx * (by - ay) < 0 ? -1 : 1
    return [(-way * ny) / n, (way * nx) / n]
  }
  const tracing: Tracing = { pointAt, headingAt }
  const curves: Curve[] = []
  let [x0, y0] = pointAt(axis - reach)
  for (let i = 0; i < 4; i++) {
    const from = axis + reach * (i / 2 - 1)
    const fit: CurveFit = fitCurve(tracing, from, from + reach / 2, OFFSET_FIT * law.radiusM)
    for (const { to, c1, c2 } of fit.pieces) {
      curves.push({ kind: 'cubic', x0, y0, ax: c1[0], ay: c1[1], bx: c2[0], by: c2[1], x1: to[0], y1: to[1] })
      ;[x0, y0] = to
    }
  }
  return curves
}

/** A place near the crossing brought onto it, for the closed form of a hardly bent cap loses digits. */
function onCrossing(law: RadialLaw, plane: Plane, [x, y]: Vec): Vec {
  const rho = Math.hypot(x - law.x, y - law.y)
  // At the rim the place is held on the rim.
  if (!(rho < law.radiusM * (1 - OFFSET_FIT))) {
    const k = law.radiusM / rho
    return [law.x + (x - law.x) * k, law.y + (y - law.y) * k]
  }
  const [lx, ly] = lawGradient(law, x, y)
  const nx = lx - plane.dx
  const ny = ly - plane.dy
  const n2 = nx * nx + ny * ny
  if (n2 === 0) return [x, y]
  const off = (lawAt(law, x, y) - planeAt(plane, x, y)) / n2
  return [x - off * nx, y - off * ny]
}
