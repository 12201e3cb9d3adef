import type { ReadingKey } from '../../../document/index.ts'
import { formatQuantity, type UnitSystem } from '../../../units/index.ts'
import { READING_ROWS, type ReadingRow } from './reading-rows.ts'

/** A reading, or the index of calcite which is reckoned from readings. */
export type ScaleKey = ReadingKey | 'calciteSI'

/** The row of a reading; undefined for what is not measured but reckoned. */
export function readingRow(key: string): ReadingRow | undefined {
  return READING_ROWS.find((row) => row.key === key)
}

/** Its name, for the margin of a scale. */
export function readingLabel(key: ScaleKey): string {
  return key === 'calciteSI' ? 'Calcite SI' : (readingRow(key)?.short ?? key)
}

/** The value with its unit. */
export function formatReading(key: ScaleKey, value: number, units: UnitSystem): string {
  if (key === 'calciteSI') return formatSigned(value, units)
  const row = readingRow(key)
  return formatQuantity(row?.quantity ?? 'number', value, units, { digits: row?.digits ?? 1 })
}

/** A reading as it was taken: with one decimal more than usual where it has one. */
export function formatMeasured(key: ReadingKey, value: number, units: UnitSystem): string {
  const row = readingRow(key)
  if (!row || row.quantity === 'temperature') return formatReading(key, value, units)
  return formatQuantity(row.quantity, value, units, { digits: measuredDigits(row, value) })
}

/** Decimals of a reading as it was taken; hardness and alkalinity, converted from many units, are never finer than 1 mg/L. */
export function measuredDigits(row: ReadingRow, value: number): number {
  if (row.quantity === 'hardness' || row.quantity === 'alkalinity') return row.digits
  const scaled = value * 10 ** row.digits
  return Math.abs(scaled - Math.round(scaled)) > 0.02 ? row.digits + 1 : row.digits
}

/** An index, its sign always shown. */
export function formatSigned(value: number, units: UnitSystem): string {
  const text = formatQuantity('number', Math.abs(value), units, { digits: 2 })
  if (Number.parseFloat(text) === 0) return text
  return `${value < 0 ? '−' : '+'}${text}`
}
