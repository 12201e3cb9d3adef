import { type CubicCurve, evaluate, newJet } from './curve.ts'
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
  let count = chordsFor(curve, t0, t1, chordM)
  if (curve.kind === 'arc' && side * curve.radius < 0)
    count = Math.ceil(count * Math.sqrt(1 + widthM / Math.abs(curve.radius)))
  return even(t0, t1, count)
}

function even(t0: number, t1: number, count: number): number[] {
  const stops = [t0]
  for (let i = 1; i < count; i++) stops.push(t0 + ((t1 - t0) * i) / count)
  stops.push(t1)
  return stops
}

/** How often the count of steps is raised before even steps are taken. */
const TRIES = 4

function alongCubic(c: CubicCurve, side: number, t0: number, t1: number, chordM: number, widthM: number): number[] {
  const step = (t1 - t0) / PANELS
  for (let i = 0; i <= PANELS; i++) {
    bendAt(c, side, t0 + step * i, widthM)
    density[i] = Math.sqrt((bend.across * bend.parallel) / (8 * chordM))
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
  return even(t0, t1, Math.max(most, least + TRIES))
}

/** The part of P″ square to the curve, |P′ × P″| / |P′|, and how much longer a parallel out in the water is, 1 + w κ, if it is. */
const bend = { across: 0, parallel: 1 }

function bendAt(c: CubicCurve, side: number, t: number, widthM: number): void {
  evaluate(c, t, jet)
  const { dx, dy } = jet
  const speed = Math.sqrt(dx * dx + dy * dy)
  const u = 6 * (1 - t)
  const v = 6 * t
  const ddx = u * (c.x0 - 2 * c.ax + c.bx) + v * (c.ax - 2 * c.bx + c.x1)
  const ddy = u * (c.y0 - 2 * c.ay + c.by) + v * (c.ay - 2 * c.by + c.y1)
  const cross = dx * ddy - dy * ddx
  bend.across = speed > 0 ? Math.abs(cross) / speed : 0
  bend.parallel = speed > 0 && side * cross < 0 ? 1 + (widthM * bend.across) / (speed * speed) : 1
}

/**
 * True where all chords stay within a height. Over its chord from a to b a cubic is h² u (1 − u) |s_a (2 − u) + s_b (1 + u)| / 6
 * high at u, s being its P″ square to the chord, so at most h² max(|2 s_a + s_b|, |s_a + 2 s_b|) / 24.
 */
function isWithin(c: CubicCurve, side: number, stops: readonly number[], chordM: number, widthM: number): boolean {
  bendAt(c, side, stops[0]!, widthM)
  let ax = jet.x
  let ay = jet.y
  let parallel = bend.parallel
  for (let k = 1; k < stops.length; k++) {
    const a = stops[k - 1]!
    const b = stops[k]!
    bendAt(c, side, b, widthM)
    const ex = jet.x - ax
    const ey = jet.y - ay
    const length = Math.sqrt(ex * ex + ey * ey)
    const first = ex * (c.y0 - 2 * c.ay + c.by) - ey * (c.x0 - 2 * c.ax + c.bx)
    const last = ex * (c.ay - 2 * c.by + c.y1) - ey * (c.ax - 2 * c.bx + c.x1)
    const sa = 6 * ((1 - a) * first + a * last)
    const sb = 6 * ((1 - b) * first + b * last)
    const height = ((b - a) ** 2 * Math.max(Math.abs(2 * sa + sb), Math.abs(sa + 2 * sb))) / (24 * length)
    if (!(height * Math.max(parallel, bend.parallel) <= chordM)) return false
    ax = jet.x
    ay = jet.y
    parallel = bend.parallel
  }
  return true
}
