import type { ReadingKey, ReadingSet, ReadingValues } from '../../../document/index.ts'
import type { Band } from '../../../plan/index.ts'
import type { UnitSystem } from '../../../units/index.ts'
import { inOwnUnits } from '../../fields/index.ts'
import { formatMeasured, READING_ROWS, shortValue } from '../scale/index.ts'

/** Said where the pool has no readings and its fill water stands in. */
export const OF_FILL_WATER = 'Of the fill water, since the pool has no readings of its own yet.'

/** What it means that some of the usual readings are absent; undefined where all are there, or told by others. */
export function unknownWords(
  values: ReadingValues,
  units: UnitSystem,
  told: readonly ReadingKey[] = [],
): string | undefined {
  const missing = READING_ROWS.filter((row) => !row.isMore && values[row.key] === undefined && !told.includes(row.key))
  if (missing.length === 0) return undefined
  const needed = missing.filter((row) => row.key === 'pH' || row.key === 'ta_mg_per_L_as_CaCO3')
  const sentences: string[] = []
  if (needed.length > 0)
    sentences.push(`Without ${andList(needed.map((row) => inSentence(row.label)))} the water can’t be worked out.`)
  const others = missing.filter((row) => !needed.includes(row) && row.key !== 'temperature_C')
  if (others.length > 0)
    sentences.push(`Not measured, so nothing is dosed for it: ${andList(others.map((row) => inSentence(row.label)))}.`)
  if (missing.some((row) => row.key === 'temperature_C'))
    sentences.push(inOwnUnits('Without a temperature, 25 °C is assumed.', units))
  return sentences.join(' ')
}

/** A set in one line: "pH 7.6, total alkalinity 80 mg/L". */
export function setInOneLine(set: ReadingSet, units: UnitSystem): string {
  return READING_ROWS.flatMap((row) => {
    const value = set.values[row.key]
    return value === undefined ? [] : [`${inSentence(row.short)} ${formatMeasured(row.key, value, units)}`]
  }).join(', ')
}

/** "a", "a and b", "a, b and c" */
export function andList(names: readonly string[]): string {
  if (names.length < 2) return names.join('')
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}

/** A label inside a sentence: "total alkalinity", but "pH"; without what follows a comma. */
export function inSentence(label: string): string {
  const name = label.split(',')[0] ?? label
  return /^(pH|Mg)/.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1)
}

/** "below the band 60 to 120 mg/L" */
export function whereWords(value: number, band: Band, format: (value: number) => string): string {
  const where = value < band.low ? 'below' : value > band.high ? 'above' : 'inside'
  return `${where} the band ${rangeWords(format(band.low), format(band.high))}`
}

/** Which units the fields understand, by what is common where these units are. */
export function unitsWords(units: UnitSystem): string {
  const grains = units === 'metric' ? '' : '4 gpg, '
  return `A bare number is mg/L. Hardness and alkalinity may be typed in other units: 4 °dH, 7 °f, ${grains}0.7 mmol/L; alkalinity also as bicarbonate, 90 mg/L HCO₃.`
}

/** "3 to 5 mg/L"; one value where both read the same. */
export function rangeWords(low: string, high: string): string {
  return low === high ? high : `${shortValue(low, high)} to ${high}`
}
