import { arcCentre, arcCurve, type CubicCurve, evaluate, newJet, secondX, secondY } from './curve.ts'
import { type CurveFit, fitCurve } from './fit-curve.ts'
import type { Vec } from './fit-run.ts'
import { spanCuts } from './span.ts'
import type { Swept } from './strips-along.ts'
import { OFFSET_ARC_FIT, OFFSET_FIT } from './tolerance.ts'
import type { Path, Point, Segment } from './types.ts'
import type { Leg } from './wall-legs.ts'

const jet = newJet()
const SAMPLES = 14

/**
 * What the normals of a cubic segment sweep over a width, as footprints. Along it runs the cubic itself; the far side is
 * the parallel curve, fitted by cubics, and where the segment bends more tightly than the width lets it, the segment
 * stands for arcs that are near it, for there the parallel curve turns back on itself.
 * Accuracy: `offM` of each footprint, from the fit at 14 places of each piece and half as much again.
 */
export function cubicStrips(
  leg: Leg,
  inner0: Point,
  inner1: Point,
  side: 1 | -1,
  widthM: number,
  origin: Point,
  offM: number,
  grainM: number,
): Swept[] {
  const curve = leg.curve as CubicCurve
  const sizeM =
    Math.hypot(curve.ax - curve.x0, curve.ay - curve.y0) +
    Math.hypot(curve.bx - curve.ax, curve.by - curve.ay) +
    Math.hypot(curve.x1 - curve.bx, curve.y1 - curve.by)
  // No nearer than the division tells lines apart.
  const arcFitM = Math.max(OFFSET_ARC_FIT * sizeM, grainM)
  const strips: Swept[] = []
  const absolute = ([x, y]: Vec): Point => [x + origin[0], y + origin[1]]
  const ends = (t: number): { on: Point; inner: Point } => ({
    on: t === 0 ? leg.from : t === 1 ? leg.segment.to : absolute(pointAt(curve, t)),
    inner: t === 0 ? inner0 : t === 1 ? inner1 : absolute(parallelAt(curve, t, side * widthM)),
  })
  for (const { t0, t1, isTight } of piecesOf(curve, side * widthM)) {
    const a = ends(t0)
    const b = ends(t1)
    if (isTight) strips.push(...arcStrips(curve, t0, t1, side * widthM, arcFitM, origin))
    else {
      const back = parallelFit(curve, t0, t1, side * widthM, OFFSET_FIT * (sizeM + widthM))
      const segments: Segment[] = [
        cutOf(leg, curve, t0, t1, b.on, origin),
        { to: b.inner },
        ...back.pieces.map(({ to, c1, c2 }, i) => ({
          to: i === back.pieces.length - 1 ? a.inner : absolute(to),
          c1: absolute(c1),
          c2: absolute(c2),
        })),
        { to: a.on },
      ]
      strips.push({ path: { start: a.on, segments }, offM: offM + back.offM })
    }
  }
  return strips
}

/** Stretches that bend one way by at most a quarter turn, told apart by whether the parallel curve still runs forward. */
function piecesOf(curve: CubicCurve, offset: number): { t0: number; t1: number; isTight: boolean }[] {
  const pieces: { t0: number; t1: number; isTight: boolean }[] = []
  const isTight = (t: number): boolean => !(1 - curvatureAt(curve, t) * offset > 1 / 16)
  const cuts = spanCuts(curve, 0)
  for (let i = 1; i < cuts.length; i++) {
    let start = cuts[i - 1]!
    const end = cuts[i]!
    const step = (end - start) / 48
    // Just inside the stretch: at its very ends a handle without length has no curvature.
    let before = isTight(start + step / 64)
    for (let k = 1; k <= 48; k++) {
      const t = k === 48 ? end - step / 64 : cuts[i - 1]! + k * step
      const now = isTight(t)
      if (now === before) continue
      let lo = Math.max(start, t - step)
      let hi = t
      for (let n = 0; n < 40; n++) {
        const middle = (lo + hi) / 2
        if (isTight(middle) === before) lo = middle
        else hi = middle
      }
      pieces.push({ t0: start, t1: hi, isTight: before })
      start = hi
      before = now
    }
    pieces.push({ t0: start, t1: end, isTight: before })
  }
  return pieces
}

function pointAt(curve: CubicCurve, t: number): Vec {
  evaluate(curve, t, jet)
  return [jet.x, jet.y]
}

/** Direction of travel. */
function headingAt(curve: CubicCurve, t: number): Vec {
  evaluate(curve, t, jet)
  let length = Math.hypot(jet.dx, jet.dy)
  if (length === 0) {
    evaluate(curve, t < 0.5 ? 1e-6 : 1 - 1e-6, jet)
    length = Math.hypot(jet.dx, jet.dy) || 1
  }
  return [jet.dx / length, jet.dy / length]
}

function parallelAt(curve: CubicCurve, t: number, offset: number): Vec {
  const [hx, hy] = headingAt(curve, t)
  const [x, y] = pointAt(curve, t)
  return [x - offset * hy, y + offset * hx]
}

/** Curvature, positive where the curve bends to the left [1/m]. */
function curvatureAt(c: CubicCurve, t: number): number {
  evaluate(c, t, jet)
  return (jet.dx * secondY(c, t) - jet.dy * secondX(c, t)) / Math.hypot(jet.dx, jet.dy) ** 3
}

