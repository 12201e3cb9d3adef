import { fitLoop, type Path, type Point } from '../../basin/index.ts'
import { FEATURES } from '../../features/index.ts'
import type { AppStore } from '../../state/index.ts'
import { formatQuantity, snapLength } from '../../units/index.ts'
import { dragInPlan, dragStation } from '../plan/edit.ts'
import { type FeatureTool, featureFrom } from '../plan/feature-drag.ts'
import { boxAround } from '../plan/figures.ts'
import { distanceToLine, hitTarget, reachOf } from '../plan/hit.ts'
import { snapLines, snapPoint } from '../plan/snap.ts'
import { untangledStroke } from '../plan/untangled-stroke.ts'
import { edits } from './edits.ts'
import { featureShapes } from './feature-shapes.ts'
import { type PlacedItem, selectionOf } from './items.ts'
import type { LocalStore } from './local.ts'
import { sideAt } from './pick.ts'
import { planPx, type Scene } from './scene.ts'
import type { Gesture, Press } from './usePointerGestures.ts'
import { fromScreen, type Panes, sectionFromScreen, sectionToScreen, type View } from './view.ts'

/** What a gesture works with; `scene` is read anew at each step, for the drawing changes under it. */
export interface Hands {
  readonly app: AppStore
  readonly local: LocalStore
  readonly look: () => { readonly view: View; readonly panes: Panes }
  readonly scene: () => Scene | undefined
  readonly items: () => readonly PlacedItem[]
  /** A name for one drag, so that it becomes one step of undo. */
  readonly gestureName: () => string
}

/** How near a line draws a dragged point [px]. */
const SNAP_PX = 8
/** Nothing left of a loop that was drawn. */
export const NO_STROKE = { stroke: [], untangled: undefined } as const
const NO_MARKS = { guides: [], remarks: [], grabbed: undefined, ghost: [], stroke: [] } as const

/** The item under a press. */
export function itemAt(hands: Hands, press: Press): PlacedItem | undefined {
  const id = hitTarget(
    hands.items().map((placed) => ({ id: placed, at: placed.at, rank: placed.rank })),
    press.at,
    reachOf(press.pointerType),
  )
  return id?.id
}

/** Drags an item; the whole drag is one step of undo, and breaking it off takes it back. */
export function grab(hands: Hands, placed: PlacedItem, press: Press): Gesture {
  const { app, local } = hands
  const { item } = placed
  const mergeKey = hands.gestureName()
  const anchor = placed.anchor ?? placed.at
  const offset: Point = [anchor[0] - press.at[0], anchor[1] - press.at[1]]
  let isEdited = false
  const bodyId = hands.scene()?.body.id ?? ''
  app.getState().select(selectionOf(item, bodyId))
  const move = (now: Press) => {
    const scene = hands.scene()
    if (!scene?.canEdit) return
    const { view, panes } = hands.look()
    const at: Point = [now.at[0] + offset[0], now.at[1] + offset[1]]
    local.setState({ grabbed: placed.key })
    if (item.kind === 'station') {
      const place = sectionFromScreen(view, panes, scene.section.axis.from, at)
      const command = dragStation(scene, item.station, place, now.isFree)
      if (command) app.getState().dispatch(command, { mergeKey })
    } else {
      const drag = dragInPlan(scene, item, fromScreen(view, panes, at), now.isFree ? 0 : SNAP_PX / view.scale)
      if (!drag) return
      app.getState().dispatch(drag.command, { mergeKey })
      local.setState({ guides: drag.guides, remarks: drag.remarks })
    }
    isEdited = true
  }
  return {
    move,
    end: () => local.setState(NO_MARKS),
    cancel: () => {
      local.setState(NO_MARKS)
      if (isEdited) app.getState().undo()
    },
  }
}

