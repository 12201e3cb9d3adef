import { type KeyboardEvent, useRef } from 'react'
import { depthAt, type Point } from '../../basin/index.ts'
import { depthToReference } from '../../document/index.ts'
import { displayStep, formatQuantity, formatSlope, type UnitSystem } from '../../units/index.ts'
import { dragInPlan, dragStation } from '../plan/edit.ts'
import { edits } from './edits.ts'
import { addStation, type Hands } from './gestures.ts'
import { gridStep, movedInSheet, onGrid } from './grid.ts'
import { type Item, keyOf, type PlacedItem, selectionOf } from './items.ts'
import { sayPlace } from './place-items.ts'
import { placesPoints } from './presses.ts'
import { removalOf } from './removal.ts'
import { alongAxis } from './scene.ts'
import { onTool, takeUp, timesFine } from './tool-keys.ts'
import type { SheetView } from './useSheetView.ts'
import { fromScreen, fromSheet, toScreen, toSheet } from './view.ts'

/** Presses of an arrow key that follow each other faster than this are one step of undo [ms]. */
const BURST_MS = 1200
const ZOOM_STEP = 1.25

const ARROWS: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** The same by whole pages. */
const PAGES: Readonly<Record<string, Point>> = { PageUp: [0, 1], PageDown: [0, -1] }
/** Lines of the grid that Shift, or a page, goes at once. */
const FAR = 5

interface Wiring {
  readonly hands: Hands
  readonly view: SheetView
  /** Puts the keyboard's focus on an item of the drawing, or on the drawing itself. */
  readonly focus: (key: string | undefined) => void
  readonly focusFields: () => void
}

interface SheetKeys {
  readonly onKeyDown: (event: KeyboardEvent) => void
  /** Shows where the first Enter of the tool in hand acts. */
  readonly onTakenUp: () => void
}

