import type { Axis, Bounds, Floor, Partition, Point, SectionCut } from '../../basin/index.ts'
import { boundsOf, sectionOf } from '../../basin/index.ts'
import type { DerivedBody } from '../../derive/index.ts'
import type { Body } from '../../document/index.ts'
import type { UnitSystem } from '../../units/index.ts'
import { isNarrow, type Panes, toScreen, type View } from './view.ts'

/** All that the drawing is made from. */
export interface Scene {
  readonly body: Body
  readonly derived: DerivedBody
  readonly section: SectionLine
  readonly units: UnitSystem
  readonly canEdit: boolean
  /** Level that is shown: the one looked at, or the body's own [m above the datum]. */
  readonly levelM: number
  readonly view: View
  readonly panes: Panes
  readonly isCoarse: boolean
}

/** The line of the section: the floor's own axis, or, over a floor without one, one laid along its length through the deepest place. */
export interface SectionLine {
  readonly axis: Axis
  readonly isFloors: boolean
}

/** The section line of a body. */
export function sectionLineOf(body: Body): SectionLine {
  if (body.floor.kind === 'profile') return { axis: body.floor.axis, isFloors: true }
  return { axis: axisAlong(boundsOf(body.outline), deepestOf(body.floor)), isFloors: false }
}

/** The place that a section should go through: where the floor says that it is deepest. */
function deepestOf(floor: Floor): Point | undefined {
  if (floor.kind === 'dish') return floor.centre
  // Of soundings the deepest changes as they are taken: the line would leap about.
  if (floor.kind !== 'contours') return undefined
  const deepest = floor.rings.reduce<(typeof floor.rings)[number] | undefined>(
    (a, b) => (a && a.depthM >= b.depthM ? a : b),
    undefined,
  )
  const box = deepest && boundsOf(deepest.path)
  return box && [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
}

/** A line along the longer side of a box, through a place inside it or through its middle. */
function axisAlong(box: Bounds, through: Point | undefined): Axis {
  const within = (value: number | undefined, low: number, high: number) =>
    value === undefined || value <= low || value >= high ? (low + high) / 2 : value
  const x = within(through?.[0], box.minX, box.maxX)
  const y = within(through?.[1], box.minY, box.maxY)
  return box.maxX - box.minX >= box.maxY - box.minY
    ? { from: [box.minX, y], to: [box.maxX, y] }
    : { from: [x, box.minY], to: [x, box.maxY] }
}

export const axisLength = ({ from, to }: Axis): number => Math.hypot(to[0] - from[0], to[1] - from[1])

/** A place on the section line, s metres from A. */
export function pointOnAxis({ from, to }: Axis, sM: number): Point {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  return [from[0] + ((to[0] - from[0]) * sM) / length, from[1] + ((to[1] - from[1]) * sM) / length]
}

/** How far along the section line a place of the plan lies [m from A]. */
export function alongAxis({ from, to }: Axis, [x, y]: Point): number {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  return ((x - from[0]) * (to[0] - from[0]) + (y - from[1]) * (to[1] - from[1])) / length
}

/** How far the section line reaches beyond the walls [px]. */
const BEYOND_PX = 18
const BEYOND_NARROW_PX = 8

let lastCut: { readonly parts: Partition; readonly axis: Axis; readonly cut: SectionCut } | undefined

/** The cut along the section line; asked for by several parts of one picture, and made once. */
export function cutAlong(parts: Partition, axis: Axis): SectionCut {
  if (lastCut?.parts !== parts || lastCut.axis !== axis) lastCut = { parts, axis, cut: sectionOf(parts, axis) }
  return lastCut.cut
}

/** Where the section line leaves the water for good, at both ends [m from A]; nothing where it misses the basin. */
export function axisEnds(scene: Pick<Scene, 'derived' | 'section'>): readonly [fromM: number, toM: number] | undefined {
  const { partition } = scene.derived
  const spans = partition.ok ? cutAlong(partition.value, scene.section.axis).spans : []
  const from = spans[0]?.[0]
  const to = spans.at(-1)?.[1]
  return from === undefined || to === undefined ? undefined : [from, to]
}

/** From where to where the section line is drawn: past its own ends and past the walls [m from A]. */
export function drawnAxis(
  scene: Pick<Scene, 'derived' | 'section' | 'view' | 'panes'>,
): readonly [fromM: number, toM: number] {
  const length = axisLength(scene.section.axis)
  const ends = axisEnds(scene) ?? [0, length]
  const beyond = (isNarrow(scene.panes) ? BEYOND_NARROW_PX : BEYOND_PX) / scene.view.scale
  return [Math.min(0, ends[0] - beyond), Math.max(length, ends[1] + beyond)]
}

/** A place of the plan on the screen [px]. */
export function planPx(scene: Pick<Scene, 'view' | 'panes'>, point: Point): Point {
  return toScreen(scene.view, scene.panes, point)
}
