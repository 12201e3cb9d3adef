import { type Curve, evaluate, newJet } from './curve.ts'
import type { VolumeDerivative } from './derivative-types.ts'
import type { Partition } from './partition-types.ts'
import { forParts, integrateFromFoot, radialIntegral, stretchesOf, wetOf } from './radial-integrals.ts'
import { areaRate, centreShareRate, lawAt, radiusShareRate } from './radial-law.ts'

/** First derivatives of the volume by what a dish states of its hollow. */
export interface DishGradient {
  /** By the depth of the rim, so far as the hollow itself hangs on it, and by that at the centre [m²]. */
  edgeDepth: number
  depth: number
  /** By the radius of the rim and by the place of the centre [m³/m]. */
  radius: number
  x: number
  y: number
}

const jet = newJet()

/**
 * The derivatives of the volume by a hollow at a level; nothing without one.
 * Equation: ∂V = ∫ ∂d dA over the wet part of the hollow that the floor makes; by the centre −∫ ∇d dA = −∮ s⁺ n dl.
 * Symbols: d depth; s⁺ wet depth; n outward normal of the hollow's cells.
 * Valid for: first order. At the rim the depth goes on without a step, so moving it adds nothing there.
 * Accuracy: as wet-radial.ts.
 */
export function dishGradient(p: Partition, levelM: number): DishGradient | undefined {
  const law = p.floor.pieces[1]?.law
  if (!law) return undefined
  const g: DishGradient = { edgeDepth: 0, depth: 0, radius: 0, x: 0, y: 0 }
  for (const cell of p.cells) {
    if (cell.law !== law || cell.maxDepthM + levelM <= 0) continue
    const stretches = stretchesOf(cell.loops, p.edges)
    const wet = wetOf(cell, law, levelM)
    const byCentre = radialIntegral(stretches, law, centreShareRate, wet)
    g.depth += byCentre
    g.edgeDepth += radialIntegral(stretches, law, areaRate, wet) - byCentre
    g.radius += radialIntegral(stretches, law, radiusShareRate, wet)
    const scale = Math.abs(law.depthM) + Math.abs(law.edgeDepthM) + Math.abs(levelM)
    for (const stretch of stretches)
      forParts(stretch, law, wet, (ta, tb, isBeyond) => {
        if (wet.beyond !== 0 && isBeyond !== wet.beyond > 0) return
        const along = (curve: Curve, weigh: () => number): number =>
          integrateFromFoot(
            (t) => {
              evaluate(curve, t, jet)
              return (lawAt(law, jet.x, jet.y) + levelM) * weigh()
            },
            curve,
            ta,
            tb,
            law,
            scale,
            1,
          )
        g.x -= stretch.sign * along(stretch.curve, () => jet.dy)
        g.y += stretch.sign * along(stretch.curve, () => jet.dx)
      })
  }
  return g
}

/** The hollow's place and size as derivatives; its depths go with those of other floors. */
export function listDish({ radius, x, y }: DishGradient): VolumeDerivative[] {
  return [
    { path: 'floor.radiusM', kind: 'radius', value: radius },
    { path: 'floor.centre', kind: 'axis', value: [x, y] },
  ]
}
