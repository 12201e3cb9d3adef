import type { Bounds } from '../../basin/index.ts'
import { boundsInSheet, type Panes, type Turn, type View } from './view.ts'

/** Paper kept free around the drawing for what is written there [px]. */
export interface Margins {
  readonly left: number
  readonly right: number
  readonly planTop: number
  readonly planBottom: number
  readonly sectionTop: number
  readonly sectionBottom: number
}

export interface ToFit {
  readonly width: number
  readonly height: number
  readonly bounds: Bounds
  readonly turn: Turn
  /** Depth that the section shows below the datum, and height above it [m]. */
  readonly depthM: number
  readonly aboveM: number
  readonly margins: Margins
}

/** Exaggerations that a drawing office would use. */
const STRETCHES = [1, 2, 3, 4] as const
/** A section lower than this is hard to read and to take hold of [px]. */
const SECTION_READABLE_PX = 62
/** Share of the height that a stretched section may take. */
const SECTION_SHARE = 0.42

/** The widest scale at which plan and section both fit, true to scale unless the section would be too thin to read. */
export function fitSheet(fit: ToFit): { readonly view: View; readonly panes: Panes } {
  const { width, height, margins } = fit
  const box = boundsInSheet(fit.bounds, fit.turn)
  const w = Math.max(box.maxX - box.minX, 0.5)
  const h = Math.max(box.maxY - box.minY, 0.5)
  const depth = Math.max(fit.depthM + fit.aboveM, 0.3)
  const free = height - margins.planTop - margins.planBottom - margins.sectionTop - margins.sectionBottom
  const wide = (width - margins.left - margins.right) / w
  const scaleWith = (stretch: number) => Math.max(Math.min(wide, free / (h + depth * stretch)), 0.5)
  const stretch =
    STRETCHES.find((s) => depth * s * scaleWith(s) >= SECTION_READABLE_PX) ??
    STRETCHES.findLast((s) => depth * s * scaleWith(s) <= height * SECTION_SHARE) ??
    1
  const scale = scaleWith(stretch)
  const sectionHeight = margins.sectionTop + margins.sectionBottom + depth * stretch * scale
  const spare = Math.max(0, height - sectionHeight - (margins.planTop + margins.planBottom + h * scale))
  const planHeight = Math.max(height - sectionHeight - spare * 0.35, height * 0.3)
  const u = (box.minX + box.maxX) / 2 + (margins.right - margins.left) / 2 / scale
  const v = (box.minY + box.maxY) / 2 + (margins.planTop - margins.planBottom) / 2 / scale
  return {
    view: { turn: fit.turn, scale, u, v, stretch, sectionScrollPx: 0 },
    panes: { width, height, planHeight, datumY: planHeight + margins.sectionTop + fit.aboveM * scale * stretch },
  }
}

/** Whether a drawing has outgrown its view or shrunk in it so far that it should be fitted anew. */
export function needsNewFit(current: View, fitted: View): boolean {
  if (current.turn !== fitted.turn) return true
  const ratio = fitted.scale / current.scale
  const off = Math.hypot(current.u - fitted.u, current.v - fitted.v) * current.scale
  return ratio < 0.93 || ratio > 1.35 || off > 60
}
