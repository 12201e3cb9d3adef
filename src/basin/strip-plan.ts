import { BoxGrid } from './box-grid.ts'
import type { Fan, Fans } from './cove-fan.ts'
import { norm } from './norm.ts'
import type { Edge, Partition } from './partition-types.ts'
import { rivalsOf } from './strip-rivals.ts'
import { canTouch, newSweep, type Placed, type Swath, sweepOf, wholeSwath } from './strip-sweep.ts'

/** An edge between cells that rays of a fan may cross. */
export interface NearEdge {
  readonly index: number
  readonly edge: Edge
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
  /** How far it may bend away from its chord [m]. */
  readonly riseM: number
}

/** What can end the rays of a fan, and what they can cross. */
export interface FanPlan {
  readonly fan: Fan
  readonly rivals: readonly number[]
  /** Rivals of which one place at most ends a ray, however that is found. */
  readonly touchOnce: readonly number[]
  /** Between these two t no rival ends a ray. */
  readonly freeFrom: number
  readonly freeTo: number
  readonly near: readonly NearEdge[]
  /** The same as numbers. An edge that bends has a rise: a ray may cross it with both its ends on one side. */
  readonly placed: Placed
  /** Which of them each stretch of the fan comes near to. */
  readonly swath: Swath
}

/** Up to so many edges are looked at one by one. */
const FEW_EDGES = 64

const sweep = newSweep()

/** Plans of all fans for a strip of a width [m]. */
export function planFans(p: Partition, fans: Fans, widthM: number): FanPlan[] {
  const inner: NearEdge[] = []
  p.edges.forEach((edge, index) => {
    if (edge.left < 0 || edge.right < 0) return
    const [x0, y0] = [p.nodeX[edge.from]!, p.nodeY[edge.from]!]
    const [x1, y1] = [p.nodeX[edge.to]!, p.nodeY[edge.to]!]
    // It stays in the triangle over its chord, at most as high as half the chord is long.
    const riseM = edge.curve.kind === 'line' ? 0 : norm(x1 - x0, y1 - y0) / 2
    inner.push({ index, edge, x0, y0, x1, y1, riseM })
  })
  const innerGrid = inner.length > FEW_EDGES ? new BoxGrid(inner.map(boxOf)) : undefined
  const all = inner.map((_, i) => i)
  const rivals = rivalsOf(p, fans, widthM)
  return fans.fans.map((fan, index) => {
    const own = fan.shore >= 0 ? fans.shores[fan.shore]! : undefined
    const minX = (own ? own.minX : fan.x) - widthM
    const maxX = (own ? own.maxX : fan.x) + widthM
    const minY = (own ? own.minY : fan.y) - widthM
    const maxY = (own ? own.maxY : fan.y) + widthM
    const near: NearEdge[] = []
    const found = innerGrid ? innerGrid.near(minX, minY, maxX, maxY, []) : all
    sweepOf(fans, fan, fan.t0, fan.t1, widthM, p.grainM, sweep)
    for (let k = 0; k < found.length; k++) {
      const edge = inner[found[k]!]!
      const { x0, y0, x1, y1, riseM } = edge
      const isBeside =
        (x0 > maxX && x1 > maxX) || (x0 < minX && x1 < minX) || (y0 > maxY && y1 > maxY) || (y0 < minY && y1 < minY)
      if (!isBeside && canTouch(sweep, x0, y0, x1, y1, riseM)) near.push(edge)
    }
    if (innerGrid) near.sort((a, b) => a.index - b.index)
    const ends = new Float64Array(4 * near.length)
    const rises = new Float64Array(near.length)
    for (let i = 0; i < near.length; i++) {
      const { x0, y0, x1, y1, riseM } = near[i]!
      ends[4 * i] = x0
      ends[4 * i + 1] = y0
      ends[4 * i + 2] = x1
      ends[4 * i + 3] = y1
      rises[i] = riseM
    }
    const { all: against, ...known } = rivals[index]!
    return { fan, rivals: against, ...known, near, placed: { ends, rises }, swath: wholeSwath(fan, near.length) }
  })
}

/** An edge rises or falls throughout, so its ends bound it. */
function boxOf({ x0, y0, x1, y1 }: NearEdge) {
  return { minX: Math.min(x0, x1), minY: Math.min(y0, y1), maxX: Math.max(x0, x1), maxY: Math.max(y0, y1) }
}
