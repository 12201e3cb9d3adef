import type { VolumeDerivative } from './derivative-types.ts'
import type { Partition } from './partition-types.ts'
import type { VolumeGradient } from './volume-gradient.ts'

/**
 * Derivatives by where a profile's stations stand along its axis and by the axis' ends.
 * Equation: on a piece of fall k between stations a and b, ∂d/∂s_a = −k w_a and ∂d/∂s_b = −k w_b, w the weights of their
 *   depths; the axis moves s itself: ∂s/∂from = −u − n (r·n)/L, ∂s/∂to = n (r·n)/L, so dV = ∫ k ∂s dA.
 * Symbols: s distance along the axis; u its direction, n square to it, L its length; r place less `from`.
 * Accuracy: rounding.
 */
export function profileGradients(p: Partition, g: VolumeGradient): VolumeDerivative[] {
  const { floor } = p.shape
  if (floor.kind !== 'profile') return []
  const { from, to } = floor.axis
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const ux = (to[0] - from[0]) / length
  const uy = (to[1] - from[1]) / length
  const byPlace = new Float64Array(floor.stations.length)
  let alongM3 = 0
  let acrossM3 = 0
  p.floor.pieces.forEach(({ plane, weights }, i) => {
    const k = plane.dx * ux + plane.dy * uy
    if (k === 0) return
    const area = g.floor[3 * i]!
    const areaX = g.floor[3 * i + 1]!
    const areaY = g.floor[3 * i + 2]!
    for (const { depthIndex, plane: weight } of weights)
      byPlace[depthIndex]! -= k * (weight.atOrigin * area + weight.dx * areaX + weight.dy * areaY)
    const rx = areaX + (p.originX - from[0]) * area
    const ry = areaY + (p.originY - from[1]) * area
    alongM3 -= k * area
    acrossM3 += (k * (ry * ux - rx * uy)) / length
  })
  const byTo = [-uy * acrossM3, ux * acrossM3] as const
  return [
    ...[...byPlace].map((value, i): VolumeDerivative => ({ path: `floor.stations[${i}][0]`, kind: 'station', value })),
    { path: 'floor.axis.from', kind: 'axis', value: [alongM3 * ux - byTo[0], alongM3 * uy - byTo[1]] },
    { path: 'floor.axis.to', kind: 'axis', value: byTo },
  ]
}
