import { never } from '../base/index.ts'
import type { VolumeDerivative } from './derivative-types.ts'
import type { Partition } from './partition-types.ts'
import { shifted } from './planes.ts'
import type { Floor, Plane } from './types.ts'
import type { VolumeGradient } from './volume-gradient.ts'

/** Derivatives by every depth that the floor and the features state, each once: what hangs on one number is summed. */
export function depthGradients(p: Partition, g: VolumeGradient): VolumeDerivative[] {
  const sums = new Map<string, number>()
  const add = (path: string, share: number): void => {
    sums.set(path, (sums.get(path) ?? 0) + share)
  }
  p.floor.pieces.forEach((piece, i) => {
    for (const { depthIndex, plane } of piece.weights)
      add(floorDepthPath(p.shape.floor, depthIndex), weigh(plane, g.floor, 3 * i))
  })
  const { originX, originY } = p
  p.shape.patches.forEach(({ feature, weights, depthNames }, i) => {
    const name = (index: number): string => `features[${feature}].${depthNames?.[index] ?? 'depthM'}`
    if (!weights) add(name(0), g.patches[3 * i]!)
    // A patch's planes are written in the plan's own frame.
    for (const { depthIndex, plane } of weights ?? [])
      add(name(depthIndex), weigh(shifted(plane, originX, originY), g.patches, 3 * i))
  })
  return [...sums].map(([path, value]) => ({ path, kind: 'depth', value }))
}

function weigh({ atOrigin, dx, dy }: Plane, moments: Float64Array, at: number): number {
  return atOrigin * moments[at]! + dx * moments[at + 1]! + dy * moments[at + 2]!
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
