import type { ReadingSet, ReadingValues } from '../../../document/index.ts'
import type { UnitSystem } from '../../../units/index.ts'
import { formatMeasured, READING_ROWS } from '../scale/index.ts'

/** What it means that some of the usual readings are absent; undefined where all are there. */
export function unknownWords(values: ReadingValues): string | undefined {
  const missing = READING_ROWS.filter((row) => !row.isMore && values[row.key] === undefined)
  if (missing.length === 0) return undefined
  const needed = missing.filter((row) => row.key === 'pH' || row.key === 'ta_mg_per_L_as_CaCO3')
  const sentences: string[] = []
  if (needed.length > 0)
    sentences.push(`Without ${andList(needed.map((row) => inSentence(row.label)))} the water can’t be worked out.`)
  const others = missing.filter((row) => !needed.includes(row) && row.key !== 'temperature_C')
  if (others.length > 0)
    sentences.push(`Not measured, so nothing is dosed for it: ${andList(others.map((row) => inSentence(row.label)))}.`)
  if (missing.some((row) => row.key === 'temperature_C')) sentences.push('Without a temperature, 25 °C is assumed.')
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
