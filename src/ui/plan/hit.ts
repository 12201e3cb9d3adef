import type { Point } from '../../basin/index.ts'

/** Something on the sheet that can be taken hold of. */
export interface Target<Id> {
  readonly id: Id
  /** On the screen [px]. */
  readonly at: Point
  /** A smaller rank wins where two lie within reach: a handle before the node under it, a node before its edge. */
  readonly rank: number
}

/** Reach of a mouse and of a finger [px]; a finger's is half of the 44 px that it needs. */
export const REACH_PX = { mouse: 9, pen: 12, touch: 22 } as const

export function reachOf(pointerType: string): number {
  if (pointerType === 'touch') return REACH_PX.touch
  return pointerType === 'pen' ? REACH_PX.pen : REACH_PX.mouse
}

/** The target meant by a press: the best rank within reach, then the nearest. */
export function hitTarget<Id>(targets: readonly Target<Id>[], press: Point, reachPx: number): Target<Id> | undefined {
  let best: Target<Id> | undefined
  let bestFar = Number.POSITIVE_INFINITY
  for (const target of targets) {
    const far = Math.hypot(target.at[0] - press[0], target.at[1] - press[1])
    if (far > reachPx) continue
    // A press that is much nearer to a lesser target means that one.
    const score = far + target.rank * reachPx * 0.4
    if (score < bestFar) {
      best = target
      bestFar = score
    }
  }
  return best
}

/** Distance from a point to a polyline [in its own unit]. */
export function distanceToLine(line: readonly Point[], [x, y]: Point, isClosed: boolean): number {
  let best = Number.POSITIVE_INFINITY
  const count = isClosed ? line.length : line.length - 1
  for (let i = 0; i < count; i++) {
    const a = line[i]
    const b = line[(i + 1) % line.length]
    if (!a || !b) continue
    const dx = b[0] - a[0]
    const dy = b[1] - a[1]
    const t = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1)))
    best = Math.min(best, Math.hypot(a[0] + t * dx - x, a[1] + t * dy - y))
  }
  return best
}
