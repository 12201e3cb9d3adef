import type { DemandTerm } from '../../../plan/index.ts'
import { formatQuantity, fromDisplay, toDisplay, type UnitSystem } from '../../../units/index.ts'
import { amountFromG, measureOf } from '../opening/amounts.ts'
import { shortValue } from '../scale/index.ts'

/** "3 to 5 mg/L": a plausible range in the unit of its second end; one value where both read the same. */
export function rangeWords(low: string, high: string): string {
  if (low === high) return high
  return `${shortValue(low, high)} to ${high}`
}

/** The terms that do something, largest first; what is nothing says nothing. */
export function countingTerms(terms: readonly DemandTerm[]): readonly DemandTerm[] {
  return terms
    .filter((term) => term.value !== 0 || term.high !== 0)
    .toSorted((a, b) => Math.abs(b.value) - Math.abs(a.value))
}

export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const

/** Noon UTC of a day of that moment's year: months and day numbers are then the same everywhere. */
export function noonOf(nowMs: number, month: number, day: number): number {
  const last = DAYS[month] ?? 31
  return Date.UTC(new Date(nowMs).getUTCFullYear(), month, Math.min(Math.max(1, day), last), 12)
}

/** An amount that is known to a factor of two, in two figures: "4.7 kg", "10 lb". */
export function estimateWords(productId: string, amountG: number, units: UnitSystem): string {
  const measure = measureOf(productId)
  const amount = amountFromG(productId, amountG)
  if (!(amount > 0)) return formatQuantity(measure, 0, units)
  if (units === 'metric') return formatQuantity(measure, amount, units, { sigma: amount })
  // Pounds go with ounces and gallons with theirs: the figures are those of the whole.
  const rounded = Number(toDisplay(measure, amount, units).toPrecision(2))
  return formatQuantity(measure, fromDisplay(measure, rounded, units), units)
}
