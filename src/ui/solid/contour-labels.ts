import type { ContourLine, Point } from '../../basin/index.ts'
import { formatQuantity, toDisplay, type UnitSystem, unitLabel } from '../../units/index.ts'

/** A place on a line, and the way the line goes there. */
export interface Place {
  readonly at: Point
  readonly along: Point
}

/** A figure on a contour line: the first of its places that can be seen takes it. */
export interface ContourLabel {
  readonly key: string
  readonly depthM: number
  readonly places: readonly Place[]
}

/** Shares of a line's length at which its figure may stand, best first. */
const SHARES = [0.5, 0.35, 0.65, 0.22, 0.78, 0.1, 0.9]
/** Lines shorter than this carry no figure [m]. */
const LEAST_M = 0.8

function lengthOf(line: ContourLine): number {
  let length = 0
  for (let i = 1; i < line.points.length; i++)
    length += Math.hypot(line.points[i]![0] - line.points[i - 1]![0], line.points[i]![1] - line.points[i - 1]![1])
  return length
}

function placeAlong(line: ContourLine, atM: number): Place | undefined {
  let gone = 0
  for (let i = 1; i < line.points.length; i++) {
    const [a, b] = [line.points[i - 1]!, line.points[i]!]
    const run = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (gone + run >= atM && run > 0) {
      const t = (atM - gone) / run
      return {
        at: [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t],
        along: [(b[0] - a[0]) / run, (b[1] - a[1]) / run],
      }
    }
    gone += run
  }
  return undefined
}

/** One figure for each depth, on its longest line. */
export function contourLabels(lines: readonly ContourLine[]): ContourLabel[] {
  const longest = new Map<number, { readonly line: ContourLine; readonly length: number }>()
  for (const line of lines) {
    const length = lengthOf(line)
    if (length >= LEAST_M && length > (longest.get(line.depthM)?.length ?? 0))
      longest.set(line.depthM, { line, length })
  }
  return [...longest.values()].map(({ line, length }) => ({
    key: line.depthM.toFixed(4),
    depthM: line.depthM,
    places: SHARES.map((share) => placeAlong(line, share * length)).filter((place) => place !== undefined),
  }))
}

/** A place on the screen [px]. */
export type Spot = readonly [x: number, y: number]

/** How near to one another, from middle to middle, two figures may stand across and down [px]. */
const APART_PX = [46, 24] as const

/** Whether a figure there would stand clear of those that are there already. */
export function isClearOf(spot: Spot, taken: readonly Spot[]): boolean {
  return taken.every(([x, y]) => Math.abs(x - spot[0]) >= APART_PX[0] || Math.abs(y - spot[1]) >= APART_PX[1])
}

/** Rounding of a depth that is meant to be round, in the unit it is shown in. */
const ROUND = 1e-6

/** A round depth as charts write it: "5 ft", "1.5 m". */
export function writeContour(shownM: number, system: UnitSystem): string {
  const shown = toDisplay('length', shownM, system)
  const isRound = (parts: number) => Math.abs(shown * parts - Math.round(shown * parts)) < ROUND
  if (system !== 'metric' && isRound(1)) return `${Math.round(shown)} ${unitLabel('length', system)}`
  return formatQuantity('length', shownM, system, { digits: system !== 'metric' ? 0 : isRound(10) ? 1 : 2 })
}
