import type { KeyboardEvent } from 'react'
import type { Point } from '../../basin/index.ts'
import { formatQuantity } from '../../units/index.ts'
import { type FeatureTool, featureFrom, isFeatureTool } from '../plan/feature-drag.ts'
import { nodesOf, segmentAt, segmentLength } from '../plan/nodes.ts'
import { canClose, draftAfter } from '../plan/points-draft.ts'
import { featureShapes } from './feature-shapes.ts'
import { showBench, soundAt, takeBenchSide } from './floor-gestures.ts'
import { addFeature, type Hands, sayFeature } from './gestures.ts'
import { keyOf } from './items.ts'
import { sayPlace } from './place-items.ts'
import { closeDraft } from './place-points.ts'
import { placesPoints } from './presses.ts'
import type { Scene } from './scene.ts'

interface Wiring {
  readonly hands: Hands
  /** Moves the cross hairs by lines of the grid, or finely by steps; brings them to the middle of the paper where there are none. */
  readonly moveCursor: (by: Point, times: number, isFine: boolean) => void
  readonly focus: (key: string | undefined) => void
}

const HERE: Point = [0, 0]

/** Fine steps that a key goes at once. */
export const timesFine = (event: KeyboardEvent): number => (event.shiftKey ? 10 : 1)
const isEnter = (event: KeyboardEvent): boolean => event.key === 'Enter' || event.key === ' '

/** A key for the tool in hand. Answers whether the tool wanted it. */
export function onTool(wiring: Wiring, event: KeyboardEvent, arrow: Point | undefined): boolean {
  const { tool, setTool } = wiring.hands.app.getState()
  if (placesPoints(tool)) return !arrow && onPoints(wiring, event)
  if (tool === 'freehand') {
    // No key draws a loop: it is placed point by point instead.
    if (!isEnter(event)) return false
    setTool('points')
    return onPoints(wiring, event)
  }
  if (tool === 'sounding') return isEnter(event) && sound(wiring)
  if (tool === 'bench') return onBench(wiring, event, arrow)
  return isFeatureTool(tool) && onWall(wiring, tool, event, arrow)
}

/** A tool taken up by keys shows at once where its first Enter acts, and says so. */
export function takeUp(wiring: Wiring): void {
  const { hands, moveCursor } = wiring
  const { local, app } = hands
  const { tool } = app.getState()
  const scene = hands.scene()
  if (tool === 'freehand') {
    local.setState({ spoken: 'A loop is drawn with a pointer. Enter places points instead.' })
  } else if (tool === 'bench') {
    if (scene?.canEdit) toSide(hands, scene, 0)
  } else if (local.getState().draft.points.length === 0) {
    moveCursor(HERE, 0, false)
    if (isFeatureTool(tool) && scene?.canEdit) showOnWall(hands, scene, tool)
    const does =
      tool === 'sounding' ? 'asks for the depth' : isFeatureTool(tool) ? 'begins at the wall' : 'places a point'
    local.setState(({ spoken }) => ({ spoken: `Cross hairs at ${spoken}. Arrows move them, Enter ${does}.` }))
  }
}

function onPoints({ hands, moveCursor }: Wiring, event: KeyboardEvent): boolean {
  const { local } = hands
  const say = (spoken: string) => local.setState({ spoken })
  // After a press there are no cross hairs: Enter places at those that it brings.
  if (isEnter(event) && !local.getState().cursor) moveCursor(HERE, 0, false)
  const { draft, cursor } = local.getState()
  if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) closeDraft(hands)
  else if (isEnter(event) && cursor) {
    if (isOnCursor(draft.points[0]?.at, cursor) && canClose(draft)) closeDraft(hands)
    else if (isOnCursor(draft.points.at(-1)?.at, cursor) && canClose(draft)) closeDraft(hands)
    else if (isOnCursor(draft.points.at(-1)?.at, cursor)) say('This point is placed already. Arrows go on to the next.')
    else {
      const next = draftAfter(draft, { do: 'drop', at: cursor })
      local.setState({ draft: next, remarks: [{ at: cursor, text: `point ${next.points.length}` }] })
      const place = sayPlace({ view: hands.look().view, units: hands.app.getState().settings.units }, cursor)
      say(`Point ${next.points.length} placed: ${place}.${canClose(next) ? ' Enter again closes the outline.' : ''}`)
    }
  } else if (event.key === 'c' || event.key === 'C') {
    const next = draftAfter(draft, { do: 'toggle' })
    local.setState({ draft: next })
    say(next.isSmooth ? 'Smooth.' : 'Corner.')
  } else if (event.key === 'Backspace' || event.key === 'Delete') {
    local.setState({ draft: draftAfter(draft, { do: 'remove-last' }) })
    say('Last point removed.')
  } else if (event.key === 'Escape') {
    local.setState({ draft: draftAfter(draft, { do: 'start-over' }), cursor: undefined, remarks: [] })
    hands.app.getState().setTool('select')
    say('Placing points cancelled.')
  } else return false
  return true
}

function isOnCursor(point: Point | undefined, cursor: Point): boolean {
  return !!point && point[0] === cursor[0] && point[1] === cursor[1]
}

