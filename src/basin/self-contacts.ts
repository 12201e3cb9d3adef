import { arrange } from './arrangement.ts'
import type { Curve } from './curve.ts'
import { closed, curvesOf } from './path.ts'
import { pushRing, ringOf, roughBox } from './rings.ts'
import { type Foot, footOn, type Span } from './span.ts'
import { grainOf } from './tolerance.ts'
import type { Path } from './types.ts'

/** A place on a path: segment (or the number of segments for the closing line) and t on it. */
export interface PathPlace {
  readonly segment: number
  readonly t: number
}

/** A place where a path meets itself, the two times it passes there in the order of travel. */
export interface SelfContact {
  readonly first: PathPlace
  readonly second: PathPlace
  readonly x: number
  readonly y: number
}

const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** The places where a path crosses or touches itself besides its own joints: all, or a few more than `most`. */
export function selfContacts(path: Path, most: number): SelfContact[] {
  const [minX, minY, maxX, maxY] = roughBox(curvesOf(path))
  const originX = (minX + maxX) / 2
  const originY = (minY + maxY) / 2
  const coordinate = Math.max(Math.abs(minX), Math.abs(maxX), Math.abs(minY), Math.abs(maxY))
  const grainM = grainOf(Math.hypot(maxX - minX, maxY - minY), coordinate)
  const ring = ringOf(closed(path), '', originX, originY, grainM)
  const indexOf = new Map<Curve, number>(ring.curves.map((curve, i) => [curve, i]))
  const spans: Span[] = []
  const count = pushRing(ring, 0, grainM, spans)
  const found: SelfContact[] = []
  const place = ({ curve, t0, t1 }: Span, x: number, y: number): PathPlace => ({
    segment: ring.segments[indexOf.get(curve)!]!,
    t: footOn(curve, t0, t1, x, y, foot).t,
  })
  arrange(spans, [count], grainM, ({ a, b, x, y }) => {
    const [p, q] = [place(a, x, y), place(b, x, y)]
    const isInOrder = p.segment < q.segment || (p.segment === q.segment && p.t <= q.t)
    const [first, second] = isInOrder ? [p, q] : [q, p]
    found.push({ first, second, x: x + originX, y: y + originY })
    return found.length > most
  })
  return found
}
