import type { Axis, Point } from '../../basin/index.ts'
import { pointOnAxis } from '../sheet/scene.ts'
import { type Panes, toScreen, type View } from '../sheet/view.ts'

interface Line {
  readonly axis: Axis
  /** Where the line is drawn from and to, beyond the walls [m from A]. */
  readonly drawn: readonly [fromM: number, toM: number]
  readonly view: View
  readonly panes: Panes
}

/** A name stands this far from the end of its line [px]. */
const AWAY_PX = 11

/** Where A and A′ stand [px]. */
export function axisNames({ axis, drawn, view, panes }: Line): { readonly a: Point; readonly b: Point } {
  const start = toScreen(view, panes, pointOnAxis(axis, drawn[0]))
  const end = toScreen(view, panes, pointOnAxis(axis, drawn[1]))
  const length = Math.hypot(end[0] - start[0], end[1] - start[1]) || 1
  const [dx, dy] = [((end[0] - start[0]) / length) * AWAY_PX, ((end[1] - start[1]) / length) * AWAY_PX]
  return { a: [start[0] - dx, start[1] - dy], b: [end[0] + dx, end[1] + dy] }
}
