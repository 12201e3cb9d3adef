import type { Point } from '../../basin/index.ts'
import { fromDisplay, type UnitSystem } from '../../units/index.ts'

/** Round steps in the main unit of length: feet, or metres. */
const FOOT_STEPS = [0.25, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000]
const METRE_STEPS = [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200]
/** Lines closer than this are a mesh, not a grid [px]. */
const LINE_APART_PX = 46
const BAR_AT_LEAST_PX = 60

/** The round step of the grid at a scale [m]. */
export function gridStep(scale: number, system: UnitSystem, apartPx = LINE_APART_PX): number {
  const steps = system === 'metric' ? METRE_STEPS : FOOT_STEPS
  const shown = steps.find((step) => fromDisplay('length', step, system) * scale >= apartPx) ?? steps.at(-1) ?? 1
  return fromDisplay('length', shown, system)
}

/** The length that the scale bar shows [m]. */
export function scaleBarLength(scale: number, system: UnitSystem): number {
  return gridStep(scale, system, BAR_AT_LEAST_PX)
}

/** The crossing of grid lines nearest to a place, in the sheet's frame [m]. */
export function onGrid([u, v]: Point, stepM: number): Point {
  return [Math.round(u / stepM) * stepM || 0, Math.round(v / stepM) * stepM || 0]
}

/** Relative: a place so near to a line of the grid is on it. */
const ON_LINE = 1e-6

/** A place moved along the sheet: finely by so many steps, else to that many lines of the grid further on. */
export function movedInSheet(from: Point, by: Point, times: number, stepM: number, isFine: boolean): Point {
  const along = (at: number, way: number): number => {
    if (way === 0) return at
    if (isFine) return at + way * times * stepM
    const line = way > 0 ? Math.floor(at / stepM + ON_LINE) : Math.ceil(at / stepM - ON_LINE)
    return (line + way * times) * stepM || 0
  }
  return [along(from[0], by[0]), along(from[1], by[1])]
}

/** The multiples of a step inside a range, at most `most` of them. */
export function gridLines(from: number, to: number, step: number, most = 200): number[] {
  const first = Math.ceil(from / step)
  const last = Math.min(Math.floor(to / step), first + most - 1)
  const lines: number[] = []
  for (let i = first; i <= last; i++) lines.push(i * step)
  return lines
}
