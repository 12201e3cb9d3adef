import { evaluate, newJet } from './curve.ts'
import { lengthMoments } from './edge-integrals.ts'
import type { Cell, Edge } from './partition-types.ts'
import {
  ALL,
  forParts,
  integrateFromFoot,
  radialIntegral,
  radialMoments,
  stretchesOf,
  wetOf,
} from './radial-integrals.ts'
import { areaRate, depthAtRadius, depthRate, type RadialLaw, slopedRate } from './radial-law.ts'
import { arcAbout, type Stretch, sweptAngle } from './radius-along.ts'
import type { WetCell } from './wet-cell.ts'

const jet = newJet()

/**
 * Volume [m³], area and surface of the floor [m²], moments and inner shoreline [m] of the water over a cell whose depth
 * hangs on the distance ρ from a centre.
 * Equation: A = ∮ G(ρ)/ρ² (x dy − y dx), G = ∫₀^ρ [s > 0] ρ′ dρ′; V with s⁺, floor with √(1 + s′²) under the integral;
 *   ∫x dA = ∮ x K(ρ)/ρ³ (x dy − y dx), K = ∫₀^ρ [s > 0] ρ′² dρ′; shore = ρ₀ ∮_{ρ > ρ₀} dθ where s(ρ₀) = 0. x and y from the centre.
 * Symbols: s depth and level; θ the angle about the centre.
 * Valid for: cells within the rim. The shore at ρ₀ is no edge, so no polygon is clipped: beyond ρ₀ the integrals hang on
 *   the angle alone.
 * Source: divergence theorem applied to G(ρ)/ρ² (x, y) and the like; own derivation.
 * Accuracy: rounding on circles about the centre and for areas; else adaptive quadrature to some 1e-14 of the whole.
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
  const [mx, my] = radialMoments(stretches, law, wet)
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
