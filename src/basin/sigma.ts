import { type DepthGradient, depthGradient, listDepths } from './depth-gradient.ts'
import type { Uncertainty } from './derivative-types.ts'
import type { Partition } from './partition-types.ts'
import { type NodeGradient, nodePath, type PathGradient, pathGradients } from './shore-gradient.ts'
import { type VolumeGradient, volumeGradient } from './volume-gradient.ts'

/** How many of the measurements that matter most are named. */
const NAMED = 3

/**
 * One standard deviation of the volume [m³] from the tolerance of what was measured; 0 without one.
 * Method: see `uncertaintyBy`.
 * Accuracy: rounding with upright walls; with others the water beside them is integrated by few rays, 1e-2 of its share.
 */
export function sigmaOf(p: Partition, levelM: number, volumeM3: number): number {
  if (!p.shape.tolerance) return 0
  const g = volumeGradient(p, levelM, true)
  return total(causesOf(p, g, pathGradients(p, g.slots), depthGradient(p, g), volumeM3))
}

/**
 * The standard deviation of the volume from the tolerance of what was measured, by its causes, and the measurements that
 * matter most.
 * Equation: σ² = σ_plan² Σ |∂V/∂P|² + σ_depth² Σ (∂V/∂z)² + (σ_tape ∂V/∂k)² + (σ_datum Σ ∂V/∂z)²,
 *   ∂V/∂k = 2 V + ∫ n ∂d/∂n dA where the wall's law makes the depth.
 * Symbols: P nodes of outline and islands, each with its handles, x and y independent; z stated depths; k scale of all
 *   distances in plan, which the tape's error is in; n plan distance from the shore. An error that many measurements share
 *   is summed over them before it is squared.
 * Valid for: small errors. The wall’s radius or run, bulges, widths of benches, and where stations and other features stand are
 *   taken as right but for the tape’s scale, which moves the latter too.
 * Source: propagation of uncertainty, JCGM 100:2008 eq. 10 and 5.2.2 (from memory); derivatives own.
 * Accuracy: first order.
 */
export function uncertaintyBy(p: Partition, g: VolumeGradient, volumeM3: number): Uncertainty {
  const paths = pathGradients(p, g.slots)
  const depths = depthGradient(p, g)
  const causes = causesOf(p, g, paths, depths, volumeM3)
  const { planM, depthM } = p.shape.tolerance ?? NO_TOLERANCE
  const single = [
    ...paths.flatMap(({ where, nodes }) =>
      nodes.map((node) => ({
        path: nodePath(where, node.segment),
        kind: 'node' as const,
        sigmaM3: planM * Math.sqrt(squareWithHandles(node)),
      })),
    ),
    ...listDepths(p, depths).map(({ path, kind, value }) => ({ path, kind, sigmaM3: depthM * Math.abs(value) })),
  ]
  return {
    sigmaM3: total(causes),
    contributions: causes,
    largest: single
      .filter(({ sigmaM3 }) => sigmaM3 > 0)
      .sort((a, b) => b.sigmaM3 - a.sigmaM3)
      .slice(0, NAMED),
  }
}

const NO_TOLERANCE = { planM: 0, depthM: 0, tapeScale: 0, datumM: 0 }

function causesOf(
  p: Partition,
  g: VolumeGradient,
  paths: readonly PathGradient[],
  depths: DepthGradient,
  volumeM3: number,
): Uncertainty['contributions'] {
  const { planM, depthM, tapeScale = 0, datumM = 0 } = p.shape.tolerance ?? NO_TOLERANCE
  let plan2 = 0
  for (const { nodes } of paths) for (const node of nodes) plan2 += squareWithHandles(node)
  let depth2 = 0
  let together = 0
  for (const value of depths.floor) {
    depth2 += value * value
    together += value
  }
  for (const { value } of depths.features) {
    depth2 += value * value
    together += value
  }
  return [
    { what: 'nodes', sigmaM3: planM * Math.sqrt(plan2) },
    { what: 'depths', sigmaM3: depthM * Math.sqrt(depth2) },
    { what: 'tape', sigmaM3: tapeScale * Math.abs(2 * volumeM3 + g.unscaled) },
    { what: 'waterline', sigmaM3: datumM * Math.abs(together) },
  ]
}

function total(causes: Uncertainty['contributions']): number {
  return Math.sqrt(causes.reduce((sum, { sigmaM3 }) => sum + sigmaM3 * sigmaM3, 0))
}

/** Square of a node's derivative where its handles go along with it. */
function squareWithHandles({ x, y, out, in: into }: NodeGradient): number {
  const dx = x + (out?.x ?? 0) + (into?.x ?? 0)
  const dy = y + (out?.y ?? 0) + (into?.y ?? 0)
  return dx * dx + dy * dy
}
