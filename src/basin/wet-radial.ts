import { type Curve, evaluate, newJet } from './curve.ts'
import { lengthMoments, ruleFor } from './edge-integrals.ts'
import { integrate } from './gauss.ts'
import type { Cell, Edge } from './partition-types.ts'
import {
  areaRate,
  centreShareRate,
  depthAtRadius,
  depthRate,
  type RadialLaw,
  type RadialRate,
  radiusAtDepth,
  slopedRate,
} from './radial-law.ts'
import { arcAbout, nearestAlong, radiusZeros, type Stretch, sweptAngle } from './radius-along.ts'
import { ROUNDING } from './tolerance.ts'
import type { WetCell } from './wet-cell.ts'

const jet = newJet()

/** The stretches round a cell, the cell on their left. */
export function stretchesOf(
  loops: readonly (readonly number[])[],
  edges: readonly Pick<Edge, 'curve' | 't0' | 't1'>[],
): Stretch[] {
  return loops.flat().map((half) => {
    const { curve, t0, t1 } = edges[half >> 1]!
    return { curve, t0, t1, sign: half & 1 ? -1 : 1 }
  })
}

/** What part of the plane is wet under a law: all of it, or that within or beyond a radius. */
interface Wet {
  readonly radiusM: number
  /** 1 where it is wet beyond the radius, −1 within it, 0 everywhere. */
  readonly beyond: -1 | 0 | 1
}

const ALL: Wet = { radiusM: 0, beyond: 0 }

function wetOf(cell: Cell, law: RadialLaw, levelM: number): Wet {
  if (cell.minDepthM + levelM >= 0) return ALL
  return { radiusM: radiusAtDepth(law, -levelM), beyond: law.depthM < law.edgeDepthM ? 1 : -1 }
}

/**
 * Volume [m³], area and surface of the floor [m²], moments and inner shoreline [m] of the water over a cell whose depth
 * hangs on the distance ρ from a centre.
 * Equation: A = ∮ G(ρ)/ρ² (x dy − y dx), G = ∫₀^ρ [s > 0] ρ′ dρ′; V with s⁺, floor with √(1 + s′²) under the integral;
 *   ∫x dA = ∮ x K(ρ)/ρ³ (x dy − y dx), K = ∫₀^ρ [s > 0] ρ′² dρ′; shore = ρ₀ ∮_{ρ > ρ₀} dθ where s(ρ₀) = 0. x and y from the centre.
 * Symbols: s depth and level; θ the angle about the centre.
 * Valid for: cells within the rim. The shore at ρ₀ is no edge, so no polygon is clipped: beyond ρ₀ the integrals hang on
 *   the angle alone.
 * Source: divergence theorem applied to G(ρ)/ρ² (x, y) and the like; own derivation.
 * Accuracy: rounding on circles about the centre, on lines over a cone, and for areas; else adaptive quadrature to some 1e-14.
 */
export function wetRadialCell(cell: Cell, law: RadialLaw, edges: readonly Edge[], levelM: number): WetCell {
  const { areaM2, centreX, centreY } = cell
  const wet = wetOf(cell, law, levelM)
  if (wet.beyond === 0) {
    const { depthM, slopedM2 } = cell.lawMeans!
    return {
      volumeM3: areaM2 * (depthM + levelM),
      areaM2,
      slopedM2,
      areaX: areaM2 * centreX,
      areaY: areaM2 * centreY,
      shoreM: 0,
    }
  }
  const stretches = stretchesOf(cell.loops, edges)
  const volumeM3 = Math.max(
    0,
    radialIntegral(stretches, law, (l, rho) => depthRate(l, rho) + levelM / 2, wet),
  )
  const wetM2 = Math.min(Math.max(0, radialIntegral(stretches, law, areaRate, wet)), areaM2)
  const slopedM2 = Math.max(0, radialIntegral(stretches, law, slopedRate, wet))
  const [mx, my] = moments(stretches, law, wet)
  let angle = 0
  for (const s of stretches)
    forParts(s, law, wet, (ta, tb, isBeyond) => {
      if (isBeyond) angle += s.sign * sweptAngle(s.curve, ta, tb, law.x, law.y)
    })
  return {
    volumeM3,
    areaM2: wetM2,
    slopedM2,
    areaX: mx + law.x * wetM2,
    areaY: my + law.y * wetM2,
    shoreM: Math.max(0, wet.radiusM * angle),
  }
}

