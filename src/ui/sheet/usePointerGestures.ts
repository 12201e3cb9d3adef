import { type RefObject, useEffect, useRef } from 'react'
import type { Point } from '../../basin/index.ts'

export interface Press {
  /** Inside the drawing [px]. */
  readonly at: Point
  readonly pointerType: string
  /** Alt is held: nothing snaps. */
  readonly isFree: boolean
}

/** Something that a finger or mouse button has begun and not ended. */
export interface Gesture {
  readonly move: (press: Press) => void
  readonly end: (press: Press, hasMoved: boolean) => void
  readonly cancel: () => void
}

export interface GestureHandlers {
  readonly begin: (press: Press) => Gesture | undefined
  /** Pressed and let go where no gesture began. */
  readonly tap: (press: Press) => void
  readonly doublePress: (press: Press) => void
  readonly hover: (press: Press | undefined) => void
  readonly pan: (dx: number, dy: number, from: Point) => void
  readonly zoom: (at: Point, factor: number) => void
  /** The first finger went down, and the last one was lifted. */
  readonly busy: (isBusy: boolean) => void
}

/** Movement below this is a press, not a drag [px]. */
const STILL_PX = 4
const STILL_TOUCH_PX = 8
const DOUBLE_PRESS_MS = 380
const DOUBLE_PRESS_PX = 22
const WHEEL_ZOOM = 0.0016

