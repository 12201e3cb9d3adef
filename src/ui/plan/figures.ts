import { type ContourLine, contoursOf, depthAt, nearestOn, type Partition, type Point } from '../../basin/index.ts'
import { drawnChordM } from '../../derive/index.ts'
import { fromScreen, type Panes, toScreen, type View } from '../sheet/view.ts'
import { type Box, boxOfText, placeLabels, placesOnLine } from './labels.ts'
import { placeSoundings, type ScreenBox, type Sounding, type Spot } from './soundings.ts'

export interface FiguresInput {
  readonly parts: Partition
  readonly depthsM: readonly number[]
  readonly view: View
  readonly panes: Panes
  /** Depth from the datum → as it is written. */
  readonly write: (depthM: number) => string
  readonly writeContour: (depthM: number) => string
  /** What figures must keep off: handles, the section line's names [px]. */
  readonly taken: readonly Box[]
  readonly sizePx: number
}

export interface ContourLabel {
  readonly at: Point
  readonly text: string
  readonly depthM: number
  readonly box: Box
}

const CONTOUR_SIZE_PX = 10.5

/** The box around points, however many: a stroke may have more than a call takes arguments. */
export function boxAround(points: readonly Point[]): ScreenBox {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity }
  for (const [x, y] of points) {
    box.minX = Math.min(box.minX, x)
    box.minY = Math.min(box.minY, y)
    box.maxX = Math.max(box.maxX, x)
    box.maxY = Math.max(box.maxY, y)
  }
  return box
}

/** The shelves and treads of a partition, on the screen. */
function spotsOf(input: FiguresInput): Spot[] {
  const { parts, view, panes } = input
  const on = (x: number, y: number) => toScreen(view, panes, [x + parts.originX, y + parts.originY])
  return parts.cells
    .filter((cell) => cell.feature >= 0)
    .map((cell) => ({
      feature: cell.feature,
      depthM: (cell.minDepthM + cell.maxDepthM) / 2,
      areaM2: cell.areaM2,
      middle: on(cell.centreX, cell.centreY),
      box: boxAround([on(cell.minX, cell.minY), on(cell.maxX, cell.maxY)]),
    }))
}

/** A contour that climbs a cove hugs the wall: a label there would lie on the outline [px]. */
const OFF_WALL_PX = 15

function isOffWall({ parts, view, panes }: FiguresInput, at: Point): boolean {
  const [x, y] = fromScreen(view, panes, at)
  return nearestOn(parts.shape.outline, x, y).distanceM * view.scale > OFF_WALL_PX
}

/** Labels of the contour lines: one on each, two on a long one. */
function contourLabels(input: FiguresInput, lines: readonly ContourLine[]): ContourLabel[] {
  const labels: ContourLabel[] = []
  for (const line of lines) {
    const text = input.writeContour(line.depthM)
    const drawn = line.points.map((p) => toScreen(input.view, input.panes, p))
    const places = placesOnLine(drawn, text.length * 6 + 8).filter((at) => isOffWall(input, at))
    const candidates = places.map((at) => {
      return { at, text, depthM: line.depthM, box: boxOfText(text, at, CONTOUR_SIZE_PX) }
    })
    const taken = [...input.taken, ...labels.map((label) => label.box)]
    const first = placeLabels(candidates, taken)[0]
    if (first) labels.push(first)
  }
  return labels
}

/** All figures of depth in the plan: labels of contour lines, then soundings between them. */
export function figuresOf(input: FiguresInput): {
  readonly contours: readonly ContourLabel[]
  readonly soundings: readonly Sounding[]
} {
  const { parts, view, panes } = input
  const contours = contourLabels(input, contoursOf(parts, input.depthsM, drawnChordM(parts)))
  const nodes: Point[] = []
  for (let i = 0; i < parts.nodeX.length; i++) {
    nodes.push(toScreen(view, panes, [(parts.nodeX[i] ?? 0) + parts.originX, (parts.nodeY[i] ?? 0) + parts.originY]))
  }
  const whole = nodes.length === 0 ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : boxAround(nodes)
  // Of a drawing larger than the paper only what is in sight gets figures.
  const box = {
    minX: Math.max(whole.minX, 0),
    minY: Math.max(whole.minY, 0),
    maxX: Math.min(whole.maxX, panes.width),
    maxY: Math.min(whole.maxY, panes.planHeight),
  }
  const apartPx = Math.min(150, Math.max(58, (box.maxX - box.minX) / 6))
  const soundings = placeSoundings({
    box,
    spots: spotsOf(input),
    sample: (screen) => {
      const [x, y] = fromScreen(view, panes, screen)
      return depthAt(parts, x, y)
    },
    write: input.write,
    taken: [...input.taken, ...contours.map((label) => label.box)],
    sizePx: input.sizePx,
    apartPx,
  })
  return { contours, soundings }
}
