import type { BasinMesh, ContourLine, DepthBand, DepthSample } from '../../basin/index.ts'

/**
 * What the solid shows: the shell, the contour lines on its floor, and how deep each place is; all of it from the mesh's own
 * origin, for the screen reckons in 32 bits.
 */
export interface SolidModel {
  readonly mesh: BasinMesh
  readonly contours: readonly ContourLine[]
  /** Tints between the contour lines; only the still drawing asks for them. */
  readonly bands: () => readonly DepthBand[]
  /** Deepest place, below the datum [m]. */
  readonly maxDepthM: number
  /** Height above the datum of what depths are measured from [m]: a depth that is shown is that much more. */
  readonly referenceM: number
  /** Height of the rim above the datum [m]. */
  readonly rimM: number
  readonly sampleAt: (x: number, y: number) => DepthSample | undefined
}

/** Lowest and highest z of a mesh [m]. */
export function heightsOf(mesh: BasinMesh): readonly [lowM: number, highM: number] {
  let [low, high] = [Infinity, -Infinity]
  for (let i = 2; i < mesh.positions.length; i += 3) {
    low = Math.min(low, mesh.positions[i]!)
    high = Math.max(high, mesh.positions[i]!)
  }
  return low <= high ? [low, high] : [0, 0]
}
