import { formatQuantity, toDisplay, type UnitSystem } from '../../../units/index.ts'
import type { ReadingRow } from './reading-rows.ts'

/** 95 % of a normal distribution lies within so many standard deviations. */
const TWO_SIDED_95 = 1.96

/** Where a reading lies 19 times in 20, and at which end the test could not see further. */
export interface Tolerance {
  /** In the reading's canonical unit. */
  readonly low: number
  readonly high: number
  readonly openAt?: 'low' | 'high' | undefined
}

/**
 * The span in which a reading lies 19 times in 20, for one standard deviation; nothing lies below its least. What a test sees
 * only from `seenFrom` on may be as much as that, whatever it shows.
 */
export function toleranceOf(
  row: ReadingRow,
  value: number,
  sigma: number,
  openAt?: Tolerance['openAt'],
  seenFrom = row.min,
): Tolerance {
  const half = TWO_SIDED_95 * sigma
  return { low: Math.max(row.min, value - half), high: Math.max(value + half, seenFrom), openAt }
}

/** "± 0.3", or "up to 0.4", the span's upper end, where it would reach below the least that can be. */
export function toleranceWords(
  row: ReadingRow,
  value: number,
  sigma: number,
  digits: number,
  units: UnitSystem,
  high = toleranceOf(row, value, sigma).high,
): string {
  const half = TWO_SIDED_95 * sigma
  if (!(half > 0) || value - half >= row.min) return plusMinusWords(row, sigma, digits, units)
  const most = toDisplay(row.quantity, high, units)
  // two figures of what the test can't tell are enough
  const step = 10 ** Math.max(-digits, Math.floor(Math.log10(most)) - 1)
  const words = formatQuantity('number', Math.max(step, Math.round(most / step) * step), units, {
    digits: Math.max(0, -Math.round(Math.log10(step))),
  })
  return `up to\u00a0${words}`
}

/**
 * "± 0.3": half of that span without its unit, which stands at the value; at the value's own decimals, and never with more
 * than two figures.
 */
export function plusMinusWords(row: ReadingRow, sigma: number, digits: number, units: UnitSystem): string {
  const half = TWO_SIDED_95 * sigma
  if (!(half > 0)) return `±\u00a00`
  const shown = half * (toDisplay(row.quantity, 1, units) - toDisplay(row.quantity, 0, units))
  const step = 10 ** Math.max(-digits, Math.floor(Math.log10(shown)) - 1)
  const rounded = Math.max(step, Math.round(shown / step) * step)
  return `±\u00a0${formatQuantity('number', rounded, units, { digits: Math.max(0, -Math.round(Math.log10(step))) })}`
}