/** A loop drawn with the pointer becomes an outline of few smooth points; it is a sketch until two lengths are known. */
export function freehand(hands: Hands, press: Press): Gesture {
  return loopGesture(hands, press, 'Keep the pointer down and go once around the pool.', (path) =>
    giveOutline(hands, path),
  )
}

/** Makes the pool of a line that was drawn around it. */
export function giveOutline({ app, local }: Pick<Hands, 'app' | 'local'>, outline: Path): void {
  if (app.getState().dispatch(edits.draw(outline, app.getState()))) return
  app.getState().setTool('select')
  local.setState({ spoken: 'Outline drawn. It is a sketch until its size is said.' })
}

/** How far the outline may lie from the line that was drawn, as a share of its size: what a hand trembles, no bend that it means. */
export const STROKE_FIT = 0.006

/** A stroke that follows the pointer; let go, it is handed on as a loop of few smooth points. */
export function loopGesture(hands: Hands, press: Press, howTo: string, give: (loop: Path) => void): Gesture {
  const { app, local } = hands
  const at = (p: Press) => fromScreen(hands.look().view, hands.look().panes, p.at)
  let stroke: Point[] = [at(press)]
  local.setState({ stroke })
  return {
    move: (now) => {
      const point = at(now)
      const last = stroke.at(-1)
      if (last && Math.hypot(point[0] - last[0], point[1] - last[1]) * hands.look().view.scale < 3) return
      stroke = [...stroke, point]
      local.setState({ stroke })
    },
    end: () => {
      local.setState({ stroke: [] })
      const { minX, minY, maxX, maxY } = boxAround(stroke)
      const size = Math.hypot(maxX - minX, maxY - minY)
      if (stroke.length < 8 || size * hands.look().view.scale < 40) {
        app.getState().notify({ tone: 'info', text: howTo })
        return
      }
      const fitted = fitLoop(stroke, size * STROKE_FIT)
      if (fitted.ok) {
        give(fitted.value)
        return
      }
      const { code, what, hint } = fitted.problem
      const free = code === 'loop-crosses-itself' ? untangledStroke(stroke, size, size * STROKE_FIT) : undefined
      // The strip says it then, beside the button that takes the line.
      if (free) local.setState({ stroke, untangled: free, spoken: `${what} A line free of itself is offered.` })
      app.getState().notify(free ? undefined : { tone: 'problem', text: what, hint })
    },
    cancel: () => local.setState({ stroke: [] }),
  }
}

/** Drags a shelf or steps out from the wall; a mere press places one of usual size. */
export function placeFeature(hands: Hands, tool: FeatureTool, press: Press): Gesture {
  const { local } = hands
  const from = fromScreen(hands.look().view, hands.look().panes, press.at)
  const made = (to: Point | undefined) => {
    const scene = hands.scene()
    if (!scene) return undefined
    const { partition } = scene.derived
    const parts = partition.ok ? partition.value : undefined
    return featureFrom({ outline: scene.body.outline, parts, units: scene.units }, tool, from, to)
  }
  return {
    move: (now) => {
      const scene = hands.scene()
      const to = fromScreen(hands.look().view, hands.look().panes, now.at)
      const feature = made(to)
      if (!scene || !feature) return
      local.setState({
        ghost: featureShapes(feature, scene.body.outline),
        remarks: [{ at: to, text: sayFeature(feature, scene) }],
      })
    },
    end: (now, hasMoved) => {
      local.setState(NO_MARKS)
      const feature = made(hasMoved ? fromScreen(hands.look().view, hands.look().panes, now.at) : undefined)
      if (feature) addFeature(hands, feature)
    },
    cancel: () => local.setState(NO_MARKS),
  }
}

type AnyFeature = Scene['body']['features'][number]

