import type { Point } from '../../basin/index.ts'
import type { Command } from '../../document/index.ts'
import { FEATURES } from '../../features/index.ts'
import { formatQuantity, snapLength, type UnitSystem } from '../../units/index.ts'
import { edits } from '../sheet/edits.ts'
import type { Item } from '../sheet/items.ts'
import type { Remark } from '../sheet/local.ts'
import { pathOfRing } from '../sheet/place-items.ts'
import type { Scene } from '../sheet/scene.ts'
import { dragOnFloor } from './floor-drag.ts'
import { bulgeThrough, directionAt, middleOf, nodesOf, radiusOf, segmentAt, segmentLength } from './nodes.ts'
import { type Neighbour, type Snapped, snapLines, snapPoint } from './snap.ts'

/** What dragging an item to a place comes to: the edit, and what is drawn meanwhile. */
export interface Drag {
  readonly command: Command
  readonly guides: Snapped['guides']
  readonly remarks: readonly Remark[]
}

type Subject = Pick<Scene, 'body' | 'units' | 'section' | 'view'>

const lengthText = (si: number, units: UnitSystem) => formatQuantity('length', si, units)

/** The snapping lines of a node: level and plumb through the others, square and straight to its neighbours. */
function linesFor(subject: Subject, item: Extract<Item, { kind: 'node' }>) {
  const path = pathOfRing(subject, item.ring)
  if (!path) return []
  const nodes = nodesOf(path)
  const count = nodes.length
  const neighbours: Neighbour[] = []
  for (const step of [-1, 1]) {
    const index = (item.node + step + count) % count
    const beyond = segmentAt(path, step < 0 ? (index - 1 + count) % count : index)
    const at = nodes[index]
    const along = beyond && directionAt(beyond, step < 0 ? 'end' : 'start')
    if (at) neighbours.push({ at, along })
  }
  return snapLines(
    nodes.filter((_, i) => i !== item.node),
    neighbours,
  )
}

/** A handle of a curve likes to lie level or plumb of its point, or in line with the straight side before it. */
function snapControl(subject: Subject, item: Extract<Item, { kind: 'control' }>, to: Point, reachM: number): Snapped {
  const path = pathOfRing(subject, item.ring)
  const nodes = path ? nodesOf(path) : []
  const count = nodes.length
  const node = item.which === 'c1' ? item.segment : (item.segment + 1) % count
  const at = nodes[node]
  if (reachM === 0 || !path || !at) return { at: to, guides: [] }
  const other = segmentAt(path, item.which === 'c1' ? (node - 1 + count) % count : node)
  const along = other && !other.c1 ? directionAt(other, item.which === 'c1' ? 'end' : 'start') : undefined
  const lines = snapLines([at], along ? [{ at, along }] : []).filter((line) => line.what !== 'right angle')
  const snapped = snapPoint(to, lines, reachM, subject.units)
  return snapped.guides.length > 0 ? snapped : { at: to, guides: [] }
}

/** The lengths of the sides that meet at a node, written at their middles. */
function sideRemarks(subject: Subject, item: Extract<Item, { kind: 'node' | 'middle' }>): Remark[] {
  const path = pathOfRing(subject, item.ring)
  if (!path) return []
  const count = nodesOf(path).length
  const sides = item.kind === 'node' ? [(item.node - 1 + count) % count, item.node] : [item.segment]
  return sides.flatMap((index) => {
    const segment = segmentAt(path, index)
    return segment ? [{ at: middleOf(path, index), text: lengthText(segmentLength(segment), subject.units) }] : []
  })
}

/** The edit that brings an item to a place of the plan. `reachM` is how near a snapping line draws it, 0 for free. */
export function dragInPlan(subject: Subject, item: Item, to: Point, reachM: number): Drag | undefined {
  const { body, units } = subject
  const isFree = reachM === 0
  const whole: Point = isFree ? to : [snapLength(to[0], units), snapLength(to[1], units)]
  const bare = (command: Command): Drag => ({ command, guides: [], remarks: [] })
  if (item.kind === 'node') {
    const snapped = isFree ? { at: to, guides: [] } : snapPoint(to, linesFor(subject, item), reachM, units)
    const command = edits.movePoint(body.id, item.ring, item.node, snapped.at)
    return { command, guides: snapped.guides, remarks: sideRemarks(subject, item) }
  }
  if (item.kind === 'control') {
    const snapped = snapControl(subject, item, to, reachM)
    const command = edits.moveHandle(body.id, item.ring, item.segment, item.which, snapped.at)
    return { command, guides: snapped.guides, remarks: [] }
  }
  if (item.kind === 'middle') {
    const path = pathOfRing(subject, item.ring)
    const segment = path && segmentAt(path, item.segment)
    if (!segment || segment.c1) return undefined
    const bulge = bulgeThrough(segment.from, segment.to, to)
    const chord = Math.hypot(segment.to[0] - segment.from[0], segment.to[1] - segment.from[1])
    // A hair's bend is meant straight.
    const isStraight = !isFree && Math.abs(bulge) * chord < reachM
    const radius = radiusOf(chord, bulge)
    const text = isStraight ? 'straight' : `radius ${lengthText(radius, units)}`
    const command = edits.setBulge(body.id, item.ring, item.segment, isStraight ? 0 : bulge)
    return { command, guides: [], remarks: [{ at: to, text }] }
  }
  if (item.kind === 'contour' || item.kind === 'sounding' || item.kind === 'dish')
    return dragOnFloor(subject, item, whole)
  if (item.kind === 'axis') return dragAxis(subject, item.end, whole, reachM)
  if (item.kind === 'feature-handle' || item.kind === 'feature') {
    const feature = body.features[item.feature]
    const handles = feature ? (FEATURES.get(feature.kind)?.handles(feature, body.outline) ?? []) : []
    // The first handle of every kind moves the whole.
    const handle = item.kind === 'feature' ? handles[0] : handles.find((h) => h.id === item.handle)
    return feature && handle && bare(edits.setFeature(body.id, item.feature, handle.moveTo(feature, whole)))
  }
  return undefined
}

/** An end of the section line; it likes to be level or plumb. */
function dragAxis(subject: Subject, end: 'from' | 'to', to: Point, reachM: number): Drag {
  const { axis } = subject.section
  const other = end === 'from' ? axis.to : axis.from
  const lines = snapLines([other], [])
  const snapped = reachM === 0 ? { at: to, guides: [] } : snapPoint(to, lines, reachM, subject.units)
  const length = Math.hypot(snapped.at[0] - other[0], snapped.at[1] - other[1])
  return {
    command: edits.moveAxis(subject.body.id, end, snapped.at),
    guides: snapped.guides,
    remarks: [
      { at: [(snapped.at[0] + other[0]) / 2, (snapped.at[1] + other[1]) / 2], text: lengthText(length, subject.units) },
    ],
  }
}

/** The edit that brings a station to a distance and a depth. */
export function dragStation(
  subject: Subject,
  station: number,
  [sM, depthM]: Point,
  isFree: boolean,
): Command | undefined {
  if (subject.body.floor.kind !== 'profile') return undefined
  const whole = (si: number) => (isFree ? si : snapLength(si, subject.units))
  return edits.moveStation(subject.body.id, station, whole(sM), whole(depthM))
}
