import { useEffect } from 'react'
import { draggedAside, followPointers } from '../gestures.ts'
import { eyeOf, LENS_DEGREES, panned, zoomed } from '../turntable.ts'
import { pointOnLevel } from './pick.ts'
import type { Stage } from './useStage.ts'

interface TurntableHandlers {
  /** Pointed at, in the picture [px]; undefined when the pointer has left or is turning the table. */
  readonly onPoint: (x: number | undefined, y: number | undefined) => void
  /** A hand has begun to move the picture, or let it go. */
  readonly onHold: (isHeld: boolean) => void
}

/** How far from the basin's middle the picture may be moved, as a share of the eye's distance. */
const PAN_REACH = 0.2

/** Pointers turn, draw nearer and move the picture aside. */
export function useTurntable(stage: Stage, { onPoint, onHold }: TurntableHandlers): void {
  useEffect(() => {
    const element = stage.host.current
    if (!element) return
    const reachM = () => stage.fit().distanceM * PAN_REACH
    return followPointers(element, {
      change: (next) => stage.change(next(stage.view())),
      zoomAt: (factor, x, y) => {
        const before = stage.view()
        const next = zoomed(before, factor)
        const { target } = eyeOf(before, stage.fit())
        const about = pointOnLevel(stage.camera, ...stage.toNdc(x, y), target[2])
        const share = 1 - before.zoom / next.zoom
        const moved = about && panned(next, (about.x - target[0]) * share, (about.y - target[1]) * share, reachM())
        stage.change(moved ?? next)
      },
      panBy: (dx, dy) => {
        const farM = stage.fit().distanceM / stage.view().zoom
        const metresPerPx = (2 * Math.tan((LENS_DEGREES * Math.PI) / 360) * farM) / stage.size().height
        stage.change(draggedAside(stage.view(), dx, dy, metresPerPx, reachM()))
      },
      hover: onPoint,
      leave: () => onPoint(undefined, undefined),
      dragging: (isDragging) => {
        onHold(isDragging)
        if (isDragging) onPoint(undefined, undefined)
      },
    })
  }, [stage, onPoint, onHold])
}
