/** Where the solid is seen from: turned about the vertical, tilted above the horizon, drawn nearer, moved aside. */
export interface View {
  /** Direction from which it is seen, from the plan's −y axis counter-clockwise [rad]. */
  readonly azimuth: number
  /** Height of the eye above the horizon [rad]. */
  readonly tilt: number
  /** 1 shows the whole basin. */
  readonly zoom: number
  /** How far the middle of the picture is moved from the middle of the basin [m]. */
  readonly panX: number
  readonly panY: number
}

export type Vector = readonly [x: number, y: number, z: number]

/** Right, up and toward the eye. */
export interface Frame {
  readonly right: Vector
  readonly up: Vector
  readonly back: Vector
}

export interface Fit {
  readonly target: Vector
  /** Distance from target to eye at zoom 1 [m]. */
  readonly distanceM: number
}

const degrees = Math.PI / 180
const TILT_MIN = 20 * degrees
const TILT_MAX = 90 * degrees
const ZOOM_MIN = 0.6
const ZOOM_MAX = 8

/** A long lens: near and far ends keep nearly one scale, as in an axonometric drawing. */
export const LENS_DEGREES = 18

export const HOME: View = { azimuth: -18 * degrees, tilt: 46 * degrees, zoom: 1, panX: 0, panY: 0 }

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value))

/** Turned and tilted, within the table's limits. */
export function turned(view: View, byAzimuth: number, byTilt: number): View {
  const turn = 2 * Math.PI
  const azimuth = (((view.azimuth + byAzimuth + Math.PI) % turn) + turn) % turn
  return { ...view, azimuth: azimuth - Math.PI, tilt: clamp(view.tilt + byTilt, TILT_MIN, TILT_MAX) }
}

export function zoomed(view: View, factor: number): View {
  return { ...view, zoom: clamp(view.zoom * factor, ZOOM_MIN, ZOOM_MAX) }
}

/** Moved aside over the ground, never further than `reachM` from the middle of the basin. */
export function panned(view: View, dx: number, dy: number, reachM: number): View {
  const panX = view.panX + dx
  const panY = view.panY + dy
  const far = Math.hypot(panX, panY)
  const keep = far > reachM ? reachM / far : 1
  return { ...view, panX: panX * keep, panY: panY * keep }
}

export function frameOf(view: Pick<View, 'azimuth' | 'tilt'>): Frame {
  const [sa, ca, st, ct] = [
    Math.sin(view.azimuth),
    Math.cos(view.azimuth),
    Math.sin(view.tilt),
    Math.cos(view.tilt),
  ] as const
  return { right: [ca, sa, 0], up: [-sa * st, ca * st, ct], back: [sa * ct, -ca * ct, st] }
}

const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/**
 * The target and distance at which points just fill a picture of the given aspect.
 * For an eye at distance D a point (x, y, w) of the view's frame is inside when |x| ≤ (D − w) tan of half the lens;
 * the middle is moved until the margins on both sides agree.
 */
export function fitTo(points: readonly Vector[], view: Pick<View, 'azimuth' | 'tilt'>, aspect: number): Fit {
  const { right, up, back } = frameOf(view)
  const tanY = Math.tan((LENS_DEGREES / 2) * degrees)
  const tanX = tanY * aspect
  const seen = points.map((point) => [dot(point, right), dot(point, up), dot(point, back)] as const)
  let [midX, midY] = [0, 0]
  let distance = 1
  // Each round balances the margins for the distance found before; three leave less than a pixel.
  for (let round = 0; round < 4; round++) {
    let [left, rightmost, low, high] = [Infinity, -Infinity, Infinity, -Infinity]
    let needed = 0
    for (const [x, y, w] of seen)
      needed = Math.max(needed, w + Math.abs(x - midX) / tanX, w + Math.abs(y - midY) / tanY)
    distance = needed
    for (const [x, y, w] of seen) {
      const reach = Math.max(distance - w, 1e-6)
      left = Math.min(left, (x - midX) / reach)
      rightmost = Math.max(rightmost, (x - midX) / reach)
      low = Math.min(low, (y - midY) / reach)
      high = Math.max(high, (y - midY) / reach)
    }
    if (round === 3 || !Number.isFinite(left)) break
    midX += ((left + rightmost) / 2) * distance
    midY += ((low + high) / 2) * distance
  }
  const target: Vector = [
    midX * right[0] + midY * up[0],
    midX * right[1] + midY * up[1],
    midX * right[2] + midY * up[2],
  ]
  return { target, distanceM: Math.max(distance, 0.1) }
}

/** Where the eye stands and what it looks at. */
export function eyeOf(view: View, fit: Fit): { readonly eye: Vector; readonly target: Vector; readonly up: Vector } {
  const { back, up } = frameOf(view)
  const far = fit.distanceM / view.zoom
  const target: Vector = [fit.target[0] + view.panX, fit.target[1] + view.panY, fit.target[2]]
  return {
    eye: [target[0] + back[0] * far, target[1] + back[1] * far, target[2] + back[2] * far],
    target,
    up,
  }
}