function sound({ hands, moveCursor }: Wiring): boolean {
  if (!hands.local.getState().cursor) moveCursor(HERE, 0, false)
  const { cursor } = hands.local.getState()
  if (cursor) soundAt(hands, cursor)
  return true
}

/** Arrows walk round the outline side by side; Enter begins the bench there and, further on, ends it. */
function onBench(wiring: Wiring, event: KeyboardEvent, arrow: Point | undefined): boolean {
  const { hands } = wiring
  const { local } = hands
  const { benchAt, benchFrom } = local.getState()
  const scene = hands.scene()
  if (!scene?.canEdit) return false
  if (event.key === 'Escape' && benchFrom !== undefined) {
    local.setState({ benchFrom: undefined, ghost: [], spoken: 'Bench not begun. Choose a side.' })
    return true
  }
  if (!arrow && !isEnter(event)) return false
  if (arrow) toSide(hands, scene, arrow[0] - arrow[1])
  else {
    takeBenchSide(hands, scene, benchAt ?? benchFrom ?? 0, 'Arrows go on to where it ends, Enter places it.')
    focusNew(wiring, scene)
  }
  return true
}

/** Goes on by sides of the outline and shows the bench as it would be; the first time it comes to where one is begun. */
function toSide(hands: Hands, scene: Scene, by: number): void {
  const { benchAt, benchFrom } = hands.local.getState()
  const count = nodesOf(scene.body.outline).length
  const first = benchFrom ?? 0
  const side = benchAt === undefined && benchFrom === undefined ? first : ((benchAt ?? first) + by + count) % count
  hands.local.setState({ benchAt: side, spoken: saySide(scene, side, count, benchFrom) })
  showBench(hands, scene, benchFrom ?? side, side)
}

function saySide({ body, units }: Scene, side: number, count: number, from: number | undefined): string {
  const segment = segmentAt(body.outline, side)
  const long = segment ? `, ${formatQuantity('length', segmentLength(segment), units, { style: 'long' })} long` : ''
  const next = from === undefined ? 'Enter begins the bench here.' : `Bench from side ${from + 1}. Enter ends it here.`
  return `Side ${side + 1} of ${count}${long}. ${next}`
}

/** Enter begins at the wall nearest to the cross hairs, arrows draw the feature out, Enter places it. */
function onWall(wiring: Wiring, tool: FeatureTool, event: KeyboardEvent, arrow: Point | undefined): boolean {
  const { hands, moveCursor } = wiring
  const { local } = hands
  const scene = hands.scene()
  if (!scene?.canEdit) return false
  const { wallFrom } = local.getState()
  if (event.key === 'Escape' && wallFrom) {
    local.setState({ wallFrom: undefined, ghost: [], remarks: [], spoken: 'Not begun. Choose a place.' })
    return true
  }
  if (!arrow && !isEnter(event)) return false
  if (arrow) {
    // Features are smaller than the grid.
    moveCursor(arrow, timesFine(event), true)
    showOnWall(hands, scene, tool)
    return true
  }
  if (!local.getState().cursor) {
    moveCursor(HERE, 0, false)
    showOnWall(hands, scene, tool)
  }
  const { cursor } = local.getState()
  if (!wallFrom) {
    local.setState({
      wallFrom: cursor,
      spoken:
        'Begun at the wall nearest to here. Arrows draw it out, Enter places it; Enter now places one of usual size.',
    })
    return true
  }
  const feature = made(hands, scene, tool)
  local.setState({ wallFrom: undefined, cursor: undefined, ghost: [], remarks: [] })
  if (feature) addFeature(hands, feature)
  focusNew(wiring, scene)
  return true
}

/** The feature as it would be: of usual size until it has been drawn out. */
function made({ local }: Hands, scene: Scene, tool: FeatureTool) {
  const { wallFrom, cursor } = local.getState()
  const from = wallFrom ?? cursor
  if (!from) return undefined
  const { partition } = scene.derived
  const parts = partition.ok ? partition.value : undefined
  const to = wallFrom && cursor && !isOnCursor(wallFrom, cursor) ? cursor : undefined
  return featureFrom({ outline: scene.body.outline, parts, units: scene.units }, tool, from, to)
}

function showOnWall(hands: Hands, scene: Scene, tool: FeatureTool): void {
  const { local } = hands
  const { wallFrom, cursor } = local.getState()
  const feature = made(hands, scene, tool)
  if (!feature || !cursor) return
  local.setState({
    ghost: featureShapes(feature, scene.body.outline),
    remarks: [{ at: cursor, text: sayFeature(feature, scene) }],
    ...(wallFrom ? { spoken: sayFeature(feature, scene) } : {}),
  })
}

/** What has just been placed gets the keyboard's focus, once it is drawn. */
function focusNew({ hands, focus }: Wiring, before: Scene): void {
  const feature = before.body.features.length
  requestAnimationFrame(() => {
    if ((hands.scene()?.body.features.length ?? 0) > feature) focus(keyOf({ kind: 'feature', feature }))
  })
}
