import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react'
import { useStore } from 'zustand'
import { useApp, useAppStore } from '../context.tsx'
import { NO_STROKE } from './gestures.ts'
import type { LocalStore } from './local.ts'
import { placesPoints } from './presses.ts'

interface Wiring {
  readonly local: LocalStore
  readonly frame: RefObject<HTMLElement | null>
  /** Puts the keyboard's focus on an item of the drawing, or on the drawing itself. */
  readonly focus: (key: string | undefined) => void
  readonly focusFields: () => void
  /** Says where the tool that the keys have taken up will act. */
  readonly onTakenUp: () => void
  readonly selectedKey: string | undefined
  readonly isCoarse: boolean
  readonly isSketch: boolean
}

/** Where the keyboard's focus goes by itself: to what asks for a number, to the sheet with a tool, never to the page's start. */
export function useSheetFocus(wiring: Wiring): void {
  const { local, frame, focus, focusFields, selectedKey, isCoarse, isSketch } = wiring
  const app = useAppStore()
  const latest = useRef(wiring.onTakenUp)
  latest.current = wiring.onTakenUp
  const tool = useApp((state) => state.tool)
  const selection = useApp((state) => state.selection)
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
    local.setState({
      benchFrom: undefined,
      benchAt: undefined,
      wallFrom: undefined,
      ghost: [],
      remarks: [],
      sounded: undefined,
      ...NO_STROKE,
    })
    // On a phone a tool may be taken up in the ledger, with the sheet out of sight.
    if (tool === 'select') return
    frame.current?.scrollIntoView({ block: 'nearest' })
    frame.current?.focus({ preventScroll: true })
    if (frame.current?.matches(':focus-visible')) latest.current()
  }, [tool, local, frame])

  // A place that is sounded asks for its depth; with that typed the sheet takes the next.
  const sounded = useStore(local, (state) => state.sounded)
  const wasSounded = useRef(sounded)
  useLayoutEffect(() => {
    if (sounded) focusFields()
    else if (wasSounded.current && tool === 'sounding') frame.current?.focus({ preventScroll: true })
    wasSounded.current = sounded
  }, [sounded, tool, frame, focusFields])
  // A depth line that was drawn asks for its depth.
  const isAsking = useStore(local, (state) => state.isAsking)
  useEffect(() => {
    if (!isAsking) return
    local.setState({ isAsking: false })
    focusFields()
  }, [isAsking, local, focusFields])
  // A fresh sketch asks for its size; on a touch screen that would bring up the keys over the drawing.
  useEffect(() => {
    if (isSketch && !isCoarse && local.getState().spoken.startsWith('Outline ')) focusFields()
  }, [isSketch, isCoarse, local, focusFields])
}
