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

export type Feature = Shelf | Steps | RoundSteps

/** A number of a feature that can be typed, dragged and explained. */
export interface FeatureField<F> {
  readonly id: string
  readonly label: string
  readonly unit: 'm' | 'count'
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
}

/** All that the program knows of one kind of feature. */
export interface FeatureKind<F> {
  readonly id: string
  readonly label: string
  readonly fields: readonly FeatureField<F>[]
  readonly defaults: (at: Placement) => F
  readonly handles: (feature: F) => readonly FeatureHandle<F>[]
  readonly patchesOf: (feature: F, index: number) => Result<Patch[]>
}
