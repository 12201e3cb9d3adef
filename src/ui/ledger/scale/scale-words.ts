import type { Band } from '../../../plan/index.ts'
import { readingRow, type ScaleKey } from './readings.ts'
import { isWithin } from './scale-map.ts'

interface ScaleContent {
  readonly key: ScaleKey
  readonly band?: Band | undefined
  readonly before?: number | undefined
  readonly isBeforeMeasured: boolean
  readonly after?: number | undefined
  /** Whether the value is where it should be; without it the band says so. */
  readonly isInside?: boolean | undefined
}

/** What a scale shows, in one sentence for a screen reader. */
export function scaleWords(content: ScaleContent, format: (value: number) => string): string {
  const { key, band, before, isBeforeMeasured, after } = content
  const label = key === 'calciteSI' ? 'Calcite saturation index' : (readingRow(key)?.label ?? key)
  const start = key === 'calciteSI' ? 'from the readings' : 'measured'
  const parts: string[] = []
  if (before !== undefined) parts.push(`${isBeforeMeasured ? start : 'expected before'} ${format(before)}`)
  if (after !== undefined) parts.push(`expected ${format(after)}`)
  const value = after ?? before
  const isInside = content.isInside ?? (value === undefined ? undefined : isWithin(value, band))
  if (band && value !== undefined) {
    const where = isInside ? 'inside the band' : value < band.low ? 'below the band' : 'above the band'
    parts.push(`${where} ${shortValue(format(band.low), format(band.high))} to ${format(band.high)}`)
  } else if (isInside === false) parts.push('outside the usual range')
  return `${label}: ${parts.join(', ')}`
}

/** The first of two values without its unit where both have the same: "42" of "42 mg/L" and "92 mg/L". */
export function shortValue(first: string, second: string): string {
  const unit = /\s(\S.*)$/.exec(second)?.[0]
  // Pounds with ounces, gallons with fluid ounces: a value of two units keeps both.
  return unit && !/\d/.test(unit) && first.endsWith(unit) ? first.slice(0, -unit.length) : first
}
