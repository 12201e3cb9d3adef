import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react'
import { createPortal } from 'react-dom'
import { useStore } from 'zustand'
import type { Tool } from '../../state/index.ts'
import { useApp, useAppStore, useCanEdit, useUnits } from '../context.tsx'
import { classes } from '../fields/index.ts'
import { DrawBar } from './DrawBar.tsx'
import { Drawing } from './Drawing.tsx'
import { EmptySheet } from './EmptySheet.tsx'
import { type Hands, insertAt } from './gestures.ts'
import { armsOf, isInPane } from './in-sight.ts'
import { itemOf, keyOf, type PlacedItem, selectionOf } from './items.ts'
import { createLocalStore, LocalProvider, useLocal } from './local.ts'
import { placeItems } from './place-items.ts'
import { begin, hover, placesPoints, tap } from './presses.ts'
import styles from './Sheet.module.css'
import type { Scene } from './scene.ts'
import { Strip } from './strip/Strip.tsx'
import { usePointerGestures } from './usePointerGestures.ts'
import { useSubject } from './useScene.ts'
import { useSheetKeys } from './useSheetKeys.ts'
import { useSheetView } from './useSheetView.ts'

const COARSE = '(pointer: coarse)'

interface SheetProps {
  /** Where the numbers of the selection go, if not under the drawing: the foot of a wide sheet has room for them. */
  readonly stripSlot?: HTMLElement | null | undefined
}

/** The drawing sheet: plan above, section below, the tools beside them and the numbers of the selection underneath. */
export function Sheet({ stripSlot }: SheetProps) {
  const [local] = useState(createLocalStore)
  return (
    <LocalProvider value={local}>
      <SheetFrame local={local} stripSlot={stripSlot} />
    </LocalProvider>
  )
}

interface FrameProps extends SheetProps {
  readonly local: ReturnType<typeof createLocalStore>
}

