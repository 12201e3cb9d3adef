import { headingAt, parallelAt, pointAt } from './along-cubic.ts'
import { bendStrip, bendsOf, WIDE } from './bend.ts'
import { type CubicCurve, evaluate, newJet } from './curve.ts'
import { type CurveFit, fitCurve } from './fit-curve.ts'
import type { Vec } from './fit-run.ts'
import type { Swept } from './strips-along.ts'
import { OFFSET_CHORD, OFFSET_FIT } from './tolerance.ts'
import type { Point, Segment } from './types.ts'
import type { Leg } from './wall-legs.ts'

const jet = newJet()

/**
 * What the normals of a cubic segment sweep over a width, as footprints. Along it runs the cubic itself; the far side is
 * the parallel curve, fitted by cubics. Where the segment bends about as tightly as the width, chords stand for it; where it
 * bends more tightly, the normals end at its centre of curvature, for beyond it another place of the wall is nearer.
 * Accuracy: `offM` of each footprint.
 */
export function cubicStrips(
  leg: Leg,
  inner0: Point,
  inner1: Point,
  side: 1 | -1,
  widthM: number,
  origin: Point,
  offM: number,
): Swept[] {
  const curve = leg.curve as CubicCurve
  const sizeM =
    Math.hypot(curve.ax - curve.x0, curve.ay - curve.y0) +
    Math.hypot(curve.bx - curve.ax, curve.by - curve.ay) +
    Math.hypot(curve.x1 - curve.bx, curve.y1 - curve.by)
  const absolute = ([x, y]: Vec): Point => [x + origin[0], y + origin[1]]
  const ends = (t: number): { on: Point; inner: Point } => ({
    on: t === 0 ? leg.from : t === 1 ? leg.segment.to : absolute(pointAt(curve, t)),
    inner: t === 0 ? inner0 : t === 1 ? inner1 : absolute(parallelAt(curve, t, side * widthM)),
  })
  return bendsOf(curve, side * widthM).flatMap(({ t0, t1, bend }): Swept[] => {
    const a = ends(t0)
    const b = ends(t1)
    if (bend !== WIDE) {
      const strip = bendStrip(curve, t0, t1, side * widthM, a, b, origin, OFFSET_CHORD * (sizeM + widthM))
      return [{ path: strip.path, offM: offM + strip.offM }]
    }
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
    return [{ path: { start: a.on, segments }, offM: offM + back.offM }]
  })
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
