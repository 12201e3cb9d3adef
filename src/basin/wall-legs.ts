import { type Curve, evaluate, newJet, sizeOf } from './curve.ts'
import { curvesOf } from './path.ts'
import { areaOf } from './path-figures.ts'
import { roughBox } from './rings.ts'
import { grainOf } from './tolerance.ts'
import type { Path, Point, Segment } from './types.ts'

type Vec = readonly [number, number]

/** One segment of an outline with the water on a known side. Its curve is seen from the outline's start. */
export interface Leg {
  readonly curve: Curve
  /** The segment as the outline has it, and the point that it starts from. */
  readonly from: Point
  readonly segment: Segment
  /** Directions of travel at both ends, of length 1. */
  readonly heading0: Vec
  readonly heading1: Vec
}

/**
 * All segments of an outline that are longer than its grain, the closing line included; `side` is 1 with the water on the
 * left.
 */
export interface Wall {
  readonly legs: readonly (Leg | undefined)[]
  readonly side: 1 | -1
}

const jet = newJet()

/** An outline as legs, by the numbers of its segments. */
export function wallOf(outline: Path): Wall {
  const [ox, oy] = outline.start
  let from = outline.start
  const curves = curvesOf(outline, ox, oy)
  const [minX, minY, maxX, maxY] = roughBox(curves)
  const coordinate = Math.max(Math.abs(minX + ox), Math.abs(maxX + ox), Math.abs(minY + oy), Math.abs(maxY + oy))
  const grainM = grainOf(Math.hypot(maxX - minX, maxY - minY), coordinate)
  const legs = curves.map((curve, i): Leg | undefined => {
    const segment = outline.segments[i] ?? { to: outline.start }
    const start = from
    from = segment.to
    // What the division takes for a point has no direction to sweep along.
    if (sizeOf(curve) <= grainM) return undefined
    const heading0 = headingOf(curve, 0)
    const heading1 = headingOf(curve, 1)
    return heading0 && heading1 ? { curve, from: start, segment, heading0, heading1 } : undefined
  })
  return { legs, side: areaOf(outline) < 0 ? -1 : 1 }
}

/** Direction of travel at an end; a handle without length gives way to the next one. */
function headingOf(curve: Curve, end: 0 | 1): Vec | undefined {
  if (curve.kind !== 'cubic') {
    evaluate(curve, end, jet)
    return unitOf(jet.dx, jet.dy)
  }
  const points: Vec[] = [
    [curve.x0, curve.y0],
    [curve.ax, curve.ay],
    [curve.bx, curve.by],
    [curve.x1, curve.y1],
  ]
  if (end === 1) points.reverse()
  const [ex, ey] = points[0]!
  const other = points.find(([x, y]) => x !== ex || y !== ey)
  if (!other) return undefined
  return end === 0 ? unitOf(other[0] - ex, other[1] - ey) : unitOf(ex - other[0], ey - other[1])
}

function unitOf(x: number, y: number): Vec | undefined {
  const length = Math.hypot(x, y)
  return length > 0 ? [x / length, y / length] : undefined
}
