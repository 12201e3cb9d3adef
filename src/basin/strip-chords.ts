import { type CubicCurve, evaluate, newJet, secondX, secondY } from './curve.ts'
import { chordsFor } from './path-draw.ts'
import type { Shore } from './shores.ts'

const jet = newJet()
const PANELS = 8
const density = new Float64Array(PANELS + 1)
const rising = new Float64Array(PANELS + 1)

/**
 * Parameters from t0 to t1, both included, between which chords of a stretch of shore stay within a height of it [m], and so
 * do those of its parallel `widthM` out in the water.
 * Method: lines and arcs in even steps; on a cubic steps are as long as its bend allows, √κ/8h of them to each unit of
 *   length, and each is held to the exact bound of a cubic over its chord. Even steps stand in where they are no more.
 */
export function chordStops({ curve, side }: Shore, t0: number, t1: number, chordM: number, widthM: number): number[] {
  if (curve.kind === 'cubic') return alongCubic(curve, side, t0, t1, chordM, widthM)
  if (curve.kind === 'line' || side * curve.radius > 0) return even(t0, t1, chordsFor(curve, t0, t1, chordM))
  // On the outer side the parallel is the larger circle, however small the shore's own may be.
  return even(t0, t1, chordsFor({ ...curve, radius: Math.abs(curve.radius) + widthM }, t0, t1, chordM))
}

function even(t0: number, t1: number, count: number): number[] {
  const stops = [t0]
  for (let i = 1; i < count; i++) stops.push(t0 + ((t1 - t0) * i) / count)
  stops.push(t1)
  return stops
}

/** How often the count of steps is raised before even steps are taken. */
const TRIES = 4
const MOST_STEPS = 4096

function alongCubic(c: CubicCurve, side: number, t0: number, t1: number, chordM: number, widthM: number): number[] {
  const step = (t1 - t0) / PANELS
  for (let i = 0; i <= PANELS; i++) {
    density[i] = Math.sqrt(bendAt(c, side, t0 + step * i, widthM) / (8 * chordM))
  }
  for (let i = 1; i <= PANELS; i++) rising[i] = rising[i - 1]! + (step * (density[i - 1]! + density[i]!)) / 2
  const whole = rising[PANELS]!
  const most = chordsFor(c, t0, t1, chordM)
  if (!(whole < 4 * most)) return even(t0, t1, most)
  const least = Math.max(1, Math.ceil(whole))
  for (let count = least; count < least + TRIES; count++) {
    const stops = [t0]
    let i = 1
    for (let k = 1; k < count; k++) {
      const want = (whole * k) / count
      while (i < PANELS && rising[i]! < want) i++
      stops.push(t0 + step * (i - 1 + (want - rising[i - 1]!) / (rising[i]! - rising[i - 1]!)))
    }
    stops.push(t1)
    if (isWithin(c, side, stops, chordM, widthM)) return stops
  }
  // Even steps hold the shore itself from the first; a parallel about a sharp bend may ask for more.
  for (let count = Math.max(most, least + TRIES); ; count *= 2) {
    const stops = even(t0, t1, count)
    if (count >= MOST_STEPS || isWithin(c, side, stops, chordM, widthM)) return stops
  }
}

/** The part of P″ square to the curve, |P′ × P″| / |P′|, times how much longer a parallel on the outer side is, 1 + w κ. */
function bendAt(c: CubicCurve, side: number, t: number, widthM: number): number {
  const { dx, dy } = evaluate(c, t, jet)
  const speed2 = dx * dx + dy * dy
  if (speed2 === 0) return 0
  const cross = dx * secondY(c, t) - dy * secondX(c, t)
  const across = Math.abs(cross) / Math.sqrt(speed2)
  return side * cross < 0 ? across * (1 + (widthM * across) / speed2) : across
}

/**
 * True where all chords stay within a height. Over its chord from a to b a cubic is h² u (1 − u) |s_a (2 − u) + s_b (1 + u)| / 6
 * high at u, s being its P″ square to the chord, so at most h² max(|2 s_a + s_b|, |s_a + 2 s_b|) / 24; on the outer side of
 * the bend its parallel is higher by at most w (1 − cos α), α the greater angle between the chord and the curve at its ends.
 */
function isWithin(c: CubicCurve, side: number, stops: readonly number[], chordM: number, widthM: number): boolean {
  evaluate(c, stops[0]!, jet)
  let { x, y, dx, dy } = jet
  for (let k = 1; k < stops.length; k++) {
    const a = stops[k - 1]!
    const b = stops[k]!
    evaluate(c, b, jet)
    const ex = jet.x - x
    const ey = jet.y - y
    const length = Math.sqrt(ex * ex + ey * ey)
    const first = ex * (c.y0 - 2 * c.ay + c.by) - ey * (c.x0 - 2 * c.ax + c.bx)
    const last = ex * (c.ay - 2 * c.by + c.y1) - ey * (c.ax - 2 * c.bx + c.x1)
    const sa = 6 * ((1 - a) * first + a * last)
    const sb = 6 * ((1 - b) * first + b * last)
    let height = ((b - a) ** 2 * Math.max(Math.abs(2 * sa + sb), Math.abs(sa + 2 * sb))) / (24 * length)
    if (side * (sa + sb) < 0) height += widthM * (1 - Math.min(cosine(ex, ey, dx, dy), cosine(ex, ey, jet.dx, jet.dy)))
    if (!(height <= chordM)) return false
    x = jet.x
    y = jet.y
    dx = jet.dx
    dy = jet.dy
  }
  return true
}

/** Of the angle between two vectors; of none where one has no length, as at a handle that lies on its point. */
function cosine(ax: number, ay: number, bx: number, by: number): number {
  const lengths = Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by))
  return lengths > 0 ? (ax * bx + ay * by) / lengths : 1
}
