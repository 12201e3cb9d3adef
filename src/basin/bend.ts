import { curvatureAt, curvatureRise, headingAt, parallelAt, pointAt, turnBetween } from './along-cubic.ts'
import type { CubicCurve } from './curve.ts'
import type { Vec } from './fit-run.ts'
import { spanCuts } from './span.ts'
import type { Swept } from './strips-along.ts'
import { SMOOTH_RAD } from './tolerance.ts'
import type { Point, Segment } from './types.ts'

/** How tightly a stretch bends toward a width: its parallel curve runs forward, hardly does, or runs back. */
export const WIDE = 0
const TIGHT = 1
const TIGHTER = 2
type Bend = typeof WIDE | typeof TIGHT | typeof TIGHTER

/** Width over radius from which a stretch is tight. */
const HARDLY = 15 / 16

/** Looks along a stretch for where its bend changes. */
const LOOKS = 48

/** Tangents of a bend are at most this far apart [rad]. */
const CHORD_RAD = Math.PI / 16
const MOST_HALVINGS = 16

/** Stretches shorter than this part of the width are no stretches of their own beside a tight one, or beside any. */
const SHORT_BESIDE_TIGHT = 1e-4
const SHORT = 1e-7

/** How far over the wall a footprint reaches, as a share of the width: so that it crosses the wall and doesn't run along it. */
const OVER = 1 / 512

/** A stretch of a cubic from t0 to t1 that bends one way by at most a quarter turn, TIGHTER ones ever more or ever less. */
interface BentStretch {
  readonly t0: number
  readonly t1: number
  readonly bend: Bend
}

/** A cubic in stretches of one bend toward an offset (positive to the left). */
export function bendsOf(curve: CubicCurve, offset: number): BentStretch[] {
  const bendAt = (t: number): Bend => {
    const k = curvatureAt(curve, t) * offset
    return k < HARDLY ? WIDE : k < 1 ? TIGHT : TIGHTER
  }
  const stretches: BentStretch[] = []
  const cuts = spanCuts(curve, 0)
  for (let i = 1; i < cuts.length; i++) {
    const from = cuts[i - 1]!
    const end = cuts[i]!
    const step = (end - from) / LOOKS
    // Just inside the stretch: at its very ends a handle without length has no curvature.
    const looks = Array.from({ length: LOOKS + 1 }, (_, k) =>
      k === 0 ? from + step / 64 : k === LOOKS ? end - step / 64 : from + k * step,
    )
    const bounds = [from]
    const bends: Bend[] = [bendAt(looks[0]!)]
    for (let k = 1; k <= LOOKS; k++) {
      let lo = looks[k - 1]!
      // From one side of TIGHT to the other there are two changes.
      for (let before = bends[bends.length - 1]!, n = 0; before !== bendAt(looks[k]!) && n < 3; n++) {
        lo = halved(lo, looks[k]!, (t) => bendAt(t) === before)
        before = bendAt(lo)
        bounds.push(lo)
        bends.push(before)
      }
    }
    bounds.push(end)
    bends.forEach((bend, k) => {
      const t0 = bounds[k]!
      const t1 = bounds[k + 1]!
      const vertices = bend === TIGHTER ? [t0, ...extremesOf(curve, t0, t1), t1] : [t0, t1]
      for (let n = 1; n < vertices.length; n++) stretches.push({ t0: vertices[n - 1]!, t1: vertices[n]!, bend })
    })
  }
  return withoutShort(curve, Math.abs(offset), stretches)
}

/** The same, the shortest stretches joined to a neighbour: to a tight one if there is any. */
function withoutShort(curve: CubicCurve, widthM: number, stretches: readonly BentStretch[]): BentStretch[] {
  const out = [...stretches]
  for (let i = 0; out.length > 1 && i < out.length; ) {
    const { t0, t1, bend } = out[i]!
    const [ax, ay] = pointAt(curve, t0)
    const [bx, by] = pointAt(curve, t1)
    const length = Math.hypot(bx - ax, by - ay)
    const sides = [i - 1, i + 1].filter((k) => k >= 0 && k < out.length)
    const tight = sides.find((k) => out[k]!.bend !== WIDE)
    // Between two of the tightest the evolute has a cusp, which must not come to lie inside a stretch.
    const isShort =
      length < SHORT_BESIDE_TIGHT * widthM && !(bend === TIGHTER && sides.some((k) => out[k]!.bend === TIGHTER))
    const into = isShort && tight !== undefined ? tight : length < SHORT * widthM ? (tight ?? sides[0]!) : undefined
    if (into === undefined) {
      i++
      continue
    }
    const other = out[into]!
    out[into] = { t0: Math.min(t0, other.t0), t1: Math.max(t1, other.t1), bend: other.bend }
    out.splice(i, 1)
    i = Math.max(0, i - 1)
  }
  return out
}

/** The least t found above one where something holds at which it no longer does. */
function halved(from: number, to: number, holds: (t: number) => boolean): number {
  let lo = from
  let hi = to
  for (let n = 0; n < 50; n++) {
    const middle = (lo + hi) / 2
    if (!(middle > lo && middle < hi)) break
    if (holds(middle)) lo = middle
    else hi = middle
  }
  return hi
}