/** Adds a feature and takes hold of it. */
export function addFeature(hands: Pick<Hands, 'app' | 'local' | 'scene'>, feature: AnyFeature): void {
  const scene = hands.scene()
  if (!scene || hands.app.getState().dispatch(edits.addFeature(scene.body.id, feature))) return
  hands.app.getState().setTool('select')
  hands.app.getState().select({ kind: 'feature', bodyId: scene.body.id, feature: scene.body.features.length })
  const label = FEATURES.get(feature.kind)?.label ?? 'Feature'
  hands.local.setState({ spoken: `${label} placed: ${sayFeature(feature, scene)}.` })
}

/** The numbers of a feature in one line, for while it is dragged. */
export function sayFeature(feature: AnyFeature, { units }: Scene): string {
  const say = (si: number) => formatQuantity('length', si, units)
  if ('fromDepthM' in feature) return `${say(feature.fromDepthM)} to ${say(feature.toDepthM)} deep`
  if (!('treads' in feature)) return `${say(feature.depthM)} deep`
  const [first, second] = feature.treads
  const riser = first?.[1] ?? 0
  const tread = second && first ? second[0] - first[0] : 0
  const count = feature.treads.length
  const treads = count === 1 ? '1 tread' : `${count} treads${tread > 0 ? ` of ${say(tread)}` : ''}`
  return `${treads}, drop ${say(riser)}`
}

/** A double press: a new point on a side, a new station in the section. */
export function insertAt(hands: Hands, press: Press): void {
  const scene = hands.scene()
  if (!scene?.canEdit) return
  const { app } = hands
  const { view, panes, body } = scene
  if (press.at[1] <= panes.planHeight) {
    const side = sideAt(scene, fromScreen(view, panes, press.at), reachOf(press.pointerType) / view.scale)
    if (!side || side.t < 1e-3 || side.t > 1 - 1e-3) return
    if (app.getState().dispatch(edits.insertPoint(body.id, side.ring, side.segment, side.t))) return
    app.getState().select({ kind: 'node', bodyId: body.id, ring: side.ring, node: side.segment + 1 })
    return
  }
  if (body.floor.kind !== 'profile') return
  const bed = body.floor.stations.map((s) => sectionToScreen(view, panes, scene.section.axis.from, [s[0], s[1]]))
  const [sM] = sectionFromScreen(view, panes, scene.section.axis.from, press.at)
  if (bed.length > 1 && distanceToLine(bed, press.at, false) > 40) return
  addStation(hands, scene, snapLength(sM, scene.units))
}

/** A new station on the floor as it is. */
export function addStation(hands: Pick<Hands, 'app'>, scene: Scene, sM: number): void {
  const { body } = scene
  if (body.floor.kind !== 'profile') return
  if (hands.app.getState().dispatch(edits.addStation(body.id, sM))) return
  const station = body.floor.stations.filter(([s]) => s < sM).length
  hands.app.getState().select({ kind: 'station', bodyId: body.id, station })
}

/** Where a point that is being placed comes to rest: level, plumb or square to the points before it. */
export function restingPlace(hands: Hands, press: Press) {
  const { view, panes } = hands.look()
  const raw = fromScreen(view, panes, press.at)
  if (press.isFree) return { at: raw, guides: [] }
  const { points } = hands.local.getState().draft
  const last = points.at(-1)?.at
  const before = points.at(-2)?.at
  const length = last && before ? Math.hypot(last[0] - before[0], last[1] - before[1]) : 0
  const along: Point | undefined =
    last && before && length > 0 ? [(last[0] - before[0]) / length, (last[1] - before[1]) / length] : undefined
  const lines = snapLines(
    points.map((p) => p.at),
    last ? [{ at: last, along }] : [],
  )
  return snapPoint(raw, lines, SNAP_PX / view.scale, hands.app.getState().settings.units)
}

/** Whether a press is on the first of the points that are being placed: that closes them. */
export function isOnFirst(hands: Hands, press: Press): boolean {
  const first = hands.local.getState().draft.points[0]
  if (!first) return false
  const [x, y] = planPx(hands.look(), first.at)
  return Math.hypot(x - press.at[0], y - press.at[1]) <= reachOf(press.pointerType) + 2
}
