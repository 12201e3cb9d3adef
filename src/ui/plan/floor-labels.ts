import { depthAt, type Point } from '../../basin/index.ts'
import { contourGrip } from '../sheet/place-floor-items.ts'
import { planPx, type Scene } from '../sheet/scene.ts'
import { fromScreen, isNarrow } from '../sheet/view.ts'
import { type Box, boxesTouch, boxOfText } from './labels.ts'

/** A depth that somebody gave to a place, written beside it. */
export interface FloorLabel {
  readonly key: string
  /** The place itself, and the middle of the text [px]; no text where there is no room for it. */
  readonly at: Point
  readonly textAt: Point | undefined
  readonly text: string
  readonly sizePx: number
  /** Depths that are seen under the cross and under the text: a shelf may lie over the floor [m]. */
  readonly groundM: number
  readonly underTextM: number
  /** A cross at the place, as a surveyor marks it. */
  readonly hasCross: boolean
  /** What other figures keep off [px]. */
  readonly box: Box
}

const [SIZE_PX, NARROW_SIZE_PX] = [13, 11]
const CROSS_PX = 5.5
/** Text stands this far beside a cross [px]. */
const BESIDE_PX = 9

/** Where text may stand about a cross, best first: across and up, in parts of its distance. */
const ABOUT_CROSS: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -0.8],
  [1, 0.8],
  [-1, -0.8],
  [-1, 0.8],
]
/** About the handle of a line: beside the line, not on it. */
const ABOUT_LINE: readonly Point[] = [
  [1.3, -0.7],
  [1.3, 0.7],
  [-1.3, -0.7],
  [-1.3, 0.7],
]

interface Given {
  readonly key: string
  readonly place: Point
  readonly depthM: number
  readonly hasCross: boolean
}

/** The depths that a floor is given by, where they are written in the plan; no two of them lie on one another. */
export function floorLabels(
  scene: Pick<Scene, 'body' | 'derived' | 'view' | 'panes'>,
  write: (depthM: number) => string,
): readonly FloorLabel[] {
  const { view, panes, derived } = scene
  const sizePx = isNarrow(panes) ? NARROW_SIZE_PX : SIZE_PX
  const parts = derived.partition.ok ? derived.partition.value : undefined
  const seen = (at: Point): number | undefined => {
    const [x, y] = fromScreen(view, panes, at)
    return parts && depthAt(parts, x, y)?.depthM
  }
  const given = givenDepths(scene)
  const places = given.map(({ place }) => planPx(scene, place))
  const crosses = places.map(([x, y]): Box => ({ x, y, halfWidth: CROSS_PX, halfHeight: CROSS_PX }))
  const written: Box[] = []
  return given.map(({ key, depthM, hasCross }, i) => {
    const at = places[i] as Point
    const cross = crosses[i] as Box
    const text = write(depthM)
    const { halfWidth, halfHeight } = boxOfText(text, at, sizePx)
    const boxes = (hasCross ? ABOUT_CROSS : ABOUT_LINE).map(([across, down]): Box => {
      const x = at[0] + across * (BESIDE_PX + halfWidth)
      return { x, y: at[1] + down * (CROSS_PX + halfHeight + 0.5), halfWidth, halfHeight }
    })
    const free = boxes.filter((box) => ![...written, ...crosses].some((other) => boxesTouch(box, other)))
    // Where there is water on both sides of the text, it isn't crossed by the wall.
    const inWater = free.find(({ x, y }) => [x - halfWidth, x + halfWidth].every((end) => seen([end, y]) !== undefined))
    const box = inWater ?? (parts && hasCross ? undefined : free[0])
    const textAt: Point | undefined = box && [box.x, box.y]
    if (box) written.push(box)
    return {
      key,
      at,
      textAt,
      text,
      sizePx,
      groundM: seen(at) ?? depthM,
      underTextM: (textAt && seen(textAt)) ?? depthM,
      hasCross,
      box: box ? around(box, cross) : cross,
    }
  })
}

function givenDepths({ body, view }: Pick<Scene, 'body' | 'view'>): Given[] {
  const { floor } = body
  if (floor.kind === 'soundings')
    return floor.points.map(([x, y, depthM], i) => ({ key: `${i}`, place: [x, y], depthM, hasCross: true }))
  if (floor.kind === 'dish') return [{ key: 'dish', place: floor.centre, depthM: floor.depthM, hasCross: true }]
  if (floor.kind !== 'contours') return []
  return floor.rings.map(({ path, depthM }, i) => {
    return { key: `${i}`, place: contourGrip(path, view.turn), depthM, hasCross: false }
  })
}

function around(a: Box, b: Box): Box {
  const low = [
    Math.min(a.x - a.halfWidth, b.x - b.halfWidth),
    Math.min(a.y - a.halfHeight, b.y - b.halfHeight),
  ] as const
  const high = [
    Math.max(a.x + a.halfWidth, b.x + b.halfWidth),
    Math.max(a.y + a.halfHeight, b.y + b.halfHeight),
  ] as const
  return {
    x: (low[0] + high[0]) / 2,
    y: (low[1] + high[1]) / 2,
    halfWidth: (high[0] - low[0]) / 2,
    halfHeight: (high[1] - low[1]) / 2,
  }
}
