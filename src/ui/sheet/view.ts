import type { Axis, Bounds, Point } from '../../basin/index.ts'

/** Quarter turns, counter-clockwise, from the plan's own frame to the sheet's (u right, v up). */
export type Turn = 0 | 1 | 2 | 3

/** What the sheet looks at. The plan and the section share the scale and the horizontal place. */
export interface View {
  readonly turn: Turn
  /** Pixels per metre. */
  readonly scale: number
  /** Sheet point in the middle of the plan's pane [m]. */
  readonly u: number
  readonly v: number
  /** Vertical exaggeration of the section. */
  readonly stretch: number
  /** How far the section is scrolled down [px]. */
  readonly sectionScrollPx: number
}

/** Where the panes lie [px]. */
export interface Panes {
  readonly width: number
  readonly height: number
  readonly planHeight: number
  /** The datum's place where the section is not scrolled. */
  readonly datumY: number
}

/** On paper narrower than this, marks and names move closer to the drawing [px]. */
const NARROW_PX = 560

export function isNarrow(panes: { readonly width: number }): boolean {
  return panes.width < NARROW_PX
}

/** Smallest and largest scale that zooming reaches [px per metre]. */
const SCALE_LIMITS = [0.5, 4000] as const
/** Room under the section for the figures at its stations [px]. */
const FOOT_PX = 34
/** A tilt beyond this turns the sheet: a little over half a right angle, so that it does not flutter [°]. */
const TURN_BEYOND_DEG = 50

export function toSheet([x, y]: Point, turn: Turn): Point {
  if (turn === 0) return [x, y]
  if (turn === 1) return [-y, x]
  if (turn === 2) return [-x, -y]
  return [y, -x]
}

export function fromSheet([u, v]: Point, turn: Turn): Point {
  if (turn === 0) return [u, v]
  if (turn === 1) return [v, -u]
  if (turn === 2) return [-u, -v]
  return [-v, u]
}

export function toScreen(view: View, panes: Panes, point: Point): Point {
  const [u, v] = toSheet(point, view.turn)
  return [panes.width / 2 + (u - view.u) * view.scale, panes.planHeight / 2 - (v - view.v) * view.scale]
}

export function fromScreen(view: View, panes: Panes, [px, py]: Point): Point {
  const u = view.u + (px - panes.width / 2) / view.scale
  const v = view.v - (py - panes.planHeight / 2) / view.scale
  return fromSheet([u, v], view.turn)
}

/** The six numbers of an SVG matrix that takes plan metres, counted from `origin`, to pixels. */
export function svgMatrix(view: View, panes: Panes, origin: Point): string {
  const o = toScreen(view, panes, origin)
  const x = toSheet([1, 0], view.turn)
  const y = toSheet([0, 1], view.turn)
  const s = view.scale
  return `matrix(${x[0] * s} ${-x[1] * s} ${y[0] * s} ${-y[1] * s} ${o[0]} ${o[1]})`
}

/** Where a place of the section is drawn: distance along the axis and depth below the datum. */
export function sectionToScreen(view: View, panes: Panes, axisFrom: Point, [sM, depthM]: Point): Point {
  const [ax] = toScreen(view, panes, axisFrom)
  return [ax + sM * view.scale, panes.datumY - view.sectionScrollPx + depthM * view.scale * view.stretch]
}

export function sectionFromScreen(view: View, panes: Panes, axisFrom: Point, [px, py]: Point): Point {
  const [ax] = toScreen(view, panes, axisFrom)
  return [(px - ax) / view.scale, (py - panes.datumY + view.sectionScrollPx) / (view.scale * view.stretch)]
}

/** The quarter turns that lay the axis most nearly from left to right; `current` stays while it is good enough. */
export function turnFor(axis: Axis, current?: Turn): Turn {
  const angle = (Math.atan2(axis.to[1] - axis.from[1], axis.to[0] - axis.from[0]) * 180) / Math.PI
  if (current !== undefined) {
    const tilt = Math.abs(((angle + current * 90 + 540) % 360) - 180)
    if (tilt <= TURN_BEYOND_DEG) return current
  }
  return (((-Math.round(angle / 90) % 4) + 4) % 4) as Turn
}

/** How the bed lies: its deepest place, and its deepest place among what is in sight [m]. */
export interface Bed {
  readonly deepestM: number
  readonly inSight: (view: View, panes: Panes) => number
}

/** How far the section is scrolled until a depth stands clear of the pane's foot [px]. */
function scrollFor(view: View, panes: Panes, depthM: number): number {
  return Math.max(0, depthM * view.scale * view.stretch + FOOT_PX - (panes.height - panes.datumY))
}

/** The section kept on its bed: where it stood on the bed that was in sight, it stands on the one that is now. */
function onBed(before: View, after: View, panes: Panes, bed: Bed): View {
  const isOnBed = Math.abs(before.sectionScrollPx - scrollFor(before, panes, bed.inSight(before, panes))) < 1
  return isOnBed ? { ...after, sectionScrollPx: scrollFor(after, panes, bed.inSight(after, panes)) } : after
}

/** Scales about a place on the screen, which stays where it is; a section that grows out of its pane shows its bed. */
export function zoomAt(view: View, panes: Panes, [px, py]: Point, factor: number, bed: Bed): View {
  const scale = Math.min(SCALE_LIMITS[1], Math.max(SCALE_LIMITS[0], view.scale * factor))
  const isSection = py > panes.planHeight
  const dx = px - panes.width / 2
  const dy = isSection ? 0 : py - panes.planHeight / 2
  const next: View = {
    ...view,
    scale,
    u: view.u + dx / view.scale - dx / scale,
    v: view.v - dy / view.scale + dy / scale,
  }
  if (!isSection) return onBed(view, next, panes, bed)
  const scroll = ((py - panes.datumY + view.sectionScrollPx) * scale) / view.scale - (py - panes.datumY)
  return { ...next, sectionScrollPx: Math.min(scrollFor(next, panes, bed.deepestM), Math.max(0, scroll)) }
}

/** Moves the paper by pixels; over the section, up and down moves the section alone. */
export function panBy(view: View, panes: Panes, [dx, dy]: Point, isSection: boolean, bed: Bed): View {
  const u = view.u - dx / view.scale
  if (!isSection) return onBed(view, { ...view, u, v: view.v + dy / view.scale }, panes, bed)
  const scroll = Math.min(scrollFor(view, panes, bed.deepestM), Math.max(0, view.sectionScrollPx - dy))
  return { ...view, u, sectionScrollPx: scroll }
}

/** The box around a box of the plan after it is turned into the sheet. */
export function boundsInSheet(bounds: Bounds, turn: Turn): Bounds {
  const a = toSheet([bounds.minX, bounds.minY], turn)
  const b = toSheet([bounds.maxX, bounds.maxY], turn)
  return {
    minX: Math.min(a[0], b[0]),
    minY: Math.min(a[1], b[1]),
    maxX: Math.max(a[0], b[0]),
    maxY: Math.max(a[1], b[1]),
  }
}
