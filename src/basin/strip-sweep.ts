import type { Fan, Fans } from './cove-fan.ts'
import { evaluate, newJet } from './curve.ts'

/** Rays that turn by more than this from the middle one bound nothing [rad]. */
const WIDEST_RAD = 1
/** An edge this many grains beside all rays can't touch one. */
const BESIDE_GRAINS = 64

/**
 * The water that the rays of a fan sweep between two t, as what bounds it: two lines along its outermost directions, and two
 * square to the middle one, each by a normal and how far along it the water goes.
 */
export interface Sweep {
  /** False where the rays turn too far for bounds of any use. */
  isBounded: boolean
  readonly nx: Float64Array
  readonly ny: Float64Array
  readonly most: Float64Array
}

const SIDES = 4

export function newSweep(): Sweep {
  return {
    isBounded: false,
    nx: new Float64Array(SIDES),
    ny: new Float64Array(SIDES),
    most: new Float64Array(SIDES),
  }
}

const jet = newJet()
/** Points whose hull holds the shore between the two t. */
const hullX = new Float64Array(4)
const hullY = new Float64Array(4)
/** Vectors whose cone holds the directions of the shore there. */
const wayX = new Float64Array(3)
const wayY = new Float64Array(3)

/**
 * Bounds the water swept by the rays of a fan from ta to tb, up to a width [m].
 * Method: a curve lies in the hull of its control points and its direction in the cone of those of its derivative, an arc in
 *   the triangle of its chord and tangents.
 */
export function sweepOf(
  fans: Fans,
  fan: Fan,
  ta: number,
  tb: number,
  widthM: number,
  grainM: number,
  out: Sweep,
): void {
  out.isBounded = false
  let points = 1
  // Angles of the outermost rays, from the middle one.
  let least = 0
  let most = 0
  let mx = 0
  let my = 0
  if (fan.shore < 0) {
    most = (tb - ta) / 2
    least = -most
    mx = Math.cos(fan.direction - (ta + tb) / 2)
    my = Math.sin(fan.direction - (ta + tb) / 2)
    hullX[0] = fan.x
    hullY[0] = fan.y
  } else {
    const { curve, side } = fans.shores[fan.shore]!
    const h = tb - ta
    evaluate(curve, ta, jet)
    hullX[0] = jet.x
    hullY[0] = jet.y
    wayX[0] = jet.dx
    wayY[0] = jet.dy
    evaluate(curve, tb, jet)
    hullX[1] = jet.x
    hullY[1] = jet.y
    wayX[1] = jet.dx
    wayY[1] = jet.dy
    points = 2
    let ways = 2
    if (curve.kind === 'arc') {
      const turn = curve.turn * h
      if (!(Math.abs(turn) < 2 * WIDEST_RAD)) return
      // Where the tangents at both ends meet.
      const reach = (h * Math.tan(turn / 2)) / turn
      hullX[2] = hullX[0]! + reach * wayX[0]!
      hullY[2] = hullY[0]! + reach * wayY[0]!
      points = 3
    } else if (curve.kind === 'cubic') {
      hullX[2] = hullX[0]! + (h * wayX[0]!) / 3
      hullY[2] = hullY[0]! + (h * wayY[0]!) / 3
      hullX[3] = hullX[1]! - (h * wayX[1]!) / 3
      hullY[3] = hullY[1]! - (h * wayY[1]!) / 3
      points = 4
      wayX[2] = hullX[3]! - hullX[2]!
      wayY[2] = hullY[3]! - hullY[2]!
      ways = 3
    }
    evaluate(curve, (ta + tb) / 2, jet)
    const speed = Math.sqrt(jet.dx * jet.dx + jet.dy * jet.dy)
    if (!(speed > 0)) return
    const ux = jet.dx / speed
    const uy = jet.dy / speed
    for (let i = 0; i < ways; i++) {
      const turn = Math.atan2(ux * wayY[i]! - uy * wayX[i]!, ux * wayX[i]! + uy * wayY[i]!)
      least = Math.min(least, turn)
      most = Math.max(most, turn)
    }
    mx = -side * uy
    my = side * ux
  }
  if (!(most < WIDEST_RAD && least > -WIDEST_RAD)) return
  out.isBounded = true
  layBound(out, 0, Math.cos(most), Math.sin(most), mx, my, points, grainM)
  // The other way round: what lies beyond the outermost ray on that side.
  layBound(out, 1, -Math.cos(least), -Math.sin(least), mx, my, points, grainM)
  out.nx[2] = -mx
  out.ny[2] = -my
  out.nx[3] = mx
  out.ny[3] = my
  out.most[2] = farthest(-mx, -my, points) + BESIDE_GRAINS * grainM
  out.most[3] = farthest(mx, my, points) + widthM + BESIDE_GRAINS * grainM
}

