import { depthGradients } from './depth-gradient.ts'
import type { DerivativeKind, Uncertainty } from './derivative-types.ts'
import type { Partition } from './partition-types.ts'
import { type NodeGradient, nodePath, pathGradients } from './shore-gradient.ts'
import { type VolumeGradient, volumeGradient } from './volume-gradient.ts'

/** How many of the measurements that matter most are named. */
const NAMED = 3

/**
 * One standard deviation of the volume [m³] from the tolerance of what was measured; 0 without one.
 * Method: see `uncertaintyBy`.
 * Accuracy: rounding with upright walls; with others the water beside them is integrated by few rays, 1e-4 of its share.
 */
export function sigmaOf(p: Partition, levelM: number, volumeM3: number): number {
  if (!p.shape.tolerance) return 0
  return uncertaintyBy(p, volumeGradient(p, levelM, true), volumeM3).sigmaM3
}

/**
 * The standard deviation of the volume from the tolerance of what was measured, by its causes, and the measurements that
 * matter most.
 * Equation: σ² = σ_plan² Σ |∂V/∂P|² + σ_depth² Σ (∂V/∂z)² + (σ_tape ∂V/∂k)² + (σ_datum Σ ∂V/∂z)²,
 *   ∂V/∂k = 2 V + ∫ n ∂d/∂n dA where the wall's law makes the depth.
 * Symbols: P nodes of outline and islands, each with its handles, x and y independent; z stated depths; k scale of all
 *   distances in plan, which the tape's error is in; n plan distance from the shore. An error that many measurements share
 *   is summed over them before it is squared.
 * Valid for: small errors. The wall's radius or run, bulges, and where features and stations stand are taken as right but
 *   for the tape's scale, which moves the latter too.
 * Source: propagation of uncertainty, JCGM 100:2008 eq. 10 and 5.2.2 (from memory); derivatives own.
 * Accuracy: first order.
 */
export function uncertaintyBy(p: Partition, g: VolumeGradient, volumeM3: number): Uncertainty {
  const { planM, depthM, tapeScale = 0, datumM = 0 } = p.shape.tolerance ?? { planM: 0, depthM: 0 }
  const single: { path: string; kind: DerivativeKind; sigmaM3: number }[] = []
  for (const { where, nodes } of pathGradients(p, g.slots))
    for (const node of nodes)
      single.push({ path: nodePath(where, node.segment), kind: 'node', sigmaM3: planM * sizeWithHandles(node) })
  const nodesM3 = rootOfSquares(single)
  const depths = depthGradients(p, g).map(({ path, value }) => ({ path, value: value as number }))
  const byDepth = depths.map(({ path, value }) => ({
    path,
    kind: 'depth' as const,
    sigmaM3: depthM * Math.abs(value),
  }))
  const depthsM3 = rootOfSquares(byDepth)
  const tapeM3 = tapeScale * (2 * volumeM3 + g.unscaled)
  const waterlineM3 = datumM * depths.reduce((sum, { value }) => sum + value, 0)
  const largest = [...single, ...byDepth].filter(({ sigmaM3 }) => sigmaM3 > 0)
  largest.sort((a, b) => b.sigmaM3 - a.sigmaM3)
  return {
    sigmaM3: Math.hypot(nodesM3, depthsM3, tapeM3, waterlineM3),
    contributions: [
      { what: 'nodes', sigmaM3: nodesM3 },
      { what: 'depths', sigmaM3: depthsM3 },
      { what: 'tape', sigmaM3: tapeM3 },
      { what: 'waterline', sigmaM3: waterlineM3 },
    ],
    largest: largest.slice(0, NAMED),
  }
}

/** Length of a node's derivative where its handles go along with it. */
function sizeWithHandles({ x, y, out, in: into }: NodeGradient): number {
  return Math.hypot(x + (out?.x ?? 0) + (into?.x ?? 0), y + (out?.y ?? 0) + (into?.y ?? 0))
}

function rootOfSquares(list: readonly { readonly sigmaM3: number }[]): number {
  return Math.sqrt(list.reduce((sum, { sigmaM3 }) => sum + sigmaM3 * sigmaM3, 0))
}