function SheetFrame({ local, stripSlot }: FrameProps) {
  const app = useAppStore()
  const units = useUnits()
  const canEdit = useCanEdit()
  const tool = useApp((state) => state.tool)
  const selection = useApp((state) => state.selection)
  const previewLevelM = useApp((state) => state.previewLevelM)
  const { subject, content } = useSubject()
  const sheet = useSheetView(content)
  const { shown } = sheet
  const isCoarse = useIsCoarse()
  const frame = useRef<HTMLDivElement>(null)
  const svg = useRef<SVGSVGElement>(null)
  const strip = useRef<HTMLElement>(null)

  const scene = useMemo((): Scene | undefined => {
    if (!subject || !shown) return undefined
    const { body, derived, section } = subject
    return { body, derived, section, units, canEdit, levelM: previewLevelM ?? body.levelM, isCoarse, ...shown }
  }, [subject, shown, units, canEdit, previewLevelM, isCoarse])
  const isSelecting = tool === 'select'
  const items = useMemo(
    () =>
      scene?.canEdit && isSelecting
        ? placeItems(scene, selection).filter((p) => sheet.isAuto || isInPane(p, scene))
        : [],
    [scene, selection, isSelecting, sheet.isAuto],
  )
  const selectedItem = selection && itemOf(selection)
  const selectedKey = selectedItem && keyOf(selectedItem)

  const latest = useRef({ scene, items, shown })
  latest.current = { scene, items, shown }
  const hands = useMemo((): Hands => {
    let count = 0
    return {
      app,
      local,
      look: () => latest.current.shown ?? NOWHERE,
      scene: () => {
        const { scene: seen } = latest.current
        const body = app.getState().spec.bodies[0]
        // Between a command and the next drawing the body is already new.
        return seen && body ? { ...seen, body } : undefined
      },
      items: () => latest.current.items,
      gestureName: () => `sheet-${++count}`,
    }
  }, [app, local])

  const focus = useCallback((key: string | undefined) => {
    const target = key === undefined ? frame.current : svg.current?.querySelector<SVGElement>(`[data-item="${key}"]`)
    target?.focus({ preventScroll: true })
  }, [])
  const focusFields = useCallback(() => strip.current?.querySelector('input')?.focus(), [])

  usePointerGestures(frame, {
    begin: (press) => begin(hands, press),
    tap: (press) => tap(hands, press),
    doublePress: (press) => {
      if (app.getState().tool === 'select') insertAt(hands, press)
    },
    hover: (press) => hover(hands, press),
    pan: (dx, dy, from) => sheet.pan([dx, dy], from[1] > hands.look().panes.planHeight),
    zoom: (at, factor) => sheet.zoom(factor, at),
    busy: (isBusy) => (isBusy ? sheet.hold() : sheet.release()),
  })
  const onKeyDown = useSheetKeys({ hands, view: sheet, focus, focusFields })

  const onFocusItem = useCallback(
    (placed: PlacedItem) => {
      const { scene: seen } = latest.current
      if (seen && placed.item.kind !== 'control' && placed.item.kind !== 'feature-handle')
        app.getState().select(selectionOf(placed.item, seen.body.id))
    },
    [app],
  )
  const onDimension = useCallback(
    (axis: 'x' | 'y') => {
      const { scene: seen } = latest.current
      if (!seen) return
      const { selection: now, select } = app.getState()
      if (now?.kind === 'dimension' && now.axis === axis) focusFields()
      else select({ kind: 'dimension', bodyId: seen.body.id, axis })
    },
    [app, focusFields],
  )
  // A dimension is selected to be typed.
  const isDimension = selection?.kind === 'dimension' ? selection.axis : undefined
  useLayoutEffect(() => {
    if (isDimension !== undefined) focusFields()
  }, [isDimension, focusFields])
  // A button of the strip may go away with what it acted on: the focus then goes to what is selected now, not to the page's start.
  useEffect(() => {
    let frames = 3
    let request = requestAnimationFrame(function look() {
      if (document.activeElement === document.body && app.getState().selection !== undefined) focus(selectedKey)
      else if (frames-- > 0) request = requestAnimationFrame(look)
    })
    return () => cancelAnimationFrame(request)
  }, [app, focus, selectedKey])
  // Leaving a tool leaves nothing of it behind.
  useEffect(() => {
    if (!placesPoints(tool)) local.setState((state) => ({ draft: { ...state.draft, points: [] }, guides: [] }))
    local.setState({ benchFrom: undefined, ghost: [], sounded: undefined })
    // On a phone a tool may be taken up in the ledger, with the sheet out of sight.
    if (tool !== 'select') frame.current?.scrollIntoView({ block: 'nearest' })
    if (placesPoints(tool) || tool === 'freehand' || tool === 'sounding') frame.current?.focus({ preventScroll: true })
  }, [tool, local])

  // A place that is sounded asks for its depth; with that typed the sheet takes the next.
  const sounded = useStore(local, (state) => state.sounded)
  const wasSounded = useRef(sounded)
  useLayoutEffect(() => {
    if (sounded) focusFields()
    else if (wasSounded.current && tool === 'sounding') frame.current?.focus({ preventScroll: true })
    wasSounded.current = sounded
  }, [sounded, tool, focusFields])
  // A fresh sketch asks for its size; on a touch screen that would bring up the keys over the drawing.
  const isSketch = subject?.body.sketch !== undefined
  useEffect(() => {
    if (isSketch && !isCoarse && local.getState().spoken.startsWith('Outline drawn')) focusFields()
  }, [isSketch, isCoarse, local, focusFields])

  const measure = sheet.measureRef
  return (
    <div className={styles['sheet']}>
      <div className={styles['frame']}>
        <DrawBar view={sheet} />
        <div className={styles['paper']} ref={measure}>
          <div
            ref={frame}
            className={classes(styles['drawing'], !isSelecting && styles['crosshair'])}
            role="application"
            aria-roledescription="drawing sheet"
            aria-label={sheetLabel(tool)}
            // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing takes arrow keys, as an application does
            tabIndex={0}
            onKeyDown={onKeyDown}
            // After a finger's press the browser sends a mouse's too, which would take the focus from the depth's field.
            onMouseDown={(event) => {
              if (local.getState().sounded) event.preventDefault()
            }}
          >
            {shown ? (
              <Drawing
                view={shown.view}
                panes={shown.panes}
                {...{ units, subject, scene, items, selectedKey, onFocusItem, onDimension }}
                armed={armsOf(scene, items)}
                tabKey={tabStop(items, selectedKey)}
                svgRef={svg}
                isClipped={!sheet.isAuto}
              />
            ) : null}
          </div>
          {subject || !isSelecting ? null : <EmptySheet />}
        </div>
        {stripSlot ? (
          createPortal(<Strip scene={scene} hands={hands} stripRef={strip} />, stripSlot)
        ) : (
          <div className={styles['strip']}>
            <Strip scene={scene} hands={hands} stripRef={strip} />
          </div>
        )}
      </div>
      <Spoken />
    </div>
  )
}

const NOWHERE = {
  view: { turn: 0, scale: 1, u: 0, v: 0, stretch: 1, sectionScrollPx: 0 },
  panes: { width: 1, height: 1, planHeight: 1, datumY: 1 },
} as const

function Spoken() {
  const spoken = useLocal((state) => state.spoken)
  return (
    <p className="visually-hidden" aria-live="polite">
      {spoken}
    </p>
  )
}

function sheetLabel(tool: Tool): string {
  if (tool === 'sounding') {
    return 'Plan and section, taking soundings. Arrow keys move the cross hairs, Shift for ten steps, Enter asks for the depth there, Escape ends.'
  }
  if (tool === 'points' || tool === 'contour') {
    return 'Placing points. Arrow keys move the cross hairs, Shift for ten steps, Enter places a point, Enter again on it closes, C corner or smooth, Backspace takes back, Escape cancels.'
  }
  return 'Plan and section. Arrow keys move the cross hairs and read the depth, plus and minus zoom, 0 fits. Tab goes to points, stations and features.'
}

/** Tab comes back to what was selected last, else to the first. */
function tabStop(items: readonly PlacedItem[], selectedKey: string | undefined): string | undefined {
  return items.some((p) => p.key === selectedKey) ? selectedKey : items[0]?.key
}

function useIsCoarse(): boolean {
  const [isCoarse, setCoarse] = useState(() => matchMedia(COARSE).matches)
  useEffect(() => {
    const query = matchMedia(COARSE)
    const onChange = () => setCoarse(query.matches)
    query.addEventListener('change', onChange)
    return () => query.removeEventListener('change', onChange)
  }, [])
  return isCoarse
}
