import type { Curve } from './curve.ts'
import { circleAbout } from './floor-dish.ts'
import { type RadialLaw, radiusAtDepth } from './radial-law.ts'
import type { Plane } from './types.ts'

/** The curves within the rim on which a plane has the depth of a radial law, and how far they may be off [m]. */
export function lawCrossings(law: RadialLaw, plane: Plane, grainM: number): { curves: Curve[]; offM: number } {
  const { x, y, radiusM, depthM, edgeDepthM } = law
  if (plane.dx === 0 && plane.dy === 0) {
    const depth = plane.atOrigin
    if (!(depth > Math.min(depthM, edgeDepthM) && depth < Math.max(depthM, edgeDepthM))) return { curves: [], offM: 0 }
    const r = radiusAtDepth(law, depth)
    // At the rim itself there is an edge already, and a speck at the centre is no region.
    return { curves: r <= 4 * grainM || radiusM - r <= 4 * grainM ? [] : circleAbout(x, y, r), offM: 0 }
  }
  return { curves: [], offM: 0 }
}
