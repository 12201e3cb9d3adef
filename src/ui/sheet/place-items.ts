import type { Path, Point } from '../../basin/index.ts'
import { closed, depthToReference, isSmooth, kindOf } from '../../document/index.ts'
import { FEATURES } from '../../features/index.ts'
import type { Selection } from '../../state/index.ts'
import { formatQuantity } from '../../units/index.ts'
import { axisNames } from '../plan/axis-names.ts'
import { controlsAt, middleOf, nodesOf, segmentAt } from '../plan/nodes.ts'
import { handlesShown } from './handles-shown.ts'
import { type Item, keyOf, OUTLINE, type PlacedItem, type Ring, sameRing } from './items.ts'
import { floorItems } from './place-floor-items.ts'
import { axisLength, drawnAxis, planPx, type Scene } from './scene.ts'
import { sectionToScreen, toSheet } from './view.ts'

export function pathOfRing(scene: Pick<Scene, 'body'>, ring: Ring): Path | undefined {
  const { body } = scene
  if (ring.of === 'outline') return body.outline
  if (ring.of === 'island') return body.islands[ring.index]
  return body.floor.kind === 'contours' ? body.floor.rings[ring.index]?.path : undefined
}

/** A place as words: right and up on the sheet, from the plan's own origin. */
export function sayPlace(scene: Pick<Scene, 'view' | 'units'>, point: Point, style: 'short' | 'long' = 'long'): string {
  const [u, v] = toSheet(point, scene.view.turn)
  const say = (si: number) => formatQuantity('length', Math.abs(si), scene.units, { style })
  return `${say(u)} ${u < 0 ? 'left' : 'right'}, ${say(v)} ${v < 0 ? 'down' : 'up'}`
}

const SEGMENT_WORD = { line: 'straight', arc: 'arc', curve: 'curve' } as const

/** A ring in focus shows its control points only where one is being shaped. */
function isShaped(selection: Selection | undefined, ring: Ring, node: number, count: number): boolean {
  if (!selection || !('ring' in selection) || !sameRing(selection.ring, ring)) return false
  if (selection.kind === 'node') return selection.node === node
  return selection.kind === 'segment' && (selection.segment === node || (selection.segment + 1) % count === node)
}

const RING_WORD = { island: 'Island', contour: 'Depth line' } as const

/** The points of a ring, and the handles of what is being shaped. */
export function ringItems(scene: Scene, ring: Ring, path: Path, selection: Selection | undefined): PlacedItem[] {
  const nodes = nodesOf(path)
  const round = closed(path)
  const name = ring.of === 'outline' ? 'Point' : `${RING_WORD[ring.of]} ${ring.index + 1}, point`
  const items: PlacedItem[] = []
  const keys = new Set<string>()
  const add = (item: Item, at: Point, rank: number, label: string) => {
    const key = keyOf(item)
    if (keys.has(key)) return
    keys.add(key)
    items.push({ key, item, at: planPx(scene, at), rank, label })
  }
  const held = selection && 'ring' in selection && sameRing(selection.ring, ring) ? selection : undefined
  const heldNode = held?.kind === 'node' ? held.node : held?.kind === 'segment' ? held.segment : undefined
  const shown = handlesShown(scene, nodes, heldNode)
  nodes.forEach((at, node) => {
    if (shown && !shown.has(node)) return
    const kind = isSmooth(round, node) ? 'smooth' : 'corner'
    const label = `${name} ${node + 1} of ${nodes.length}, ${sayPlace(scene, at)}, ${kind}`
    add({ kind: 'node', ring, node }, at, 1, label)
    if (!isShaped(selection, ring, node, nodes.length)) return
    for (const control of controlsAt(path, node)) {
      const { segment, which } = control
      const says = `Handle of ${name.toLowerCase()} ${node + 1}, ${sayPlace(scene, control.at)}`
      add({ kind: 'control', ring, segment, which }, control.at, 0, says)
    }
  })
  nodes.forEach((_, segment) => {
    if (shown && !shown.has(segment)) return
    const placed = segmentAt(path, segment)
    if (!placed) return
    const kind = kindOf(placed)
    const isSelected = selection?.kind === 'segment' && selection.segment === segment && sameRing(selection.ring, ring)
    if (kind !== 'arc' && !isSelected) return
    const next = ((segment + 1) % nodes.length) + 1
    const label = `Side from point ${segment + 1} to ${next}, ${SEGMENT_WORD[kind]}`
    add({ kind: 'middle', ring, segment }, middleOf(path, segment), 2, label)
  })
  return items
}

