import type { Problem, Result } from '../base/index.ts'
import type { Curve } from './curve.ts'
import type { HalfPlane } from './half-planes.ts'
import type { RadialLaw } from './radial-law.ts'
import type { Stretch } from './radius-along.ts'
import type { Ring } from './rings.ts'
import type { Floor, Plane } from './types.ts'

/** One piece of a floor and the convex region where it holds: linear, or hanging on the distance from a centre. */
export interface FloorPiece {
  readonly plane: Plane
  /** Where it is given it holds instead of the plane, and dish-gradient.ts has what would be its weights. */
  readonly law?: RadialLaw | undefined
  readonly within: readonly HalfPlane[]
  /**
   * Weight of each of the floor's measured depths in this piece's depth, as linear functions of place; they sum to 1. Depths
   * are numbered as the floor states them: stations; `edgeDepthM` first, where it is given, then rings or points.
   */
  readonly weights: readonly { readonly depthIndex: number; readonly plane: Plane }[]
  /** Corners of a slanted triangle, whose depths stay with them when they move. */
  readonly corners?: readonly PieceCorner[] | undefined
  /** Box of the piece where it is bounded: least x and y, greatest x and y. */
  readonly box?: readonly [number, number, number, number] | undefined
}

/** A corner of a floor's triangle, and the place on a shore or contour that it goes with, if it lies on one. */
export interface PieceCorner {
  readonly x: number
  readonly y: number
  readonly on?: { readonly curve: Curve; readonly t: number } | undefined
}

/** A floor laid out in the partition's frame. */
export interface FloorPlan {
  readonly pieces: readonly FloorPiece[]
  /** Lines a·x + b·y + c = 0 on which neighbouring pieces meet, each with where it counts. */
  readonly breaks: readonly { readonly line: HalfPlane; readonly within: readonly HalfPlane[] }[]
  /** Exact curves on which neighbouring pieces meet; they touch each other at their ends only. */
  readonly edges?: readonly Curve[] | undefined
  /** Piece that holds at a place. */
  readonly pieceAt: (x: number, y: number) => number
  /** Piece that holds in a face of any form, for floors whose faces may not hold their own middle. */
  readonly pieceOf?: ((face: readonly Stretch[]) => number) | undefined
  /** Bound of the volume that chords of curved shores and rings may misplace [m³]. */
  readonly modelErrorM3?: number | undefined
}

/** Where a floor lies: the outline and then the islands, and the frame of the partition. */
export interface FloorSite {
  readonly shores: readonly Ring[]
  readonly originX: number
  readonly originY: number
  readonly extentM: number
  readonly grainM: number
  /** One standard deviation of a measured point in plan; 0 where none is stated [m]. */
  readonly planToleranceM: number
}

/** All that the program knows of one kind of floor. */
export interface FloorKind<F extends Floor> {
  readonly id: F['kind']
  /** What is wrong with the floor's own numbers. */
  readonly check: (floor: F) => Problem | undefined
  /** The floor in its place, or what keeps it from lying there. */
  readonly plan: (floor: F, site: FloorSite) => Result<FloorPlan>
}