/** Mouse, pen and touch over the drawing: one gesture at a time, two fingers pinch and pan, the wheel zooms. */
export function usePointerGestures(ref: RefObject<Element | null>, handlers: GestureHandlers): void {
  const latest = useRef(handlers)
  latest.current = handlers

  useEffect(() => {
    const element = ref.current
    if (!element) return
    const fingers = new Map<number, Point>()
    let gesture: Gesture | undefined
    let owner = -1
    let start: Press | undefined
    let hasMoved = false
    let isPinching = false
    let queued: (() => void) | undefined
    let frame = 0
    let lastPress = { at: [Number.NaN, 0] as Point, time: 0 }

    const pressOf = (event: PointerEvent | MouseEvent, pointerType: string): Press => {
      const box = element.getBoundingClientRect()
      return { at: [event.clientX - box.left, event.clientY - box.top], pointerType, isFree: event.altKey }
    }
    const flush = () => {
      cancelAnimationFrame(frame)
      frame = 0
      queued?.()
      queued = undefined
    }
    const soon = (work: () => void) => {
      queued = work
      if (frame === 0) frame = requestAnimationFrame(flush)
    }

    const onDown = (event: Event) => {
      if (!(event instanceof PointerEvent) || (event.pointerType === 'mouse' && event.button > 1)) return
      // A dimension is a button: its own click has to reach it, so the pointer is not taken from it.
      if (fingers.size === 0 && event.target instanceof Element && event.target.closest('[data-item^="dimension-"]'))
        return
      const press = pressOf(event, event.pointerType)
      fingers.set(event.pointerId, press.at)
      element.setPointerCapture(event.pointerId)
      if (fingers.size === 1) latest.current.busy(true)
      if (fingers.size > 1) {
        flush()
        gesture?.cancel()
        gesture = undefined
        isPinching = true
        return
      }
      owner = event.pointerId
      start = press
      hasMoved = false
      isPinching = false
      gesture = event.button > 0 ? undefined : latest.current.begin(press)
    }

    const onMove = (event: Event) => {
      if (!(event instanceof PointerEvent)) return
      const press = pressOf(event, event.pointerType)
      const before = fingers.get(event.pointerId)
      if (!before || !start) {
        if (event.pointerType !== 'touch') soon(() => latest.current.hover(press))
        return
      }
      if (isPinching) {
        const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1]
        fingers.set(event.pointerId, press.at)
        if (!other) return
        const was = Math.hypot(before[0] - other[0], before[1] - other[1])
        const is = Math.hypot(press.at[0] - other[0], press.at[1] - other[1])
        const middle: Point = [(press.at[0] + other[0]) / 2, (press.at[1] + other[1]) / 2]
        latest.current.pan((press.at[0] - before[0]) / 2, (press.at[1] - before[1]) / 2, middle)
        if (was > 0 && is > 0) latest.current.zoom(middle, is / was)
        return
      }
      if (event.pointerId !== owner) return
      const still = event.pointerType === 'touch' ? STILL_TOUCH_PX : STILL_PX
      if (!hasMoved && Math.hypot(press.at[0] - start.at[0], press.at[1] - start.at[1]) < still) return
      const from = hasMoved ? before : start.at
      hasMoved = true
      fingers.set(event.pointerId, press.at)
      const { at } = start
      if (gesture) soon(() => gesture?.move(press))
      else latest.current.pan(press.at[0] - from[0], press.at[1] - from[1], at)
    }

    const onUp = (event: Event) => {
      if (!(event instanceof PointerEvent) || !fingers.has(event.pointerId)) return
      const press = pressOf(event, event.pointerType)
      fingers.delete(event.pointerId)
      flush()
      if (event.pointerId === owner && !isPinching) {
        const isCancelled = event.type === 'pointercancel'
        if (isCancelled) gesture?.cancel()
        else if (gesture) gesture.end(press, hasMoved)
        else if (!hasMoved) latest.current.tap(press)
        const near = Math.hypot(press.at[0] - lastPress.at[0], press.at[1] - lastPress.at[1]) < DOUBLE_PRESS_PX
        const isDouble = !isCancelled && !hasMoved && near && event.timeStamp - lastPress.time < DOUBLE_PRESS_MS
        lastPress = hasMoved || isDouble ? { at: [Number.NaN, 0], time: 0 } : { at: press.at, time: event.timeStamp }
        if (isDouble) latest.current.doublePress(press)
      }
      gesture = undefined
      if (fingers.size === 0) {
        owner = -1
        start = undefined
        isPinching = false
        latest.current.busy(false)
      }
    }
    const onLeave = (event: Event) => {
      // A finger leaves as it is lifted, and what it asked for stays to be read.
      if (event instanceof PointerEvent && event.pointerType === 'touch') return
      if (fingers.size === 0) soon(() => latest.current.hover(undefined))
    }
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !gesture) return
      event.stopPropagation()
      flush()
      gesture.cancel()
      gesture = undefined
      // What is left of the press is nothing: neither a drag nor a tap.
      isPinching = true
    }
    const onWheel = (event: Event) => {
      if (!(event instanceof WheelEvent)) return
      event.preventDefault()
      const press = pressOf(event, 'mouse')
      const isPan = event.shiftKey || (event.deltaMode === 0 && event.deltaX !== 0 && !event.ctrlKey)
      if (isPan) latest.current.pan(-event.deltaX || -event.deltaY, event.deltaX === 0 ? 0 : -event.deltaY, press.at)
      else {
        const lines = event.deltaMode === 1 ? 18 : 1
        latest.current.zoom(press.at, Math.exp(-event.deltaY * lines * WHEEL_ZOOM * (event.ctrlKey ? 4 : 1)))
      }
    }

    window.addEventListener('keydown', onKey, { capture: true })
    element.addEventListener('pointerdown', onDown)
    element.addEventListener('pointermove', onMove)
    element.addEventListener('pointerup', onUp)
    element.addEventListener('pointercancel', onUp)
    element.addEventListener('pointerleave', onLeave)
    element.addEventListener('wheel', onWheel, { passive: false })
    return () => {
      cancelAnimationFrame(frame)
      window.removeEventListener('keydown', onKey, { capture: true })
      element.removeEventListener('pointerdown', onDown)
      element.removeEventListener('pointermove', onMove)
      element.removeEventListener('pointerup', onUp)
      element.removeEventListener('pointercancel', onUp)
      element.removeEventListener('pointerleave', onLeave)
      element.removeEventListener('wheel', onWheel)
    }
  }, [ref])
}
