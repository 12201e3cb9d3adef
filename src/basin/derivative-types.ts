/**
 * What a derivative is by: each kind is moved, typed or dragged in a way of its own. A station is any distance along an axis,
 * of a profile's break or of a tread; an axis one of its ends, or a centre.
 */
export type DerivativeKind =
  | 'node'
  | 'handle'
  | 'bulge'
  | 'depth'
  | 'station'
  | 'sounding'
  | 'axis'
  | 'radius'
  | 'width'
  | 'run'
  | 'level'

/**
 * First derivative of the volume by one number or place of a body, at the level it was asked for: in m³ for each metre
 * (bulge and run, which have no unit: m³ for each 1). A place's is [∂V/∂x, ∂V/∂y].
 */
export interface VolumeDerivative {
  /** Where it stands in the body, e.g. `outline.segments[2].to`, `floor.stations[1][1]`, `features[0].axis.to`, `levelM`. */
  readonly path: string
  readonly kind: DerivativeKind
  readonly value: number | readonly [dx: number, dy: number]
}

/** The standard deviation of a volume from measuring, and what makes it [m³]. */
export interface Uncertainty {
  readonly sigmaM3: number
  /** Their squares sum to the square of the whole. */
  readonly contributions: readonly {
    readonly what: 'nodes' | 'depths' | 'tape' | 'waterline'
    readonly sigmaM3: number
  }[]
  /** The measurements that matter most, greatest first: those to take again. */
  readonly largest: readonly { readonly path: string; readonly kind: DerivativeKind; readonly sigmaM3: number }[]
}
