import type { Point } from '../../basin/index.ts'
import { depthToReference } from '../../document/index.ts'
import { formatQuantity, snapLength } from '../../units/index.ts'
import { edits } from '../sheet/edits.ts'
import type { Item } from '../sheet/items.ts'
import { contourGrip } from '../sheet/place-floor-items.ts'
import type { Scene } from '../sheet/scene.ts'
import type { Drag } from './edit.ts'

type FloorItem = Extract<Item, { kind: 'contour' | 'sounding' | 'dish' }>

/** The edit that brings a depth line, a sounding, or the middle or rim of a hollow to a place. */
export function dragOnFloor(
  { body, units, view }: Pick<Scene, 'body' | 'units' | 'view'>,
  item: FloorItem,
  to: Point,
): Drag | undefined {
  const { floor, id } = body
  const say = (si: number) => formatQuantity('length', si, units)
  if (item.kind === 'contour' && floor.kind === 'contours') {
    const ring = floor.rings[item.contour]
    if (!ring) return undefined
    const grip = contourGrip(ring.path, view.turn)
    return { command: edits.moveContour(id, item.contour, [to[0] - grip[0], to[1] - grip[1]]), guides: [], remarks: [] }
  }
  if (item.kind === 'sounding' && floor.kind === 'soundings') {
    const depthM = floor.points[item.sounding]?.[2]
    if (depthM === undefined) return undefined
    const remarks = [{ at: to, text: say(depthToReference(body, depthM)) }]
    return { command: edits.moveSounding(id, item.sounding, to), guides: [], remarks }
  }
  if (item.kind !== 'dish' || floor.kind !== 'dish') return undefined
  if (item.part === 'centre') return { command: edits.setDish(id, { centre: [to[0], to[1]] }), guides: [], remarks: [] }
  const { centre } = floor
  const radiusM = snapLength(Math.hypot(to[0] - centre[0], to[1] - centre[1]), units)
  if (!(radiusM > 0)) return undefined
  return {
    command: edits.setDish(id, { radiusM }),
    guides: [],
    remarks: [{ at: [(to[0] + centre[0]) / 2, (to[1] + centre[1]) / 2], text: `radius ${say(radiusM)}` }],
  }
}