function featureItems(scene: Scene, selection: Selection | undefined): PlacedItem[] {
  return scene.body.features.flatMap((feature, index) => {
    const row = FEATURES.get(feature.kind)
    if (!row) return []
    const handles = row.handles(feature, scene.body.outline)
    const numbers = row.fields
      .filter((field) => field.belongsTo?.(feature) ?? true)
      .map((field) => {
        const value = field.get(feature)
        const si = field.isDepth ? depthToReference(scene.body, value) : value
        const text = field.unit === 'm' ? formatQuantity('length', si, scene.units, { style: 'long' }) : `${value}`
        return `${field.label.toLowerCase()} ${text}`
      })
      .join(', ')
    const label = `${row.label} ${index + 1} of ${scene.body.features.length}, ${numbers}`
    const grip = featureGrip(feature, scene.body.outline)
    const own: PlacedItem = {
      key: keyOf({ kind: 'feature', feature: index }),
      item: { kind: 'feature', feature: index },
      at: planPx(scene, seenMiddle(scene, index) ?? grip),
      anchor: planPx(scene, grip),
      rank: 3,
      label,
    }
    if (selection?.kind !== 'feature' || selection.feature !== index) return [own]
    return [
      own,
      ...handles.slice(1).map((handle): PlacedItem => {
        const item: Item = { kind: 'feature-handle', feature: index, handle: handle.id }
        const says = `${row.label} ${index + 1}: ${handle.label}`
        return { key: keyOf(item), item, at: planPx(scene, handle.at(feature)), rank: 0, label: says }
      }),
    ]
  })
}

type AnyFeature = Scene['body']['features'][number]

/** The middle of the largest piece of a feature that shows inside the walls. */
export function seenMiddle({ derived }: Scene, feature: number): Point | undefined {
  if (!derived.partition.ok) return undefined
  const { cells, originX, originY } = derived.partition.value
  const own = cells.filter((cell) => cell.feature === feature)
  const largest = own.reduce<(typeof own)[number] | undefined>((a, b) => (a && a.areaM2 >= b.areaM2 ? a : b), undefined)
  return largest && [largest.centreX + originX, largest.centreY + originY]
}

/** The place by which the whole of a feature is taken hold of: its first handle. */
function featureGrip(feature: AnyFeature, inside: Path): Point {
  return FEATURES.get(feature.kind)?.handles(feature, inside)[0]?.at(feature) ?? inside.start
}

function sectionItems(scene: Scene): PlacedItem[] {
  const { body, section, view, panes } = scene
  if (body.floor.kind !== 'profile') return []
  const { stations } = body.floor
  const say = (si: number) => formatQuantity('length', si, scene.units, { style: 'long' })
  return stations.map(([sM, depthM], station) => {
    const item: Item = { kind: 'station', station }
    const label = `Station ${station + 1} of ${stations.length}, ${say(sM)} from A, ${say(depthToReference(body, depthM))} deep`
    return { key: keyOf(item), item, at: sectionToScreen(view, panes, section.axis.from, [sM, depthM]), rank: 0, label }
  })
}

function axisItems(scene: Scene): PlacedItem[] {
  if (!scene.section.isFloors) return []
  const { axis } = scene.section
  const length = formatQuantity('length', axisLength(axis), scene.units, { style: 'long' })
  const names = axisNames({ axis, drawn: drawnAxis(scene), view: scene.view, panes: scene.panes })
  return (['from', 'to'] as const).map((end) => {
    const item: Item = { kind: 'axis', end }
    const name = end === 'from' ? 'A' : 'A′'
    const label = `End ${name} of the section line, ${sayPlace(scene, axis[end])}; the line is ${length} long`
    return {
      key: keyOf(item),
      item,
      at: names[end === 'from' ? 'a' : 'b'],
      anchor: planPx(scene, axis[end]),
      rank: 0,
      label,
    }
  })
}

/** Everything that can be taken hold of, in the order of the Tab key. */
export function placeItems(scene: Scene, selection: Selection | undefined): PlacedItem[] {
  return [
    ...ringItems(scene, OUTLINE, scene.body.outline, selection),
    ...scene.body.islands.flatMap((island, index) => ringItems(scene, { of: 'island', index }, island, selection)),
    ...floorItems(scene, selection),
    ...sectionItems(scene),
    ...featureItems(scene, selection),
    ...axisItems(scene),
  ]
}
