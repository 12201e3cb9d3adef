import { type Axis, flatten, nearestOn, type Path, type Point, pointOn } from '../../basin/index.ts'
import { isInside } from '../../document/index.ts'

/** A place on the wall with the directions along it and into the water. */
export interface WallFrame {
  readonly at: Point
  readonly along: Point
  readonly inward: Point
}

/** Flattening for finding places, not for measuring [m]. */
const CHORD_M = 0.01
const DEFAULT_WIDTH_M = 1.8
/** A drag that goes less far along the wall than this means "here, of the usual width" [m]. */
const MEANT_WIDTH_M = 0.6

/** The wall nearest to a point. */
export function wallFrameAt(outline: Path, point: Point): WallFrame {
  const near = nearestOn(outline, point[0], point[1])
  const before = pointOn(outline, near.segmentIndex, Math.max(0, near.t - 1e-3))
  const after = pointOn(outline, near.segmentIndex, Math.min(1, near.t + 1e-3))
  const length = Math.hypot(after[0] - before[0], after[1] - before[1]) || 1
  const along: Point = [(after[0] - before[0]) / length, (after[1] - before[1]) / length]
  const left: Point = [-along[1], along[0]]
  const ring = flatten(outline, CHORD_M)
  const isLeftWater = isInside(ring, [near.point[0] + left[0] * 0.02, near.point[1] + left[1] * 0.02])
  return { at: near.point, along, inward: isLeftWater ? left : [-left[0], -left[1]] }
}

export interface Footprint {
  readonly path: Path
  readonly axis: Axis
  /** Into the water, from the wall [m]. */
  readonly runM: number
  readonly widthM: number
}

const inFrame = (frame: WallFrame, [x, y]: Point): Point => {
  const dx = x - frame.at[0]
  const dy = y - frame.at[1]
  return [dx * frame.along[0] + dy * frame.along[1], dx * frame.inward[0] + dy * frame.inward[1]]
}
const fromFrame = (frame: WallFrame, a: number, d: number): Point => [
  frame.at[0] + frame.along[0] * a + frame.inward[0] * d,
  frame.at[1] + frame.along[1] * a + frame.inward[1] * d,
]

/** How far into the water and along the wall a drag from the wall goes [m]. */
export function dragInFrame(frame: WallFrame, to: Point): { readonly alongM: number; readonly inwardM: number } {
  const [alongM, inwardM] = inFrame(frame, to)
  return { alongM, inwardM: Math.max(0, inwardM) }
}

/**
 * The rectangle that stands against the wall: `runM` into the water, over the width that was dragged. Behind a
 * curved wall it reaches out as far as the wall bends away, and the outline cuts it off. Its axis begins at the wall or,
 * for what would change its rule right there, at the edge behind: a line that only touches the wall can't be told apart from it.
 */
export function footprintFrom(
  outline: Path,
  frame: WallFrame,
  alongM: number,
  runM: number,
  axisFrom: 'wall' | 'behind' = 'wall',
): Footprint {
  const isWide = Math.abs(alongM) >= MEANT_WIDTH_M
  const from = isWide ? Math.min(0, alongM) : -DEFAULT_WIDTH_M / 2
  const to = isWide ? Math.max(0, alongM) : DEFAULT_WIDTH_M / 2
  const behind = wallBehind(outline, frame, from, to, runM)
  const corners = [
    fromFrame(frame, from, behind),
    fromFrame(frame, to, behind),
    fromFrame(frame, to, runM),
    fromFrame(frame, from, runM),
  ] as const
  return {
    path: {
      start: corners[0],
      segments: [{ to: corners[1] }, { to: corners[2] }, { to: corners[3] }],
    },
    axis: { from: axisFrom === 'wall' ? frame.at : fromFrame(frame, 0, behind), to: fromFrame(frame, 0, runM) },
    runM,
    widthM: to - from,
  }
}

/** How far behind the tangent the wall lies between two places along it, followed from where the frame stands [m]. */
function wallBehind(outline: Path, frame: WallFrame, from: number, to: number, runM: number): number {
  const ring = flatten(outline, CHORD_M).map((p) => inFrame(frame, p))
  const start = ring.reduce((best, p, i) => {
    const b = ring[best]
    return b && Math.hypot(p[0], p[1]) < Math.hypot(b[0], b[1]) ? i : best
  }, 0)
  let least = 0
  for (const step of [1, -1]) {
    for (let k = 1; k < ring.length; k++) {
      const p = ring[(start + step * k + ring.length * k) % ring.length]
      if (!p) break
      least = Math.min(least, p[1])
      if (p[0] < from || p[0] > to || p[1] > runM) break
    }
  }
  // A wall that falls away steeply is followed no further than the footprint is wide.
  return Math.max(least, -(to - from)) - 0.05
}
