import { type RefCallback, useCallback, useLayoutEffect, useMemo, useRef, useState } from 'react'
import type { Axis, Bounds, Point } from '../../basin/index.ts'
import { fitSheet, type Margins, needsNewFit } from './fit.ts'
import { type Bed, isNarrow, type Panes, panBy, sectionFromScreen, turnFor, type View, zoomAt } from './view.ts'

export interface Content {
  readonly bounds: Bounds
  readonly axis: Axis
  readonly depthM: number
  readonly aboveM: number
  /** Deepest place of the floor between two distances along the axis [m]. */
  readonly bedM: (fromM: number, toM: number) => number
}

interface Shown {
  readonly view: View
  readonly panes: Panes
}

export interface SheetView {
  readonly shown: Shown | undefined
  /** Fitted to the drawing, not moved by hand. */
  readonly isAuto: boolean
  readonly measureRef: RefCallback<HTMLElement>
  /** Moves or scales the view by hand: from then on it stays where it is put. Without a place, about the middle. */
  readonly zoom: (factor: number, at?: Point) => void
  readonly pan: (by: Point, isSection: boolean) => void
  readonly fit: () => void
  /** While a gesture runs the paper does not move by itself; when it ends the view may follow the drawing. */
  readonly hold: () => void
  readonly release: () => void
}

const WIDE: Margins = { left: 76, right: 96, planTop: 58, planBottom: 14, sectionTop: 34, sectionBottom: 36 }
const NARROW: Margins = { left: 34, right: 62, planTop: 50, planBottom: 12, sectionTop: 30, sectionBottom: 34 }
/** Panes that would move by more than this are worth a new fit [px]. */
const PANES_MOVED_PX = 28

/** The sheet's own view: fitted to the drawing until a hand moves it, then kept. */
export function useSheetView(content: Content): SheetView {
  const [size, setSize] = useState<{ readonly width: number; readonly height: number }>()
  const [shown, setShown] = useState<Shown>()
  const [isAuto, setAuto] = useState(true)
  const [held, setHeld] = useState(false)
  const sizeOfShown = useRef(size)

  const measureRef = useCallback<RefCallback<HTMLElement>>((element) => {
    if (!element) return
    const measure = () => {
      const width = Math.round(element.clientWidth)
      const height = Math.round(element.clientHeight)
      if (width < 40 || height < 40) return
      setSize((was) => (was?.width === width && was.height === height ? was : { width, height }))
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])

  const { minX, minY, maxX, maxY } = content.bounds
  const { axis, depthM, aboveM, bedM } = content
  const turnNow = shown?.view.turn
  const fitted = useMemo(() => {
    if (!size) return undefined
    const margins = isNarrow(size) ? NARROW : WIDE
    const turn = turnFor(axis, turnNow)
    return fitSheet({ ...size, bounds: { minX, minY, maxX, maxY }, turn, depthM, aboveM, margins })
  }, [size, minX, minY, maxX, maxY, axis, turnNow, depthM, aboveM])

  useLayoutEffect(() => {
    if (!fitted || held) return
    const isNewSize = sizeOfShown.current !== size
    sizeOfShown.current = size
    setShown((was) => {
      if (!was || was.view.turn !== fitted.view.turn) return fitted
      if (isAuto) {
        const moved = Math.abs(was.panes.planHeight - fitted.panes.planHeight) > PANES_MOVED_PX
        return isNewSize || moved || needsNewFit(was.view, fitted.view) ? fitted : was
      }
      return isNewSize ? { view: was.view, panes: fitted.panes } : was
    })
  }, [fitted, size, held, isAuto])

  const change = useCallback((step: (view: View, panes: Panes) => View) => {
    setAuto(false)
    setShown((was) => was && { ...was, view: step(was.view, was.panes) })
  }, [])
  const bed = useMemo(
    (): Bed => ({
      deepestM: depthM,
      inSight: (v, p) => {
        const [from] = sectionFromScreen(v, p, axis.from, [0, 0])
        const [to] = sectionFromScreen(v, p, axis.from, [p.width, 0])
        return bedM(from, to)
      },
    }),
    [depthM, axis, bedM],
  )
  const zoom = useCallback(
    (factor: number, at?: Point) => change((v, p) => zoomAt(v, p, at ?? [p.width / 2, p.planHeight / 2], factor, bed)),
    [change, bed],
  )
  const pan = useCallback(
    (by: Point, isSection: boolean) => change((v, p) => panBy(v, p, by, isSection, bed)),
    [change, bed],
  )
  const fit = useCallback(() => {
    setAuto(true)
    if (fitted) setShown(fitted)
  }, [fitted])
  const hold = useCallback(() => setHeld(true), [])
  const release = useCallback(() => setHeld(false), [])
  return { shown, isAuto, measureRef, zoom, pan, fit, hold, release }
}