/** Mean depth [m] and surface of the floor [m²] over a whole face of a radial law. */
export function radialMeans(
  stretches: readonly Stretch[],
  law: RadialLaw,
  areaM2: number,
): { depthM: number; slopedM2: number } {
  return {
    depthM: areaM2 > 0 ? radialIntegral(stretches, law, depthRate, ALL) / areaM2 : law.edgeDepthM,
    slopedM2: radialIntegral(stretches, law, slopedRate, ALL),
  }
}

/** Mean square of the distance from a place over a face [m²]. */
export function meanSquareDistance(stretches: readonly Stretch[], x: number, y: number): number {
  const about: RadialLaw = { form: 'cone', x, y, radiusM: 1, edgeDepthM: 1, depthM: 0 }
  const area = radialIntegral(stretches, about, areaRate, ALL)
  return radialIntegral(stretches, about, (_, rho) => (rho * rho) / 4, ALL) / area
}

/**
 * ∂V by the depths that a dish states, over one cell at a level [m²]: by the depth of the rim, and by that at the centre.
 * Accuracy: as wetRadialCell.
 */
export function lawShares(
  cell: Cell,
  law: RadialLaw,
  edges: readonly Edge[],
  levelM: number,
): [edge: number, centre: number] {
  if (cell.maxDepthM + levelM <= 0) return [0, 0]
  const stretches = stretchesOf(cell.loops, edges)
  const wet = wetOf(cell, law, levelM)
  const centre = radialIntegral(stretches, law, centreShareRate, wet)
  return [radialIntegral(stretches, law, areaRate, wet) - centre, centre]
}

/** ∫ f dA over the wet part of a face, where `rate` is half the mean of f over a disc about the centre. */
function radialIntegral(stretches: readonly Stretch[], law: RadialLaw, rate: RadialRate, wet: Wet): number {
  const { radiusM, beyond } = wet
  const within = rate(law, radiusM) * radiusM * radiusM
  let sum = 0
  for (const s of stretches)
    forParts(s, law, wet, (ta, tb, isBeyond) => {
      if (beyond === 0) sum += s.sign * alongStretch(s.curve, ta, tb, law, rate)
      else if (beyond < 0)
        sum +=
          s.sign *
          (isBeyond ? within * sweptAngle(s.curve, ta, tb, law.x, law.y) : alongStretch(s.curve, ta, tb, law, rate))
      else if (isBeyond)
        sum += s.sign * (alongStretch(s.curve, ta, tb, law, rate) - within * sweptAngle(s.curve, ta, tb, law.x, law.y))
    })
  return sum
}

/** Calls `visit` with the parts of a stretch that lie within the shore's radius and beyond it. */
function forParts(
  s: Stretch,
  law: RadialLaw,
  wet: Wet,
  visit: (ta: number, tb: number, isBeyond: boolean) => void,
): void {
  if (wet.beyond === 0) {
    visit(s.t0, s.t1, true)
    return
  }
  const cuts = radiusZeros(s.curve, s.t0, s.t1, law.x, law.y, wet.radiusM)
  for (let i = 0; i <= cuts.length; i++) {
    const ta = i === 0 ? s.t0 : cuts[i - 1]!
    const tb = i === cuts.length ? s.t1 : cuts[i]!
    evaluate(s.curve, (ta + tb) / 2, jet)
    visit(ta, tb, Math.hypot(jet.x - law.x, jet.y - law.y) > wet.radiusM)
  }
}

/** ∫ rate (x dy − y dx) along a stretch. */
function alongStretch(curve: Curve, t0: number, t1: number, law: RadialLaw, rate: RadialRate): number {
  const { x: cx, y: cy } = law
  const about = arcAbout(curve, cx, cy)
  if (about) {
    const r = Math.abs(about.radius)
    return rate(law, r) * r * r * about.turn * (t1 - t0)
  }
  const f = (t: number): number => {
    evaluate(curve, t, jet)
    const x = jet.x - cx
    const y = jet.y - cy
    return rate(law, Math.hypot(x, y)) * (x * jet.dy - y * jet.dx)
  }
  if (rate === areaRate) {
    const rule = ruleFor(curve)
    let sum = 0
    for (let k = 0; k < rule.at.length; k++) sum += rule.weight[k]! * f(t0 + (t1 - t0) * rule.at[k]!)
    return sum * (t1 - t0)
  }
  return integrateFromFoot(f, curve, t0, t1, law, Math.abs(rate(law, law.radiusM)) + Math.abs(rate(law, 0)), 2)
}

