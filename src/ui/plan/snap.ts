import type { Point } from '../../basin/index.ts'
import { snapLength, type UnitSystem } from '../../units/index.ts'

/** A line that a dragged point likes to lie on. */
export interface SnapLine {
  readonly through: Point
  /** Of length 1. */
  readonly along: Point
  readonly what: 'in line' | 'right angle' | 'tangent'
}

export interface Snapped {
  readonly at: Point
  readonly guides: readonly { readonly from: Point; readonly to: Point; readonly what: SnapLine['what'] }[]
}

export interface Neighbour {
  readonly at: Point
  /** The direction in which the path passes the neighbour on its other side. */
  readonly along?: Point | undefined
}

/** The lines through other nodes (level and plumb), and those square to or in line with what neighbours do. */
export function snapLines(others: readonly Point[], neighbours: readonly Neighbour[]): SnapLine[] {
  const lines: SnapLine[] = []
  for (const { at, along } of neighbours) {
    if (!along) continue
    lines.push({ through: at, along, what: 'tangent' })
    lines.push({ through: at, along: [-along[1], along[0]], what: 'right angle' })
  }
  for (const at of others) {
    lines.push({ through: at, along: [1, 0], what: 'in line' }, { through: at, along: [0, 1], what: 'in line' })
  }
  return lines
}

const distanceTo = (line: SnapLine, [x, y]: Point) =>
  Math.abs((x - line.through[0]) * line.along[1] - (y - line.through[1]) * line.along[0])
const run = (line: SnapLine, [x, y]: Point) =>
  (x - line.through[0]) * line.along[0] + (y - line.through[1]) * line.along[1]
const along = (line: SnapLine, s: number): Point => [
  line.through[0] + s * line.along[0],
  line.through[1] + s * line.along[1],
]

function crossing(a: SnapLine, b: SnapLine): Point | undefined {
  const sine = a.along[0] * b.along[1] - a.along[1] * b.along[0]
  // Lines under 15° to each other meet too far away to be meant.
  if (Math.abs(sine) < 0.26) return undefined
  const dx = b.through[0] - a.through[0]
  const dy = b.through[1] - a.through[1]
  return along(a, (dx * b.along[1] - dy * b.along[0]) / sine)
}

/**
 * Where a dragged point comes to rest: on the crossing of two liked lines, on one of them at a whole inch or
 * centimetre from where it starts, or else at whole inches or centimetres.
 */
export function snapPoint(raw: Point, lines: readonly SnapLine[], reachM: number, system: UnitSystem): Snapped {
  const near = lines
    .map((line, order) => ({ line, order, far: distanceTo(line, raw) }))
    .filter(({ far }) => far <= reachM)
    .sort((a, b) => a.far - b.far || a.order - b.order)
  const first = near[0]?.line
  if (!first) return { at: [snapLength(raw[0], system), snapLength(raw[1], system)], guides: [] }
  for (const { line } of near.slice(1)) {
    const at = crossing(first, line)
    if (at && Math.hypot(at[0] - raw[0], at[1] - raw[1]) <= reachM * 1.5) {
      return { at, guides: [first, line].map((l) => ({ from: l.through, to: at, what: l.what })) }
    }
  }
  const at = along(first, snapLength(run(first, raw), system))
  return { at, guides: [{ from: first.through, to: at, what: first.what }] }
}
