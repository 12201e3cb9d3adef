import { boundsOf, nearestOn, type Point } from '../../../basin/index.ts'
import type { Body } from '../../../document/index.ts'
import type { Placement } from '../../../features/index.ts'
import { middleOf } from './new-body.ts'

/** Share of the outline's smaller side that a new feature measures. */
const SIZE_SHARE = 0.3

/** Where the next feature of a body is put: at the wall of the shallow end, then at the others by turns. */
export function placementFor(body: Body): Placement {
  const box = boundsOf(body.outline)
  const middle = middleOf(body.outline)
  const shallow: Point = body.floor.kind === 'profile' ? body.floor.axis.from : [box.minX, middle[1]]
  const places: readonly Point[] = [
    shallow,
    [middle[0], box.maxY],
    [middle[0], box.minY],
    [2 * middle[0] - shallow[0], 2 * middle[1] - shallow[1]],
  ]
  const near = places[body.features.length % places.length] ?? shallow
  const at = nearestOn(body.outline, near[0], near[1]).point
  return {
    at,
    toward: [middle[0] - at[0], middle[1] - at[1]],
    outline: body.outline,
    sizeM: SIZE_SHARE * Math.min(box.maxX - box.minX, box.maxY - box.minY),
  }
}
