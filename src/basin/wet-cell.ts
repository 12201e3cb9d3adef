import { evaluate, newJet } from './curve.ts'
import { type Linear, zerosAlong } from './curve-linear.ts'
import { ruleFor } from './edge-integrals.ts'
import type { Cell, Edge } from './partition-types.ts'
import { planeAt, slopeOf } from './planes.ts'
import { isLevel } from './tolerance.ts'
import { wetRadialCell } from './wet-radial.ts'

/** What the water over one cell amounts to. */
export interface WetCell {
  volumeM3: number
  areaM2: number
  /** Surface of the floor or feature under it [m²]. */
  slopedM2: number
  /** First moments of the wet area, about the partition's origin. */
  areaX: number
  areaY: number
  /** Length of the shore inside the cell. */
  shoreM: number
}

const jet = newJet()
const DRY: Readonly<WetCell> = { volumeM3: 0, areaM2: 0, slopedM2: 0, areaX: 0, areaY: 0, shoreM: 0 }

/**
 * Volume [m³], area [m²], its moments and inner shoreline [m] of the water over a cell at a level.
 * Equation: s = d + level, g = ∇s, n outward: A = |g|⁻² ∮ s⁺ (g·n) dl, V = ½|g|⁻² ∮ s⁺² (g·n) dl,
 *   ∫x dA = |g|⁻² (∮ x s⁺ (g·n) dl − g_x V), shore = (g/|g|)·∮_{s>0} n dl. Where all is wet: V = A s(centroid).
 * Symbols: d depth of the cell below the datum; level of the water above it; s⁺ = max(s, 0).
 * Valid for: linear d; depths about a centre go to wet-radial.ts. The new shore s = 0 contributes nothing, so no polygon is clipped.
 * Source: divergence theorem applied to s⁺ g, s⁺² g, x s⁺ g; own derivation.
 * Accuracy: rounding, since lines, quarter arcs and cubics are integrated to the last bits (gauss.ts).
 */
export function wetCell(cell: Cell, edges: readonly Edge[], levelM: number, extentM: number): Readonly<WetCell> {
  if (cell.maxDepthM + levelM <= 0) return DRY
  if (cell.law !== undefined) return wetRadialCell(cell, cell.law, edges, levelM)
  const { plane, areaM2, centreX, centreY } = cell
  const slope = slopeOf(plane)
  if (cell.minDepthM + levelM >= 0 || isLevel(slope, extentM, Math.abs(plane.atOrigin))) {
    const depth = planeAt(plane, centreX, centreY) + levelM
    if (depth <= 0) return DRY
    const slopedM2 = areaM2 * Math.sqrt(1 + slope * slope)
    return { volumeM3: areaM2 * depth, areaM2, slopedM2, areaX: areaM2 * centreX, areaY: areaM2 * centreY, shoreM: 0 }
  }
  const sums = { v: 0, a: 0, x: 0, y: 0, nx: 0, ny: 0 }
  const s: Linear = { c: plane.atOrigin + levelM, gx: plane.dx, gy: plane.dy }
  for (const loop of cell.loops) for (const half of loop) addHalf(edges[half >> 1]!, half & 1 ? -1 : 1, s, sums)
  const g2 = slope * slope
  const volumeM3 = Math.max(0, sums.v / (2 * g2))
  const wetM2 = Math.min(Math.max(0, sums.a / g2), areaM2)
  return {
    volumeM3,
    areaM2: wetM2,
    slopedM2: wetM2 * Math.sqrt(1 + g2),
    areaX: (sums.x - plane.dx * volumeM3) / g2,
    areaY: (sums.y - plane.dy * volumeM3) / g2,
    shoreM: Math.max(0, (plane.dx * sums.nx + plane.dy * sums.ny) / slope),
  }
}

interface Sums {
  v: number
  a: number
  x: number
  y: number
  nx: number
  ny: number
}

function addHalf(edge: Edge, sign: number, s: Linear, sums: Sums): void {
  const { curve, t0, t1 } = edge
  const rule = ruleFor(curve)
  const zeros = zerosAlong(curve, t0, t1, s)
  for (let i = 0; i <= zeros.length; i++) {
    const ta = i === 0 ? t0 : zeros[i - 1]!
    const tb = i === zeros.length ? t1 : zeros[i]!
    evaluate(curve, (ta + tb) / 2, jet)
    if (!(s.c + s.gx * jet.x + s.gy * jet.y > 0)) continue
    const h = sign * (tb - ta)
    for (let k = 0; k < rule.at.length; k++) {
      evaluate(curve, ta + (tb - ta) * rule.at[k]!, jet)
      const depth = s.c + s.gx * jet.x + s.gy * jet.y
      const flux = h * rule.weight[k]! * (s.gx * jet.dy - s.gy * jet.dx) * depth
      sums.a += flux
      sums.v += flux * depth
      sums.x += flux * jet.x
      sums.y += flux * jet.y
    }
    evaluate(curve, tb, jet)
    sums.nx += sign * jet.y
    sums.ny -= sign * jet.x
    evaluate(curve, ta, jet)
    sums.nx -= sign * jet.y
    sums.ny += sign * jet.x
  }
}