/** An integral along a stretch, cut where it comes nearest to the centre, for the distance bends sharply there. */
function integrateFromFoot(
  f: (t: number) => number,
  curve: Curve,
  t0: number,
  t1: number,
  law: RadialLaw,
  scale: number,
  dimensions: 1 | 2,
): number {
  evaluate(curve, t0, jet)
  const r0 = Math.hypot(jet.x - law.x, jet.y - law.y)
  evaluate(curve, t1, jet)
  const size = (Math.max(r0, Math.hypot(jet.x - law.x, jet.y - law.y)) + law.radiusM) ** dimensions
  const tolerance = 64 * ROUNDING * scale * size
  const near = nearestAlong(curve, t0, t1, law.x, law.y)
  if (near === undefined) return integrate(f, t0, t1, tolerance)
  return integrate(f, t0, near, tolerance) + integrate(f, near, t1, tolerance)
}

/** ∫ x dA and ∫ y dA over the wet part of a face, from the centre. */
function moments(stretches: readonly Stretch[], law: RadialLaw, wet: Wet): [number, number] {
  let mx = 0
  let my = 0
  const cube = wet.radiusM ** 3 / 3
  for (const s of stretches) {
    const rule = ruleFor(s.curve)
    forParts(s, law, wet, (ta, tb, isBeyond) => {
      // Beyond the shore's radius the integral up to it, ρ₀³/3 (cos θ, sin θ) dθ, is taken or left.
      if (isBeyond) {
        const part = -wet.beyond * s.sign * cube
        const [sinB, cosB] = directionAt(s.curve, tb, law)
        const [sinA, cosA] = directionAt(s.curve, ta, law)
        mx += part * (sinB - sinA)
        my -= part * (cosB - cosA)
      }
      if (isBeyond === wet.beyond < 0) return
      const h = s.sign * (tb - ta)
      for (let k = 0; k < rule.at.length; k++) {
        evaluate(s.curve, ta + (tb - ta) * rule.at[k]!, jet)
        const x = jet.x - law.x
        const y = jet.y - law.y
        const flux = (h * rule.weight[k]! * (x * jet.dy - y * jet.dx)) / 3
        mx += flux * x
        my += flux * y
      }
    })
  }
  return [mx, my]
}

function directionAt(curve: Curve, t: number, law: RadialLaw): [sin: number, cos: number] {
  evaluate(curve, t, jet)
  const x = jet.x - law.x
  const y = jet.y - law.y
  const r = Math.hypot(x, y) || 1
  return [y / r, x / r]
}

/** ∫ s⁺ dl [m²] and the length where s > 0 [m] along an edge of a cell with a radial law. */
export function wetAlongLaw(
  edge: Edge,
  cell: Cell,
  law: RadialLaw,
  levelM: number,
): { faceM2: number; shoreM: number } {
  const { curve, t0, t1 } = edge
  const out = { faceM2: 0, shoreM: 0 }
  if (cell.maxDepthM + levelM <= 0) return out
  const wet = wetOf(cell, law, levelM)
  forParts({ curve, t0, t1, sign: 1 }, law, wet, (ta, tb, isBeyond) => {
    if (wet.beyond !== 0 && isBeyond !== wet.beyond > 0) return
    const { length } = ta === t0 && tb === t1 ? edge : lengthMoments(curve, ta, tb)
    out.shoreM += length
    const about = arcAbout(curve, law.x, law.y)
    if (about) {
      out.faceM2 += length * Math.max(0, depthAtRadius(law, Math.abs(about.radius)) + levelM)
      return
    }
    const f = (t: number): number => {
      evaluate(curve, t, jet)
      return (depthAtRadius(law, Math.hypot(jet.x - law.x, jet.y - law.y)) + levelM) * Math.hypot(jet.dx, jet.dy)
    }
    const scale = Math.abs(law.depthM) + Math.abs(law.edgeDepthM) + Math.abs(levelM)
    out.faceM2 += Math.max(0, integrateFromFoot(f, curve, ta, tb, law, scale, 1))
  })
  return out
}