/** The drawing by keyboard: move what has the focus, walk from item to item, place points, look at depths, zoom. */
export function useSheetKeys({ hands, view, focus, focusFields }: Wiring): SheetKeys {
  const burst = useRef({ key: '', name: '', time: 0 })

  const step = () => displayStep('length', hands.app.getState().settings.units)
  const say = (spoken: string) => hands.local.setState({ spoken })

  const nudge = (placed: PlacedItem, [du, dv]: Point, times: number, time: number) => {
    const scene = hands.scene()
    if (!scene?.canEdit) return
    const { app } = hands
    if (burst.current.key !== placed.key || time - burst.current.time > BURST_MS)
      burst.current = { key: placed.key, name: hands.gestureName(), time }
    burst.current.time = time
    const mergeKey = burst.current.name
    const by = step() * times
    if (placed.item.kind === 'station' && scene.body.floor.kind === 'profile') {
      const station = scene.body.floor.stations[placed.item.station]
      if (!station) return
      const to: Point = [station[0] + du * by, station[1] - dv * by]
      const command = dragStation(scene, placed.item.station, to, true)
      if (command) app.getState().dispatch(command, { mergeKey })
      sayMoved(placed.key)
      return
    }
    const { view: seen, panes } = hands.look()
    const [dx, dy] = fromSheet([du * by, dv * by], seen.turn)
    const [x, y] = fromScreen(seen, panes, placed.anchor ?? placed.at)
    const drag = dragInPlan(scene, placed.item, [x + dx, y + dy], 0)
    if (drag) app.getState().dispatch(drag.command, { mergeKey })
    sayMoved(placed.key)
  }

  /** Where what was moved is now, once it is drawn there. */
  const sayMoved = (key: string) => {
    requestAnimationFrame(() => {
      const placed = hands.items().find((each) => each.key === key)
      if (!placed) return
      const { view: seen, panes } = hands.look()
      const { units } = hands.app.getState().settings
      const at = fromScreen(seen, panes, placed.anchor ?? placed.at)
      say(placed.item.kind === 'station' ? placed.label : sayPlace({ view: seen, units }, at))
    })
  }

  const remove = (item: Item) => {
    const scene = hands.scene()
    if (!scene?.canEdit) return
    const { dispatch, select } = hands.app.getState()
    const { id } = scene.body
    const command = removalOf(item, id)
    if (!command || dispatch(command)) return
    select(undefined)
    focus(undefined)
    say('Removed.')
  }

  const insert = (item: Item) => {
    const scene = hands.scene()
    if (!scene?.canEdit) return
    const { dispatch, select } = hands.app.getState()
    if (item.kind === 'station' && scene.body.floor.kind === 'profile') {
      const { stations } = scene.body.floor
      const here = stations[item.station]
      const next = stations[item.station + 1] ?? stations[item.station - 1]
      if (here && next) addStation(hands, scene, (here[0] + next[0]) / 2)
      return
    }
    if (item.kind !== 'node' && item.kind !== 'middle') return
    const segment = item.kind === 'node' ? item.node : item.segment
    if (dispatch(edits.insertPoint(scene.body.id, item.ring, segment, 0.5))) return
    const added: Item = { kind: 'node', ring: item.ring, node: segment + 1 }
    select(selectionOf(added, scene.body.id))
    requestAnimationFrame(() => focus(keyOf(added)))
  }

  const shape = (item: Item, key: string) => {
    const scene = hands.scene()
    if (!scene?.canEdit) return
    const { dispatch } = hands.app.getState()
    const { id } = scene.body
    if (item.kind === 'node' && key === 'c') {
      const placed = hands.items().find((p) => p.key === keyOf(item))
      const kind = placed?.label.endsWith('smooth') ? 'corner' : 'smooth'
      dispatch(edits.setPointKind(id, item.ring, item.node, kind))
      say(`Point is ${kind === 'smooth' ? 'smooth' : 'a corner'}.`)
    }
    if (item.kind !== 'node' && item.kind !== 'middle') return
    const kind = key === 'l' ? 'line' : key === 'a' ? 'arc' : key === 'b' ? 'curve' : undefined
    const segment = item.kind === 'node' ? item.node : item.segment
    if (kind) dispatch(edits.setSegmentKind(id, item.ring, segment, kind))
  }

  const onItem = (event: KeyboardEvent, placed: PlacedItem): boolean => {
    const { item } = placed
    const arrow = ARROWS[event.key]
    if (arrow) nudge(placed, arrow, event.shiftKey ? 10 : 1, event.timeStamp)
    else if (event.key === 'Delete' || event.key === 'Backspace') remove(item)
    else if (event.key === 'i' || event.key === 'I' || event.key === 'Insert') insert(item)
    else if (/^[clab]$/i.test(event.key)) shape(item, event.key.toLowerCase())
    else if (event.key === 'Enter' || event.key === ' ') focusFields()
    else if (event.key === 'Escape') {
      hands.app.getState().select(undefined)
      focus(undefined)
    } else if (event.key === 'Tab' || event.key === 'Home' || event.key === 'End') return walk(event, placed.key)
    else return false
    return true
  }

  const walk = (event: KeyboardEvent, from: string): boolean => {
    const stops = hands.items().filter((p) => p.item.kind !== 'control' && p.item.kind !== 'feature-handle')
    const all = hands.items().some((p) => p.key === from && !stops.includes(p)) ? hands.items() : stops
    const at = all.findIndex((p) => p.key === from)
    const to = event.key === 'Home' ? 0 : event.key === 'End' ? all.length - 1 : at + (event.shiftKey ? -1 : 1)
    const next = all[to]
    if (!next) return false
    focus(next.key)
    return true
  }

  /** The cross hairs, from line to line of the grid or finely; brought to the middle of the paper where there are none yet. */
  const moveCursor = (by: Point, times: number, isFine: boolean) => {
    const { view: seen, panes } = hands.look()
    const { units } = hands.app.getState().settings
    const { cursor } = hands.local.getState()
    const gridM = gridStep(seen.scale, units)
    const middle = fromScreen(seen, panes, [panes.width / 2, panes.planHeight / 2])
    const from = toSheet(cursor ?? middle, seen.turn)
    const to: Point = cursor ? movedInSheet(from, by, times, isFine ? step() : gridM, isFine) : onGrid(from, gridM)
    const next = fromSheet(to, seen.turn)
    hands.local.setState({ cursor: next })
    const [px, py] = toScreen(seen, panes, next)
    const off: Point = [px < 24 ? 1 : px > panes.width - 24 ? -1 : 0, py < 24 ? 1 : py > panes.planHeight - 24 ? -1 : 0]
    if (off[0] !== 0 || off[1] !== 0) view.pan([off[0] * 60, off[1] * 60], false)
    sayCursor(next)
  }

  const sayCursor = (at: Point) => {
    const { units } = hands.app.getState().settings
    const place = sayPlace({ view: hands.look().view, units }, at)
    const scene = hands.scene()
    const { tool } = hands.app.getState()
    if (placesPoints(tool) || tool === 'sounding') {
      say(`${place}${fromLastPoint(at, units, 'long')}`)
      const shown = sayPlace({ view: hands.look().view, units }, at, 'short')
      hands.local.setState({ remarks: [{ at, text: `${shown}${fromLastPoint(at, units, 'short')}` }] })
      return
    }
    const parts = scene?.derived.partition
    const sample = parts?.ok ? depthAt(parts.value, at[0], at[1]) : undefined
    if (!scene) say(place)
    else if (!sample) say(`${place}: dry land`)
    else {
      const depth = formatQuantity('length', depthToReference(scene.body, sample.depthM), units, { style: 'long' })
      const s = formatQuantity('length', alongAxis(scene.section.axis, at), units, { style: 'long' })
      say(`${place}: ${depth} deep, ${sample.slope > 0 ? `slope ${formatSlope(sample.slope)}` : 'level'}, ${s} from A`)
    }
  }

  const fromLastPoint = (at: Point, units: UnitSystem, style: 'short' | 'long'): string => {
    const { points } = hands.local.getState().draft
    const last = points.at(-1)?.at
    if (!last) return ''
    const farM = Math.hypot(at[0] - last[0], at[1] - last[1])
    return `, ${formatQuantity('length', farM, units, { style })} from point ${points.length}`
  }

  const onSheet = (event: KeyboardEvent): boolean => {
    const { setTool, select, tool } = hands.app.getState()
    const arrow = ARROWS[event.key]
    if (onTool({ hands, moveCursor, focus }, event, arrow)) {
      // Paper that the cross hairs moved comes back with the outline all in sight.
      if (tool === 'points' && hands.app.getState().tool === 'select') view.fit()
      return true
    }
    const page = PAGES[event.key]
    if (arrow) moveCursor(arrow, event.ctrlKey ? timesFine(event) : event.shiftKey ? FAR : 1, event.ctrlKey)
    else if (page) moveCursor(page, FAR, false)
    else if (event.key === '+' || event.key === '=') view.zoom(ZOOM_STEP)
    else if (event.key === '-' || event.key === '_') view.zoom(1 / ZOOM_STEP)
    else if (event.key === '0') view.fit()
    else if (event.key === 'Escape') {
      hands.local.setState({ cursor: undefined, remarks: [] })
      select(undefined)
      setTool('select')
    } else return false
    return true
  }

  const onKeyDown = (event: KeyboardEvent) => {
    const isFineArrow = event.ctrlKey && ARROWS[event.key] !== undefined
    if (event.altKey || ((event.ctrlKey || event.metaKey) && event.key !== 'Enter' && !isFineArrow)) return
    const element = event.target instanceof Element ? event.target.closest('[data-item]') : null
    const key = element?.getAttribute('data-item') ?? undefined
    if (key?.startsWith('dimension-')) {
      if (event.key === 'Enter' || event.key === ' ') {
        event.preventDefault()
        if (element instanceof SVGElement) element.dispatchEvent(new MouseEvent('click', { bubbles: true }))
      }
      return
    }
    const placed = key === undefined ? undefined : hands.items().find((p) => p.key === key)
    const isDone = placed ? onItem(event, placed) || onSheet(event) : onSheet(event)
    if (isDone) {
      event.preventDefault()
      event.stopPropagation()
    }
  }
  return { onKeyDown, onTakenUp: () => takeUp({ hands, moveCursor, focus }) }
}
