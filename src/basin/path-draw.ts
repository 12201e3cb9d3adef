import { type Curve, evaluate, newJet } from './curve.ts'
import { curvesOf } from './path.ts'
import type { Path, Point } from './types.ts'

const jet = newJet()

/** How many even steps keep chords of a stretch within a height of the curve [m]. */
export function chordsFor(curve: Curve, t0: number, t1: number, chordM: number): number {
  if (curve.kind === 'line') return 1
  const span = t1 - t0
  if (curve.kind === 'arc') {
    // As an arc sine, which tells the chord of a flat arc from none: a height of 1e-17 radii is lost beside 1.
    const step = 4 * Math.asin(Math.sqrt(Math.min(0.5, chordM / (2 * Math.abs(curve.radius)))))
    return Math.min(4096, Math.max(1, Math.ceil((Math.abs(curve.turn) * span) / step)))
  }
  // Height of a chord ≤ h²/8 · max|P″|; P″ is linear in t, so it is greatest at an end of the stretch.
  const ax = curve.x0 - 2 * curve.ax + curve.bx
  const ay = curve.y0 - 2 * curve.ay + curve.by
  const bx = curve.ax - 2 * curve.bx + curve.x1
  const by = curve.ay - 2 * curve.by + curve.y1
  const bend = Math.max(
    Math.hypot(ax + t0 * (bx - ax), ay + t0 * (by - ay)),
    Math.hypot(ax + t1 * (bx - ax), ay + t1 * (by - ay)),
  )
  return Math.min(4096, Math.max(1, Math.ceil(span * Math.sqrt((0.75 * bend) / chordM))))
}

/** A path as a polygon whose sides stay within `chordM` of the curve; the first point isn't repeated. */
export function flatten(path: Path, chordM: number): Point[] {
  const points: Point[] = []
  for (const curve of curvesOf(path)) {
    const n = chordsFor(curve, 0, 1, chordM)
    for (let i = 0; i < n; i++) {
      evaluate(curve, i / n, jet)
      points.push([jet.x, jet.y])
    }
  }
  return points
}

/** SVG path data in plan coordinates (y up; the drawing's own transform turns it over). */
export function svgPathOf(path: Path): string {
  const [sx, sy] = path.start
  const parts = [`M${n(sx)} ${n(sy)}`]
  curvesOf(path).forEach((curve, i) => {
    if (i >= path.segments.length) return
    if (curve.kind === 'line') parts.push(`L${n(curve.x1)} ${n(curve.y1)}`)
    else if (curve.kind === 'arc') {
      const r = n(Math.abs(curve.radius))
      const large = Math.abs(curve.turn) > Math.PI ? 1 : 0
      parts.push(`A${r} ${r} 0 ${large} ${curve.turn > 0 ? 1 : 0} ${n(curve.x1)} ${n(curve.y1)}`)
    } else parts.push(`C${n(curve.ax)} ${n(curve.ay)} ${n(curve.bx)} ${n(curve.by)} ${n(curve.x1)} ${n(curve.y1)}`)
  })
  parts.push('Z')
  return parts.join('')
}

/** A number as short as it can be without a visible loss: tenths of a micrometre. */
function n(value: number): string {
  const text = value.toFixed(7)
  return text.replace(/\.?0+$/, '').replace(/^-0$/, '0')
}
