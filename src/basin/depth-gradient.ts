import { never } from '../base/index.ts'
import type { VolumeDerivative } from './derivative-types.ts'
import type { Partition } from './partition-types.ts'
import type { Floor, Plane } from './types.ts'
import type { VolumeGradient } from './volume-gradient.ts'

/** Derivatives by the depths that floor and features state, each once: what hangs on one number is summed [m²]. */
export interface DepthGradient {
  /** By the number of the floor's depth; a number that no piece hangs on is 0. */
  readonly floor: readonly number[]
  readonly features: readonly DepthShare[]
}

interface DepthShare {
  readonly feature: number
  readonly depthIndex: number
  readonly name: string
  value: number
}

/** Sums the wet areas by the depths that make them, each weighed by what the depth has in it. */
export function depthGradient(p: Partition, g: VolumeGradient): DepthGradient {
  const floor: number[] = []
  for (let i = 0; i < p.floor.pieces.length; i++) {
    if (g.floor[3 * i] === 0) continue
    for (const { depthIndex, plane } of p.floor.pieces[i]!.weights) {
      while (floor.length <= depthIndex) floor.push(0)
      floor[depthIndex]! += weigh(plane, g.floor, 3 * i, 0, 0)
    }
  }
  if (g.dish) {
    while (floor.length < 2) floor.push(0)
    floor[0]! += g.dish.edgeDepth
    floor[1]! += g.dish.depth
  }
  const features: DepthShare[] = []
  const add = (feature: number, depthIndex: number, name: string, value: number): void => {
    const known = features.find((it) => it.feature === feature && it.depthIndex === depthIndex && it.name === name)
    if (known) known.value += value
    else features.push({ feature, depthIndex, name, value })
  }
  for (let i = 0; i < p.shape.patches.length; i++) {
    const { feature, weights, depthNames } = p.shape.patches[i]!
    if (!weights) add(feature, 0, depthNames?.[0] ?? 'depthM', g.patches[3 * i]!)
    // A patch's planes are written in the plan's own frame.
    for (const { depthIndex, plane } of weights ?? [])
      add(
        feature,
        depthIndex,
        depthNames?.[depthIndex] ?? 'depthM',
        weigh(plane, g.patches, 3 * i, p.originX, p.originY),
      )
  }
  return { floor, features }
}

function weigh({ atOrigin, dx, dy }: Plane, moments: Float64Array, at: number, x: number, y: number): number {
  return (atOrigin + dx * x + dy * y) * moments[at]! + dx * moments[at + 1]! + dy * moments[at + 2]!
}

/** The same as a list with where each depth stands in the body. */
export function listDepths(p: Partition, { floor, features }: DepthGradient): (VolumeDerivative & { value: number })[] {
  return [
    ...floor.map((value, i) => ({ path: floorDepthPath(p.shape.floor, i), kind: 'depth' as const, value })),
    ...features.map(({ feature, name, value }) => ({
      path: `features[${feature}].${name}`,
      kind: 'depth' as const,
      value,
    })),
  ]
}

/** Where the floor states a depth, by its number (floor-kind.ts). */
function floorDepthPath(floor: Floor, index: number): string {
  switch (floor.kind) {
    case 'flat':
      return 'floor.depthM'
    case 'profile':
      return `floor.stations[${index}][1]`
    case 'contours':
      return index === 0 ? 'floor.edgeDepthM' : `floor.rings[${index - 1}].depthM`
    case 'soundings': {
      const first = floor.edgeDepthM === null ? 0 : 1
      return index < first ? 'floor.edgeDepthM' : `floor.points[${index - first}][2]`
    }
    case 'dish':
      return index === 0 ? 'floor.edgeDepthM' : 'floor.depthM'
    default:
      return never(floor, 'unknown floor')
  }
}
