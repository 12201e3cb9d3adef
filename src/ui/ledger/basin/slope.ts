import type { UnitSystem } from '../../../units/index.ts'
import { formatQuantity, formatSlope } from '../../../units/index.ts'

/** Depth down to which a floor counts as shallow [m]: 5 ft, as several city codes draw the line. */
export const SHALLOW_M = 1.524
/** Steepest usual fall per run while shallow, and beyond. */
export const SHALLOW_LIMIT = 1 / 7
export const DEEP_LIMIT = 1 / 3
const SLACK = 1e-6

export interface SlopeRemark {
  /** "1 : 7", or "flat". */
  readonly words: string
  /** Set where it is steeper than usual. */
  readonly hint: string | undefined
}

/**
 * The fall between two stations, with a hint where it is steeper than usually built [fall per run].
 * Equation: |d₂ − d₁| / (s₂ − s₁).
 * Valid for: the limits 1 : 7 while shallow and 1 : 3 beyond.
 * Source: ISPSC 2012 chapter 7 (1 : 7 to the first change of slope, then 1 : 3); city codes differ (Chicago 1 : 15,
 * Dallas 1 : 8 to 1 : 12, Wabasha 1 : 10 where shallower than 5 ft): a hint, never a ruling.
 */
export function slopeRemark(
  from: readonly [sM: number, depthM: number],
  to: readonly [sM: number, depthM: number],
  units: UnitSystem,
): SlopeRemark | undefined {
  const run = to[0] - from[0]
  if (!(run > 0)) return undefined
  const slope = Math.abs(to[1] - from[1]) / run
  if (slope < SLACK) return { words: 'flat', hint: undefined }
  const isShallow = Math.min(from[1], to[1]) < SHALLOW_M
  const limit = isShallow ? SHALLOW_LIMIT : DEEP_LIMIT
  const where = formatQuantity('length', SHALLOW_M, units)
  return {
    words: formatSlope(slope),
    hint:
      slope > limit + SLACK
        ? `Steeper than ${formatSlope(limit)}, the usual limit where it is ${isShallow ? 'shallower' : 'deeper'} than ${where}.`
        : undefined,
  }
}