/** A bound to the left of a direction, given by its cosine and sine from the middle ray. */
function layBound(out: Sweep, i: number, c: number, s: number, mx: number, my: number, points: number, grainM: number) {
  out.nx[i] = -(my * c + mx * s)
  out.ny[i] = mx * c - my * s
  out.most[i] = farthest(out.nx[i]!, out.ny[i]!, points) + BESIDE_GRAINS * grainM
}

function farthest(nx: number, ny: number, points: number): number {
  let most = -Infinity
  for (let i = 0; i < points; i++) most = Math.max(most, hullX[i]! * nx + hullY[i]! * ny)
  return most
}

/** False where no ray of a sweep can touch what lies within `rise` of the line between two points. */
export function canTouch(sweep: Sweep, x0: number, y0: number, x1: number, y1: number, rise: number): boolean {
  if (!sweep.isBounded) return true
  const { nx, ny, most } = sweep
  for (let i = 0; i < SIDES; i++) {
    const limit = most[i]! + rise
    if (x0 * nx[i]! + y0 * ny[i]! > limit && x1 * nx[i]! + y1 * ny[i]! > limit) return false
  }
  return true
}

/** A stretch of a fan with the edges that its rays can touch, by their places in the plan's list. */
export interface Swath {
  readonly t0: number
  readonly t1: number
  readonly near: readonly number[]
  /** How often it may be halved without getting rid of edges. */
  readonly patience: number
  first: Swath | undefined
  second: Swath | undefined
}

/** What an edge takes up: its ends and how far it may bend away from its chord [m]. */
export interface Placed {
  readonly ends: Float64Array
  readonly rises: Float64Array
}

/** Edges that are looked at one by one. */
const FEW = 8
const PATIENCE = 3
/** Halving stops at this share of a fan: what is narrower is rounding. */
const NARROW = 2 ** -30

const sweep = newSweep()

export function wholeSwath(fan: Fan, count: number): Swath {
  return {
    t0: fan.t0,
    t1: fan.t1,
    near: Array.from({ length: count }, (_, i) => i),
    patience: PATIENCE,
    first: undefined,
    second: undefined,
  }
}

/** The edges that the ray at t can touch, in order, and a few more. Halves of a swath are made where they are asked for. */
export function nearAt(
  fans: Fans,
  fan: Fan,
  whole: Swath,
  placed: Placed,
  widthM: number,
  grainM: number,
  t: number,
): readonly number[] {
  let swath = whole
  const least = NARROW * (whole.t1 - whole.t0)
  while (swath.near.length > FEW && swath.patience > 0 && swath.t1 - swath.t0 > least) {
    const middle = (swath.t0 + swath.t1) / 2
    if (t < middle) {
      swath.first ??= halfOf(fans, fan, swath, swath.t0, middle, placed, widthM, grainM)
      swath = swath.first
    } else {
      swath.second ??= halfOf(fans, fan, swath, middle, swath.t1, placed, widthM, grainM)
      swath = swath.second
    }
  }
  return swath.near
}

function halfOf(
  fans: Fans,
  fan: Fan,
  { near, patience }: Swath,
  t0: number,
  t1: number,
  { ends, rises }: Placed,
  widthM: number,
  grainM: number,
): Swath {
  sweepOf(fans, fan, t0, t1, widthM, grainM, sweep)
  const left: number[] = []
  for (const i of near)
    if (canTouch(sweep, ends[4 * i]!, ends[4 * i + 1]!, ends[4 * i + 2]!, ends[4 * i + 3]!, rises[i]!)) left.push(i)
  const isLess = left.length < 0.9 * near.length
  return { t0, t1, near: left, patience: isLess ? PATIENCE : patience - 1, first: undefined, second: undefined }
}
