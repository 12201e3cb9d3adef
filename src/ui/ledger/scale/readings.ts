import type { ReadingKey } from '../../../document/index.ts'
import { formatQuantity, type Quantity, type UnitSystem } from '../../../units/index.ts'

/** How a reading is called and shown. The rows are in the order in which a person measures them. */
export interface ReadingRow {
  readonly key: ReadingKey
  readonly label: string
  /** For narrow columns. */
  readonly short: string
  readonly quantity: Quantity
  /** Decimals shown. */
  readonly digits: number
  /** Asked for under "More readings": the plan works without it. */
  readonly isMore: boolean
  /** What it means that it was not measured. */
  readonly whenUnknown: string
  readonly min: number
  readonly max: number
}

const UNKNOWN_DOSE = 'Not measured: nothing is dosed for it.'

/** Every reading that a person can enter. */
export const READING_ROWS: readonly ReadingRow[] = [
  {
    key: 'pH',
    label: 'pH',
    short: 'pH',
    quantity: 'pH',
    digits: 1,
    isMore: false,
    whenUnknown: 'Not measured: the water can’t be worked out without it.',
    min: 4,
    max: 11,
  },
  {
    key: 'ta_mg_per_L_as_CaCO3',
    label: 'Total alkalinity',
    short: 'Total alkalinity',
    quantity: 'concentration',
    digits: 0,
    isMore: false,
    whenUnknown: 'Not measured: the water can’t be worked out without it.',
    min: 0,
    max: 1000,
  },
  {
    key: 'ch_mg_per_L_as_CaCO3',
    label: 'Calcium hardness',
    short: 'Calcium hardness',
    quantity: 'concentration',
    digits: 0,
    isMore: false,
    whenUnknown: UNKNOWN_DOSE,
    min: 0,
    max: 5000,
  },
  {
    key: 'cya_mg_per_L',
    label: 'Stabiliser',
    short: 'Stabiliser',
    quantity: 'concentration',
    digits: 0,
    isMore: false,
    whenUnknown: `${UNKNOWN_DOSE} The chlorine floor assumes that it is there.`,
    min: 0,
    max: 500,
  },
  {
    key: 'borate_mg_per_L_as_B',
    label: 'Borate, as boron',
    short: 'Borate, as B',
    quantity: 'concentration',
    digits: 0,
    isMore: false,
    whenUnknown: UNKNOWN_DOSE,
    min: 0,
    max: 200,
  },
  {
    key: 'fc_mg_per_L_as_Cl2',
    label: 'Free chlorine',
    short: 'Free chlorine',
    quantity: 'concentration',
    digits: 1,
    isMore: false,
    whenUnknown: UNKNOWN_DOSE,
    min: 0,
    max: 100,
  },
  {
    key: 'salt_mg_per_L_as_NaCl',
    label: 'Salt',
    short: 'Salt',
    quantity: 'concentration',
    digits: 0,
    isMore: false,
    whenUnknown: UNKNOWN_DOSE,
    min: 0,
    max: 40000,
  },
  {
    key: 'temperature_C',
    label: 'Water temperature',
    short: 'Temperature',
    quantity: 'temperature',
    digits: 0,
    isMore: false,
    whenUnknown: 'Not measured: reckoned at 25 °C.',
    min: -2,
    max: 45,
  },
  {
    key: 'mg_hardness_mg_per_L_as_CaCO3',
    label: 'Magnesium hardness',
    short: 'Mg hardness',
    quantity: 'concentration',
    digits: 0,
    isMore: true,
    whenUnknown: 'Not measured: reckoned as none.',
    min: 0,
    max: 5000,
  },
  {
    key: 'sulfate_mg_per_L',
    label: 'Sulfate',
    short: 'Sulfate',
    quantity: 'concentration',
    digits: 0,
    isMore: true,
    whenUnknown: 'Not measured: reckoned as none.',
    min: 0,
    max: 5000,
  },
]

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
  const scaled = value * 10 ** row.digits
  const digits = Math.abs(scaled - Math.round(scaled)) > 0.02 ? row.digits + 1 : row.digits
  return formatQuantity(row.quantity, value, units, { digits })
}

/** An index, its sign always shown. */
export function formatSigned(value: number, units: UnitSystem): string {
  const text = formatQuantity('number', Math.abs(value), units, { digits: 2 })
  if (Number.parseFloat(text) === 0) return text
  return `${value < 0 ? '−' : '+'}${text}`
}