/** Where the curvature is greatest or least within a stretch. */
function extremesOf(curve: CubicCurve, t0: number, t1: number): number[] {
  const rises = (t: number): boolean => curvatureRise(curve, t) > 0
  const step = (t1 - t0) / LOOKS
  const found: number[] = []
  for (let k = 1; k < LOOKS - 1; k++) {
    const before = rises(t0 + k * step)
    if (before === rises(t0 + (k + 1) * step)) continue
    found.push(halved(t0 + k * step, t0 + (k + 1) * step, (t) => rises(t) === before))
  }
  return found
}

/**
 * The footprint of a stretch that bends about as tightly as the width or more so: from the wall, or a little over it, to the
 * parallel curve or, nearer, to the evolute, the line of its centres of curvature, both as chords. Those of the evolute lie
 * beyond it, but nowhere further from the wall than the width: only where the bench ends there do they show.
 * Accuracy: `offM`, the tolerance.
 */
export function bendStrip(
  curve: CubicCurve,
  t0: number,
  t1: number,
  offset: number,
  first: { readonly on: Point; readonly inner: Point },
  last: { readonly on: Point; readonly inner: Point },
  origin: Point,
  toleranceM: number,
): Swept {
  const absolute = ([x, y]: Vec): Point => [x + origin[0], y + origin[1]]
  /** How far normals lead, as a share of the offset: nowhere where a handle without length bends without a radius. */
  const shareAt = (t: number): number => {
    const bend = curvatureAt(curve, t) * offset
    return Number.isNaN(bend) ? 0 : bend > 1 ? 1 / bend : 1
  }
  const ts = chordsOf(curve, t0, t1)
  const centreAt = (t: number): Vec => parallelAt(curve, t, offset * shareAt(t))
  const centre0 = between(first.on, first.inner, shareAt(t0))
  const centre1 = between(last.on, last.inner, shareAt(t1))
  const segments: Segment[] = [{ to: centre1 }]
  const evolute = finer(ts, centreAt, toleranceM)
  for (let i = evolute.length - 2; i > 0; i--) segments.push({ to: absolute(centreAt(evolute[i]!)) })
  const headings = ts.map((t) => {
    const [hx, hy] = headingAt(curve, t)
    return Math.atan2(hy, hx)
  })
  const places = ts.map((t) => pointAt(curve, t))
  segments.push({ to: centre0 }, { to: first.on }, ...overTheWall(places, headings, offset, origin), { to: last.on })
  return { path: { start: last.on, segments }, offM: toleranceM }
}

/** Places along a line, halved until the chords between them are as near to it as asked for. */
function finer(ts: readonly number[], at: (t: number) => Vec, toleranceM: number): number[] {
  const out = [ts[0]!]
  const add = (a: number, pa: Vec, b: number, pb: Vec, depth: number): void => {
    const middle = (a + b) / 2
    const pm = at(middle)
    if (depth < MOST_HALVINGS && awayFrom(pm, pa, pb) > toleranceM) {
      add(a, pa, middle, pm, depth + 1)
      add(middle, pm, b, pb, depth + 1)
    } else out.push(b)
  }
  for (let i = 1; i < ts.length; i++) add(ts[i - 1]!, at(ts[i - 1]!), ts[i]!, at(ts[i]!), 0)
  return out
}

/** How far a place lies from the line through two others. */
function awayFrom([x, y]: Vec, [ax, ay]: Vec, [bx, by]: Vec): number {
  const length = Math.hypot(bx - ax, by - ay)
  return length > 0 ? Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length : Math.hypot(x - ax, y - ay)
}

function between(a: Point, b: Point, share: number): Point {
  return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]
}

/** Parameters from t0 to t1 between which the tangent turns little. */
function chordsOf(curve: CubicCurve, t0: number, t1: number): number[] {
  const ts = [t0]
  const add = (a: number, ha: Vec, b: number, hb: Vec, depth: number): void => {
    const turn = Math.abs(turnBetween(ha, hb))
    if (turn > CHORD_RAD && depth < MOST_HALVINGS) {
      const middle = (a + b) / 2
      const heading = headingAt(curve, middle)
      add(a, ha, middle, heading, depth + 1)
      add(middle, heading, b, hb, depth + 1)
    } else ts.push(b)
  }
  add(t0, headingAt(curve, t0), t1, headingAt(curve, t1), 0)
  return ts
}

/**
 * A line that runs along the dry side of places of a wall that bends toward the offset: on tangents moved off the wall, from
 * the first place to the last.
 */
function overTheWall(places: readonly Vec[], headings: readonly number[], offset: number, [ox, oy]: Point): Segment[] {
  const over = OVER * offset
  const beside = places.map(([x, y], i): Vec => [x + over * Math.sin(headings[i]!), y - over * Math.cos(headings[i]!)])
  const line: Vec[] = [beside[0]!]
  for (let i = 1; i < places.length; i++) {
    const [ax, ay] = beside[i - 1]!
    const [bx, by] = beside[i]!
    const [ha, hb] = [headings[i - 1]!, headings[i]!]
    const turn = Math.sin(hb - ha)
    // Where the two tangents meet; hardly turned ones are one.
    if (Math.abs(turn) > SMOOTH_RAD) {
      const along = ((bx - ax) * Math.sin(hb) - (by - ay) * Math.cos(hb)) / turn
      line.push([ax + along * Math.cos(ha), ay + along * Math.sin(ha)])
    }
    line.push([bx, by])
  }
  return line.map(([x, y]) => ({ to: [x + ox, y + oy] }))
}
