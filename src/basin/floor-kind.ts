import type { Problem } from '../base/index.ts'
import type { HalfPlane } from './half-planes.ts'
import type { Floor, Plane } from './types.ts'

/** One linear piece of a floor and the convex region where it holds. */
export interface FloorPiece {
  readonly plane: Plane
  readonly within: readonly HalfPlane[]
  /** Weight of each of the floor's measured depths in this piece's depth, as linear functions of place. */
  readonly weights: readonly { readonly depthIndex: number; readonly plane: Plane }[]
}

/** A floor laid out in the partition's frame. */
export interface FloorPlan {
  readonly pieces: readonly FloorPiece[]
  /** Lines a·x + b·y + c = 0 on which neighbouring pieces meet, each with where it counts. */
  readonly breaks: readonly { readonly line: HalfPlane; readonly within: readonly HalfPlane[] }[]
  /** Piece that holds at a place. */
  readonly pieceAt: (x: number, y: number) => number
}

/** All that the program knows of one kind of floor. */
export interface FloorKind<F extends Floor> {
  readonly id: F['kind']
  readonly check: (floor: F) => Problem | undefined
  readonly plan: (floor: F, originX: number, originY: number) => FloorPlan
}
