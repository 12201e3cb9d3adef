import { boundsOf, type Point } from '../../basin/index.ts'
import { contourGrip } from '../sheet/place-floor-items.ts'
import { planPx, type Scene } from '../sheet/scene.ts'
import { boundsInSheet } from '../sheet/view.ts'
import { type Box, boxOfText } from './labels.ts'

/** A depth that somebody gave to a place, written beside it. */
export interface FloorLabel {
  readonly key: string
  /** The place itself, and the middle of the text [px]. */
  readonly at: Point
  readonly textAt: Point
  readonly depthM: number
  readonly text: string
  /** A cross at the place, as a surveyor marks it. */
  readonly hasCross: boolean
  readonly box: Box
}

const FLOOR_LABEL_PX = 13
/** Text stands this far to the right of a cross or above a line [px]. */
const BESIDE_PX = 9

/** The depths that a floor is given by, where they are written in the plan. */
export function floorLabels(
  scene: Pick<Scene, 'body' | 'view' | 'panes'>,
  write: (depthM: number) => string,
): readonly FloorLabel[] {
  const { floor, outline } = scene.body
  const bounds = boundsInSheet(boundsOf(outline), scene.view.turn)
  const rightPx = scene.panes.width / 2 + (bounds.maxX - scene.view.u) * scene.view.scale
  const beside = (key: string, place: Point, depthM: number): FloorLabel => {
    const at = planPx(scene, place)
    const text = write(depthM)
    const { halfWidth } = boxOfText(text, at, FLOOR_LABEL_PX)
    // Near the right wall the text goes to the left, where there is water.
    const side = at[0] + BESIDE_PX + 2 * halfWidth > rightPx - BESIDE_PX ? -1 : 1
    const textAt: Point = [at[0] + side * (BESIDE_PX + halfWidth), at[1]]
    const box = { x: at[0] + side * (halfWidth + 2), y: at[1], halfWidth: halfWidth + 12, halfHeight: 11 }
    return { key, at, textAt, depthM, text, hasCross: true, box }
  }
  if (floor.kind === 'soundings') return floor.points.map(([x, y, depthM], i) => beside(`${i}`, [x, y], depthM))
  if (floor.kind === 'dish') return [beside('dish', floor.centre, floor.depthM)]
  if (floor.kind !== 'contours') return []
  return floor.rings.map(({ path, depthM }, i) => {
    const at = planPx(scene, contourGrip(path, scene.view.turn))
    const text = write(depthM)
    const { halfWidth } = boxOfText(text, at, FLOOR_LABEL_PX)
    const textAt: Point = [at[0] + BESIDE_PX + halfWidth + 3, at[1] - 9]
    return { key: `${i}`, at, textAt, depthM, text, hasCross: false, box: boxOfText(text, textAt, FLOOR_LABEL_PX) }
  })
}
