import type { Fan } from './cove-fan.ts'

/**
 * Rays of one fan between two events: all of them end at the same thing and cross the same edges in the same order. It
 * doesn't depend on the level of the water.
 */
export interface StripPiece {
  readonly fan: Fan
  readonly t0: number
  readonly t1: number
  /** What ends the rays: a shore's index where another shore becomes nearer, −1 the strip's width, −2 the shore's own bend. */
  readonly by: number
  /** Cells in the order in which a ray meets them; the first lies at the shore. */
  readonly cells: readonly number[]
  /** Edges between those cells, one fewer. */
  readonly edges: readonly number[]
  /** True where it is about one cell alone of those that its rays cross (strip-runs.ts). */
  readonly isRun?: boolean
}

/** The water within reach of the walls, swept by rays that don't cross each other. */
export interface Strip {
  /** Plan distance from the shore beyond which the wall changes nothing [m]. */
  readonly widthM: number
  readonly pieces: readonly StripPiece[]
  /** Area over which it was left open what the rays meet: changes without end, by rounding [m²]. */
  readonly strayM2: number
}

/** One ray of a piece: foot and direction, width of the sheaf (h0 + h1 n per unit of t), and where it crosses and ends. */
export interface StripRay {
  x: number
  y: number
  nx: number
  ny: number
  h0: number
  h1: number
  /** Distances of the crossings along the ray, ascending, one for each of the piece's edges [m]. */
  readonly at: number[]
  /** Length of the ray: the width of the strip, or up to the cut locus [m]. */
  end: number
}
