import type { Result } from '../base/index.ts'
import type { Axis, Patch, Path, Point } from '../basin/index.ts'

/** Any footprint at one depth: sun shelf, bench, swim-out, ledge. */
export interface Shelf {
  readonly kind: 'shelf'
  readonly path: Path
  readonly depthM: number
}

/** Treads across an axis, each from its distance s to the next one's, at its depth. */
export interface Steps {
  readonly kind: 'steps'
  readonly path: Path
  readonly axis: Axis
  readonly treads: readonly (readonly [sM: number, depthM: number])[]
}

/** Concentric treads, innermost radius first. */
export interface RoundSteps {
  readonly kind: 'roundSteps'
  readonly centre: Point
  readonly treads: readonly (readonly [radiusM: number, depthM: number])[]
}

/** A slope along an axis over its footprint, a beach entry: one depth at `from` and before, another at `to` and beyond. */
export interface Ramp {
  readonly kind: 'ramp'
  readonly path: Path
  readonly axis: Axis
  readonly fromDepthM: number
  readonly toDepthM: number
}

/** Stretches of the outline by the numbers of their segments, both included; past the last one comes the first. */
export interface Along {
  readonly fromSegment: number
  /** The line that closes an outline counts as its last segment. */
  readonly toSegment: number
}

/** A seat along the wall: the places of the basin within a width of some segments of the outline. */
export interface WallBench {
  readonly kind: 'bench'
  readonly along: Along
  readonly widthM: number
  readonly depthM: number
}

/** A seat with a footprint of its own. */
export interface FreeBench {
  readonly kind: 'bench'
  readonly path: Path
  readonly depthM: number
}

export type Bench = WallBench | FreeBench

export type Feature = Shelf | Bench | Ramp | Steps | RoundSteps

/** A number of a feature that can be typed, dragged and explained. */
export interface FeatureField<F> {
  readonly id: string
  readonly label: string
  readonly unit: 'm' | 'count'
  /** True where the number is a depth below the datum, to be shown from whatever depths are counted from. */
  readonly isDepth?: boolean
  /** Whether a feature has this number; without it every one of the kind has. */
  readonly belongsTo?: (feature: F) => boolean
  readonly get: (feature: F) => number
  readonly set: (feature: F, value: number) => F
}

/** A place in the plan by which a feature is taken hold of. */
export interface FeatureHandle<F> {
  readonly id: string
  readonly label: string
  readonly at: (feature: F) => Point
  readonly moveTo: (feature: F, to: Point) => F
}

/** Where a new feature is put: a point, the direction of its axis into the water, a size [m]. */
export interface Placement {
  readonly at: Point
  readonly toward: Point
  readonly sizeM: number
  /** The outline that it is put into, for what goes along a wall. */
  readonly outline?: Path
}

/** All that the program knows of one kind of feature. */
export interface FeatureKind<F> {
  readonly id: string
  readonly label: string
  /** What it is, in a sentence for whoever chooses among the kinds. */
  readonly help: string
  readonly fields: readonly FeatureField<F>[]
  readonly defaults: (at: Placement) => F
  /** Where it can be taken hold of in a basin of this outline. */
  readonly handles: (feature: F, outline: Path) => readonly FeatureHandle<F>[]
  /** What it comes down to in a basin of this outline. */
  readonly patchesOf: (feature: F, index: number, outline: Path) => Result<Patch[]>
}
