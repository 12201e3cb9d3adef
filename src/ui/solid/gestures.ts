import type { View } from './turntable.ts'
import { frameOf, panned, turned, zoomed } from './turntable.ts'

/** What pointers ask of the view. */
export interface GestureTarget {
  readonly change: (next: (view: View) => View) => void
  /** Draws nearer about a point of the element [px]. */
  readonly zoomAt: (factor: number, x: number, y: number) => void
  /** Moves the picture aside [px]. */
  readonly panBy: (dx: number, dy: number) => void
  readonly hover: (x: number, y: number) => void
  readonly leave: () => void
  readonly dragging: (isDragging: boolean) => void
}

const RADIANS_PER_PX = 0.0075
/** A finger that moved less than this was a tap [px]. */
const TAP_PX = 7

/** Follows mouse, pen and fingers on an element: one turns, two pinch and move, a tap or a hover probes. */
export function followPointers(element: HTMLElement, target: GestureTarget): () => void {
  const down = new Map<number, { x: number; y: number }>()
  let travelled = 0
  let isPanning = false
  let isDragging = false

  const at = (event: MouseEvent) => {
    const box = element.getBoundingClientRect()
    return { x: event.clientX - box.left, y: event.clientY - box.top }
  }
  const spread = () => {
    const [a, b] = [...down.values()]
    return a && b ? { far: Math.hypot(a.x - b.x, a.y - b.y), x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 } : undefined
  }
  const onDown = (event: PointerEvent) => {
    if (event.pointerType === 'mouse' && event.button > 2) return
    if (event.target instanceof Element && event.target.closest('button')) return
    element.setPointerCapture(event.pointerId)
    down.set(event.pointerId, at(event))
    if (down.size === 1) {
      travelled = 0
      isPanning = event.button === 2 || event.button === 1 || event.shiftKey
    }
  }
  const onMove = (event: PointerEvent) => {
    const now = at(event)
    const before = down.get(event.pointerId)
    if (!before) {
      if (event.pointerType !== 'touch') target.hover(now.x, now.y)
      return
    }
    const [dx, dy] = [now.x - before.x, now.y - before.y]
    const wide = spread()
    down.set(event.pointerId, now)
    travelled += Math.hypot(dx, dy)
    if (travelled > TAP_PX && !isDragging) {
      isDragging = true
      target.dragging(true)
    }
    const wider = spread()
    if (wide && wider) {
      if (wide.far > 0) target.zoomAt(wider.far / wide.far, wider.x, wider.y)
      target.panBy(wider.x - wide.x, wider.y - wide.y)
    } else if (isPanning) target.panBy(dx, dy)
    else if (travelled > TAP_PX || event.pointerType === 'mouse')
      target.change((view) => turned(view, -dx * RADIANS_PER_PX, dy * RADIANS_PER_PX))
  }
  const onUp = (event: PointerEvent) => {
    if (!down.delete(event.pointerId) || down.size > 0) return
    if (isDragging) target.dragging(false)
    isDragging = false
    const now = at(event)
    if (event.type === 'pointerup' && (event.pointerType !== 'touch' || travelled <= TAP_PX)) target.hover(now.x, now.y)
  }
  const onLeave = (event: PointerEvent) => {
    if (event.pointerType !== 'touch') target.leave()
  }
  const onWheel = (event: WheelEvent) => {
    event.preventDefault()
    const lines = event.deltaMode === 1 ? 16 : 1
    const { x, y } = at(event)
    // A pinch on a touchpad arrives as a wheel with Ctrl, in smaller numbers.
    target.zoomAt(Math.exp(-event.deltaY * lines * (event.ctrlKey ? 0.01 : 0.0015)), x, y)
  }
  const onMenu = (event: Event) => event.preventDefault()
  element.addEventListener('pointerdown', onDown)
  element.addEventListener('pointermove', onMove)
  element.addEventListener('pointerup', onUp)
  element.addEventListener('pointercancel', onUp)
  element.addEventListener('pointerleave', onLeave)
  element.addEventListener('wheel', onWheel, { passive: false })
  element.addEventListener('contextmenu', onMenu)
  return () => {
    element.removeEventListener('pointerdown', onDown)
    element.removeEventListener('pointermove', onMove)
    element.removeEventListener('pointerup', onUp)
    element.removeEventListener('pointercancel', onUp)
    element.removeEventListener('pointerleave', onLeave)
    element.removeEventListener('wheel', onWheel)
    element.removeEventListener('contextmenu', onMenu)
  }
}

const STEP = (5 * Math.PI) / 180

/** What a key does to the view; undefined for a key that is not ours. */
export function viewForKey(key: string, view: View): View | undefined {
  switch (key) {
    case 'ArrowLeft':
      return turned(view, STEP, 0)
    case 'ArrowRight':
      return turned(view, -STEP, 0)
    case 'ArrowUp':
      return turned(view, 0, STEP)
    case 'ArrowDown':
      return turned(view, 0, -STEP)
    case '+':
    case '=':
      return zoomed(view, 1.2)
    case '-':
    case '_':
      return zoomed(view, 1 / 1.2)
    default:
      return undefined
  }
}

/** Where an arrow key points on the plan as it is seen, one step long; undefined for other keys. */
export function stepForKey(key: string, view: View, stepM: number): readonly [dx: number, dy: number] | undefined {
  const { right } = frameOf(view)
  const [rx, ry] = [right[0] * stepM, right[1] * stepM]
  switch (key) {
    case 'ArrowLeft':
      return [-rx, -ry]
    case 'ArrowRight':
      return [rx, ry]
    case 'ArrowUp':
      return [-ry, rx]
    case 'ArrowDown':
      return [ry, -rx]
    default:
      return undefined
  }
}

/** The view moved aside so that a drag of the picture by `dx`, `dy` takes the ground along. */
export function draggedAside(view: View, dx: number, dy: number, metresPerPx: number, reachM: number): View {
  const { right } = frameOf(view)
  const across = -dx * metresPerPx
  const away = (dy * metresPerPx) / Math.max(Math.sin(view.tilt), 0.2)
  return panned(view, right[0] * across - right[1] * away, right[1] * across + right[0] * away, reachM)
}