/** The parallel curve from t1 back to t0. */
function parallelFit(curve: CubicCurve, t0: number, t1: number, offset: number, toleranceM: number): CurveFit {
  const headingBack = (t: number): Vec => {
    const [hx, hy] = headingAt(curve, t)
    return [-hx, -hy]
  }
  return fitCurve({ pointAt: (t) => parallelAt(curve, t, offset), headingAt: headingBack }, t1, t0, toleranceM)
}

/** The part of a cubic segment from t0 to t1 as a segment of its own. */
function cutOf(leg: Leg, c: CubicCurve, t0: number, t1: number, to: Point, [ox, oy]: Point): Segment {
  if (t0 === 0 && t1 === 1) return leg.segment
  const third = (t1 - t0) / 3
  evaluate(c, t0, jet)
  const c1: Point = [jet.x + third * jet.dx + ox, jet.y + third * jet.dy + oy]
  evaluate(c, t1, jet)
  return { to, c1, c2: [jet.x - third * jet.dx + ox, jet.y - third * jet.dy + oy] }
}

/** A tight stretch by pairs of arcs that share a tangent, each with its sector up to the width or its centre. */
function arcStrips(
  curve: CubicCurve,
  t0: number,
  t1: number,
  offset: number,
  toleranceM: number,
  origin: Point,
  depth = 0,
): Swept[] {
  const a = pointAt(curve, t0)
  const b = pointAt(curve, t1)
  const joint = jointOf(a, headingAt(curve, t0), b, headingAt(curve, t1))
  const arcs = [arcFrom(a, headingAt(curve, t0), joint), arcInto(joint, b, headingAt(curve, t1))]
  let worst = 0
  for (let i = 1; i < SAMPLES; i++) {
    const [x, y] = pointAt(curve, t0 + ((t1 - t0) * i) / SAMPLES)
    worst = Math.max(worst, Math.min(...arcs.map(([from, to, bulge]) => distanceToArc(from, to, bulge, x, y))))
  }
  if (1.5 * worst > toleranceM && depth < 12) {
    const middle = (t0 + t1) / 2
    return [
      ...arcStrips(curve, t0, middle, offset, toleranceM, origin, depth + 1),
      ...arcStrips(curve, middle, t1, offset, toleranceM, origin, depth + 1),
    ]
  }
  const absolute = ([x, y]: Vec): Point => [x + origin[0], y + origin[1]]
  return arcs.flatMap(([from, to, bulge]): Swept[] => {
    const arc = arcCurve(...from, ...to, bulge)
    if (arc.kind === 'line') return []
    const beside = (p: Vec, heading: number): Vec => [
      p[0] - offset * Math.sin(heading),
      p[1] + offset * Math.cos(heading),
    ]
    const inner0 = absolute(beside(from, arc.heading))
    const inner1 = absolute(beside(to, arc.heading + arc.turn))
    const start = absolute(from)
    const end: Segment = { to: absolute(to), bulge }
    const offM = 1.5 * worst
    const strip = (first: Point, ...segments: Segment[]): Swept => ({
      path: { start: first, segments } as Path,
      offM,
    })
    if (arc.radius / (arc.radius - offset) > 0)
      return [strip(start, end, { to: inner1 }, { to: inner0, bulge: -bulge }, { to: start })]
    // Beyond the centre another place of the wall is nearer.
    return [strip(start, end, { to: absolute(arcCentre(arc) as Vec) }, { to: start })]
  })
}

type Arc = [from: Vec, to: Vec, bulge: number]

/** Where two arcs that start and end along given directions meet with one tangent, their end distances being equal. */
function jointOf(a: Vec, ha: Vec, b: Vec, hb: Vec): Vec {
  const vx = b[0] - a[0]
  const vy = b[1] - a[1]
  const sx = ha[0] + hb[0]
  const sy = ha[1] + hb[1]
  const vs = vx * sx + vy * sy
  const denominator = 2 * (1 - (ha[0] * hb[0] + ha[1] * hb[1]))
  const vv = vx * vx + vy * vy
  const d =
    denominator === 0
      ? vv / (4 * (vx * hb[0] + vy * hb[1]))
      : (-vs + Math.sqrt(vs * vs + denominator * vv)) / denominator
  return [(a[0] + b[0] + d * (ha[0] - hb[0])) / 2, (a[1] + b[1] + d * (ha[1] - hb[1])) / 2]
}

function arcFrom(from: Vec, heading: Vec, to: Vec): Arc {
  const x = to[0] - from[0]
  const y = to[1] - from[1]
  return [from, to, Math.tan(Math.atan2(heading[0] * y - heading[1] * x, heading[0] * x + heading[1] * y) / 2)]
}

function arcInto(from: Vec, to: Vec, heading: Vec): Arc {
  const x = to[0] - from[0]
  const y = to[1] - from[1]
  return [from, to, Math.tan(Math.atan2(x * heading[1] - y * heading[0], x * heading[0] + y * heading[1]) / 2)]
}

function distanceToArc(from: Vec, to: Vec, bulge: number, x: number, y: number): number {
  const arc = arcCurve(...from, ...to, bulge)
  if (arc.kind === 'line') return Math.hypot(x - from[0], y - from[1])
  const [cx, cy] = arcCentre(arc)
  return Math.abs(Math.hypot(x - cx, y - cy) - Math.abs(arc.radius))
}
