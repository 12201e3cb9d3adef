import type { Curve } from './curve.ts'
import type { FloorPlan } from './floor-kind.ts'
import type { Remembering } from './memory.ts'
import type { RadialLaw } from './radial-law.ts'
import type { Ring } from './rings.ts'
import type { BasinShape, Plane } from './types.ts'

/** A stretch of one exact curve between two nodes; the cells on both sides share it. */
export interface Edge {
  readonly curve: Curve
  readonly t0: number
  readonly t1: number
  readonly from: number
  readonly to: number
  /** Rings whose boundary runs here (0 outline, then islands, then patches); none for a break line. */
  readonly rings: readonly number[]
  /** The cell on the left and on the right, −1 for dry land. */
  readonly left: number
  readonly right: number
  /** ∫dl, ∫x dl, ∫y dl. */
  readonly length: number
  readonly lengthX: number
  readonly lengthY: number
}

/** A region of one linear depth, or of one depth that hangs on the distance from a centre. */
export interface Cell {
  /** Depth in the partition's own frame; where there is a radial law, that one holds instead (cell-depth.ts). */
  readonly plane: Plane
  readonly law?: RadialLaw | undefined
  /** Mean depth and surface of the floor [m², without level] of a cell with a radial law. */
  readonly lawMeans?: { readonly depthM: number; readonly slopedM2: number } | undefined
  readonly part: 'floor' | 'feature'
  /** Feature that rules here, −1 for the floor. */
  readonly feature: number
  /** Patch that rules here, −1 for the floor. */
  readonly patch: number
  /** Interval of the floor's profile below, −1 before the first station. */
  readonly strip: number
  /** Closed loops of half-edges (2e along, 2e+1 against edge e), the cell on their left; the first is the outer one. */
  readonly loops: readonly (readonly number[])[]
  readonly areaM2: number
  readonly centreX: number
  readonly centreY: number
  readonly minDepthM: number
  readonly maxDepthM: number
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** The plan divided into cells of linear depth. Its frame's origin lies at (originX, originY) of the plan. */
export interface Partition extends Remembering {
  readonly shape: BasinShape
  /** The floor in this frame. */
  readonly floor: FloorPlan
  /** The exact curves of outline, islands and patches in this frame, with the segments that they came from. */
  readonly rings: readonly Ring[]
  readonly originX: number
  readonly originY: number
  readonly extentM: number
  readonly grainM: number
  /** Widest gap that joining near points left open [m]. */
  readonly gapM: number
  /** Area of slivers that were taken for what lies beside them [m²]. */
  readonly sliverM2: number
  readonly nodeX: Float64Array
  readonly nodeY: Float64Array
  readonly edges: readonly Edge[]
  readonly cells: readonly Cell[]
}
