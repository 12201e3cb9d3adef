import { BoxGrid } from './box-grid.ts'
import type { Fan, Fans } from './cove-fan.ts'
import { arcCentre, evaluate, newJet } from './curve.ts'
import { norm } from './norm.ts'
import type { Edge, Partition } from './partition-types.ts'
import { shoreGrid } from './shore-distance.ts'
import type { Shore } from './shores.ts'
import { canTouch, newSweep, type Placed, type Swath, sweepOf, wholeSwath } from './strip-sweep.ts'
import { ABOUT } from './tolerance.ts'

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
  const isTight = fans.shores.map((shore) => !bendsLess(shore, 1 / widthM))
  return fans.fans.map((fan) => {
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
    const rivals = rivalsOf(p, fans, fan, widthM, isTight)
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
    return { fan, rivals, near, placed: { ends, rises }, swath: wholeSwath(fan, near.length) }
  })
}

/** An edge rises or falls throughout, so its ends bound it. */
function boxOf({ x0, y0, x1, y1 }: NearEdge) {
  return { minX: Math.min(x0, x1), minY: Math.min(y0, y1), maxX: Math.max(x0, x1), maxY: Math.max(y0, y1) }
}

/** The stretches of shore that can end rays of a fan, in order. */
function rivalsOf(p: Partition, fans: Fans, fan: Fan, widthM: number, isTight: readonly boolean[]): number[] {
  const own = fan.shore >= 0 ? fans.shores[fan.shore]! : undefined
  const minX = (own ? own.minX : fan.x) - 2 * widthM
  const maxX = (own ? own.maxX : fan.x) + 2 * widthM
  const minY = (own ? own.minY : fan.y) - 2 * widthM
  const maxY = (own ? own.maxY : fan.y) + 2 * widthM
  const harmless = smoothlyJoined(p, fans, fan, widthM, isTight)
  const found = shoreGrid(p).near(minX, minY, maxX, maxY, [])
  const rivals: number[] = []
  for (let k = 0; k < found.length; k++) {
    const i = found[k]!
    const shore = fans.shores[i]!
    if (shore.minX > maxX || shore.maxX < minX || shore.minY > maxY || shore.maxY < minY) continue
    // A stretch that bends less than the circle of the strip's width can't meet it beside its own touch.
    if (!isTight[i] && (i === fan.shore || (fan.shore < 0 && fan.neighbours.includes(i)))) continue
    if (harmless.includes(i) || (own && i !== fan.shore && isOneCurve(own, shore))) continue
    rivals.push(i)
  }
  return rivals.sort((a, b) => a - b)
}

/** Stretches of one line or one circle: all are as near where the rays of each end by its own bend, and nowhere sooner. */
function isOneCurve({ curve: a, side }: Shore, { curve: b, side: other }: Shore): boolean {
  if (a.kind === 'cubic' || b.kind === 'cubic') return false
  if (a === b) return true
  if (a.kind !== 'arc' || b.kind !== 'arc') return false
  const radiusM = Math.abs(a.radius)
  if (side * Math.sign(a.radius) !== other * Math.sign(b.radius)) return false
  if (!(Math.abs(Math.abs(b.radius) - radiusM) <= ABOUT * radiusM)) return false
  const [ax, ay] = arcCentre(a)
  const [bx, by] = arcCentre(b)
  return norm(ax - bx, ay - by) <= ABOUT * radiusM
}

/**
 * Stretches that go on smoothly from a fan's own and bend less than the circle of radius r, as far as π r along the shore:
 * they can't come into a circle that touches the shore at any foot of the fan.
 * Source: a curve that bends no more than its tangent circle stays outside it for half a turn (comparison of curves,
 *   A. Schur 1921, from memory).
 */
function smoothlyJoined(p: Partition, fans: Fans, fan: Fan, r: number, isTight: readonly boolean[]): readonly number[] {
  const joined: number[] = []
  if (fan.shore < 0 || isTight[fan.shore]) return joined
  const lengthOf = (i: number): number => p.edges[fans.shores[i]!.edge]!.length
  const reachM = Math.PI * r - lengthOf(fan.shore)
  const walk = (from: number, walkedM: number): void => {
    for (const next of fans.fans[from]!.neighbours) {
      if (next === fan.shore || isTight[next] || joined.includes(next)) continue
      const endM = walkedM + lengthOf(next)
      // A neighbour never comes back into the circle within a quarter turn, however long it is.
      if (endM > reachM && from !== fan.shore) continue
      joined.push(next)
      if (endM <= reachM) walk(next, endM)
    }
  }
  walk(fan.shore, 0)
  return joined
}

const jet = newJet()

/** True where a stretch nowhere bends toward the water more than a curvature [1/m]. */
function bendsLess({ curve, t0, t1, side }: Shore, most: number): boolean {
  if (curve.kind === 'line') return true
  if (curve.kind === 'arc') return side / curve.radius <= most
  // κ = P′ × P″ / |P′|³: bounds of both on parts of the stretch, from the middle and the rate of change.
  const ax = 6 * (curve.x0 - 2 * curve.ax + curve.bx)
  const ay = 6 * (curve.y0 - 2 * curve.ay + curve.by)
  const bx = 6 * (curve.ax - 2 * curve.bx + curve.x1)
  const by = 6 * (curve.ay - 2 * curve.by + curve.y1)
  const fastest = Math.max(norm(ax, ay), norm(bx, by))
  const jerk = norm(bx - ax, by - ay)
  const holds = (a: number, b: number, depth: number): boolean => {
    const m = (a + b) / 2
    const h = (b - a) / 2
    evaluate(curve, m, jet)
    const { dx, dy } = jet
    const sx = ax + m * (bx - ax)
    const sy = ay + m * (by - ay)
    const speed = norm(dx, dy)
    const turn = side * (dx * sy - dy * sx)
    // d(P′ × P″)/dt = P′ × P‴.
    const turnMost = turn + h * (speed + h * fastest) * jerk
    const speedLeast = speed - h * fastest
    if (speedLeast > 0 && turnMost <= most * speedLeast ** 3) return true
    if (depth === 0 || turn > most * speed ** 3) return false
    return holds(a, m, depth - 1) && holds(m, b, depth - 1)
  }
  return holds(t0, t1, 7)
}
