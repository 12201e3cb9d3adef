import { isInside, type Stretch } from './faces.ts'
import { pushRing, type Ring } from './rings.ts'
import { type Foot, footOn, type Span } from './span.ts'

/** A place on a shore. */
export interface ShoreFoot {
  readonly ring: number
  /** Index of the curve in its ring, and the place on it. */
  readonly curve: number
  readonly t: number
  readonly x: number
  readonly y: number
  readonly distanceM: number
}

/** Tells water from land on the exact shores, and finds the shore nearest to a place. */
export interface ShoreFinder {
  readonly isWater: (x: number, y: number) => boolean
  /** The nearest place on the shore within a distance, if there is one. */
  readonly nearest: (x: number, y: number, withinM: number) => ShoreFoot | undefined
}

const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** The finder of an outline and its islands. */
export function shoreFinder(shores: readonly Ring[], grainM: number): ShoreFinder {
  const rings = shores.map((ring, id) => {
    const spans: Span[] = []
    pushRing(ring, id, grainM, spans)
    const curveOf = new Map(ring.curves.map((curve, i) => [curve, i]))
    return { spans, curveOf, holds: holderOf(spans) }
  })
  const isWater = (x: number, y: number): boolean => rings.every(({ holds }, i) => holds(x, y) === (i === 0))
  const nearest = (x: number, y: number, withinM: number): ShoreFoot | undefined => {
    let best: ShoreFoot | undefined
    let reach = withinM
    rings.forEach(({ spans, curveOf }, ring) => {
      for (const span of spans) {
        if (x < span.minX - reach || x > span.maxX + reach || y < span.minY - reach || y > span.maxY + reach) continue
        footOn(span.curve, span.t0, span.t1, x, y, foot)
        if (foot.distance > reach) continue
        reach = foot.distance
        best = { ring, curve: curveOf.get(span.curve)!, t: foot.t, x: foot.x, y: foot.y, distanceM: foot.distance }
      }
    })
    return best
  }
  return { isWater, nearest }
}

/** True for places inside a closed way of spans. */
export function holderOf(spans: readonly Span[]): (x: number, y: number) => boolean {
  const count = spans.length
  const edges: Stretch[] = spans.map(({ curve, t0, t1 }, i) => ({ curve, t0, t1, from: i, to: (i + 1) % count }))
  const halves = spans.map((_, i) => 2 * i)
  const nodeX = spans.map((span) => span.x0)
  const nodeY = spans.map((span) => span.y0)
  return (x, y) => isInside(halves, edges, nodeX, nodeY, x, y)
}
