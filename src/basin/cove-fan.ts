import { evaluate, newJet, secondX, secondY } from './curve.ts'
import { Memory } from './memory.ts'
import { norm } from './norm.ts'
import type { Partition } from './partition-types.ts'
import { type Shore, shoresOf } from './shores.ts'
import { HAIR, SMOOTH_RAD, TIE } from './tolerance.ts'

/** A ray from the shore square into the water, and the width of the sheaf of rays beside it: h0 + h1 n for each unit of t. */
export interface Ray {
  x: number
  y: number
  nx: number
  ny: number
  h0: number
  h1: number
}

/**
 * Rays that sweep the water nearest to a part of the shore, t from t0 to t1: along a stretch, or about a corner that
 * juts into the water, where t is the angle.
 */
export interface Fan {
  readonly t0: number
  readonly t1: number
  /** The stretch, or none at a corner. */
  readonly shore: number
  /** Stretches that end here and go on smoothly, or at this corner. */
  readonly neighbours: readonly number[]
  /** Corner only: its place, the direction of its first ray [rad]. */
  readonly x: number
  readonly y: number
  readonly direction: number
  /** Cell where rays begin, −1 where it has to be looked for. */
  readonly cell: number
}

export interface Fans {
  readonly shores: readonly Shore[]
  readonly fans: readonly Fan[]
  /** Sum of the turns at joints that count as smooth, where the rays of two stretches leave a wedge out or sweep it twice [rad]. */
  readonly strayRad: number
  /** The stretch that each one goes on to with the water on the left (−1: none), and by how much the shore turns there toward the water [rad]. */
  readonly next: Int32Array
  readonly turn: Float64Array
}

const jet = newJet()
const known = new Memory<Partition, Fans>()

/** The fans of all shores of a partition. Remembered for each partition. */
export function fansOf(p: Partition): Fans {
  let fans = known.get(p)
  if (!fans) {
    fans = build(p)
    known.set(p, fans)
  }
  return fans
}

function build(p: Partition): Fans {
  const shores = shoresOf(p)
  const incoming = new Map<number, number>()
  const outgoing = new Map<number, number>()
  shores.forEach((shore, i) => {
    const edge = p.edges[shore.edge]!
    outgoing.set(shore.side > 0 ? edge.from : edge.to, i)
    incoming.set(shore.side > 0 ? edge.to : edge.from, i)
  })
  const smooth: number[][] = shores.map(() => [])
  const corners: Fan[] = []
  let strayRad = 0
  const next = new Int32Array(shores.length).fill(-1)
  const turns = new Float64Array(shores.length)
  for (const [node, into] of incoming) {
    const out = outgoing.get(node)
    if (out === undefined) continue
    const [ax, ay] = headingAt(shores[into]!, true)
    const [bx, by] = headingAt(shores[out]!, false)
    const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
    next[into] = out
    turns[into] = turn
    if (Math.abs(turn) < SMOOTH_RAD) {
      smooth[into]!.push(out)
      smooth[out]!.push(into)
    }
    // A corner that turns by rounding only holds no water.
    if (turn < -TIE)
      corners.push({
        t0: 0,
        t1: -turn,
        shore: -1,
        neighbours: [into, out],
        x: p.nodeX[node]!,
        y: p.nodeY[node]!,
        direction: Math.atan2(ax, -ay),
        cell: -1,
      })
    else if (turn < SMOOTH_RAD) strayRad += Math.abs(turn)
  }
  const along = shores.map(
    (shore, i): Fan => ({
      t0: shore.t0,
      t1: shore.t1,
      shore: i,
      neighbours: smooth[i]!,
      x: 0,
      y: 0,
      direction: 0,
      cell: shore.cell,
    }),
  )
  return { shores, fans: [...along, ...corners], strayRad, next, turn: turns }
}

/** Direction of travel with the water on the left, at a stretch's last or first point that way. */
export function headingAt(shore: Shore, last: boolean): [number, number] {
  const atEnd = last === shore.side > 0
  evaluate(shore.curve, atEnd ? shore.t1 : shore.t0, jet)
  let { dx, dy } = jet
  if (dx === 0 && dy === 0) {
    // A handle that lies on its point: the direction is the limit, taken a hair inside.
    const hair = HAIR * (shore.t1 - shore.t0)
    evaluate(shore.curve, atEnd ? shore.t1 - hair : shore.t0 + hair, jet)
    dx = jet.dx
    dy = jet.dy
  }
  const length = norm(dx, dy) || 1
  return [(shore.side * dx) / length, (shore.side * dy) / length]
}

/** Writes the ray of a fan at t into `out`. */
export function rayAt(fans: Fans, fan: Fan, t: number, out: Ray): Ray {
  if (fan.shore < 0) {
    out.x = fan.x
    out.y = fan.y
    out.nx = Math.cos(fan.direction - t)
    out.ny = Math.sin(fan.direction - t)
    out.h0 = 0
    out.h1 = 1
    return out
  }
  const { curve, side } = fans.shores[fan.shore]!
  evaluate(curve, t, jet)
  const { x, y, dx, dy } = jet
  const speed2 = dx * dx + dy * dy
  const speed = Math.sqrt(speed2)
  out.x = x
  out.y = y
  out.nx = speed > 0 ? (-side * dy) / speed : 0
  out.ny = speed > 0 ? (side * dx) / speed : 0
  out.h0 = speed
  // How fast the heading turns: P′ × P″ / |P′|².
  if (curve.kind === 'line') out.h1 = 0
  else if (curve.kind === 'arc') out.h1 = -side * curve.turn
  else {
    const turn = dx * secondY(curve, t) - dy * secondX(curve, t)
    out.h1 = speed2 > 0 ? (-side * turn) / speed2 : 0
  }
  return out
}
