import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { createPortal } from 'react-dom'
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
import { begin, hover, tap } from './presses.ts'
import styles from './Sheet.module.css'
import type { Scene } from './scene.ts'
import { sheetLabel } from './sheet-label.ts'
import { Strip } from './strip/Strip.tsx'
import { usePointerGestures } from './usePointerGestures.ts'
import { useSubject } from './useScene.ts'
import { useSheetFocus } from './useSheetFocus.ts'
import { useSheetKeys } from './useSheetKeys.ts'
import { useSheetView } from './useSheetView.ts'
import { useSpoken } from './useSpoken.ts'

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
  // What is drawn on a blank sheet comes to lie in the middle, also on paper that was moved by hand.
  const fit = useRef(sheet.fit)
  fit.current = sheet.fit
  const hasBody = subject !== undefined
  useEffect(() => {
    if (hasBody) fit.current()
  }, [hasBody])
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
  const toSheet = useCallback(() => focus(undefined), [focus])
  const focusFields = useCallback(() => strip.current?.querySelector('input')?.focus(), [])

  const lastTools = useRef<readonly [Tool, Tool]>(['select', 'select'])
  usePointerGestures(frame, {
    begin: (press) => {
      lastTools.current = [lastTools.current[1], app.getState().tool]
      return begin(hands, press)
    },
    tap: (press) => tap(hands, press),
    // Two quick presses of a tool that is done with the second are no double press.
    doublePress: (press) => {
      if (lastTools.current.every((tool) => tool === 'select')) insertAt(hands, press)
    },
    hover: (press) => hover(hands, press),
    pan: (dx, dy, from) => sheet.pan([dx, dy], from[1] > hands.look().panes.planHeight),
    zoom: (at, factor) => sheet.zoom(factor, at),
    busy: (isBusy) => (isBusy ? sheet.hold() : sheet.release()),
  })
  const { onKeyDown, onTakenUp } = useSheetKeys({ hands, view: sheet, focus, focusFields })

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
  useSpoken(local)
  useSheetFocus({
    local,
    frame,
    focus,
    focusFields,
    onTakenUp,
    selectedKey,
    isCoarse,
    isSketch: subject?.body.sketch !== undefined,
  })

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
          createPortal(<Strip scene={scene} hands={hands} stripRef={strip} toSheet={toSheet} />, stripSlot)
        ) : (
          <div className={styles['strip']}>
            <Strip scene={scene} hands={hands} stripRef={strip} toSheet={toSheet} />
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
