import { formatForEntry, formatQuantity, type Quantity, type UnitSystem } from '../../units/index.ts'
import { limitWords } from './limits.ts'

interface Told {
  readonly pattern: RegExp
  readonly say: (value: number, units: UnitSystem) => string
}

/** A number, "2 to 4" or "between 2 and 4", before its unit. */
const before = (unit: string) =>
  new RegExp(
    `(?<![\\d.,])(?:(\\d+(?:\\.\\d+)?)( to |(?<=[Bb]etween [\\d.]+) and ))?(\\d+(?:\\.\\d+)?) ${unit}(?![\\w²³/])`,
    'g',
  )

/** A volume in a sentence is told in two or three figures. */
const volume = (m3: number, units: UnitSystem) => formatQuantity('volume', m3, units, { sigma: 0.05 * m3 })
/** What a person fills up to a mark. */
const bucket = (m3: number, units: UnitSystem) => formatQuantity('volume', m3, units, { sigma: 0.2 * m3 })
const told = (quantity: Quantity) => (value: number, units: UnitSystem) => formatQuantity(quantity, value, units)

/** What the sums say in metric units within a sentence. A strength or a source's own figure keeps its unit. */
const TOLD: readonly Told[] = [
  { pattern: before('mm a day'), say: told('areaRate') },
  { pattern: before('mm'), say: (mm, units) => formatForEntry('length', mm / 1000, units) },
  { pattern: before('m'), say: told('length') },
  { pattern: before('km'), say: (km, units) => limitWords('length', km * 1000, units, 'high') },
  // A step of temperature has no zero to be shifted.
  {
    pattern: /(?<=every )()()(\d+) °C/g,
    say: (step, units) => (units === 'us' ? `${(step * 9) / 5} °F` : `${step} °C`),
  },
  { pattern: before('°C'), say: (celsius, units) => formatQuantity('temperature', celsius, units, { digits: 0 }) },
  { pattern: before('m³'), say: volume },
  { pattern: before('L'), say: (litres, units) => bucket(litres / 1000, units) },
]

/** A sentence of the sums with its lengths, volumes and temperatures in the owner's units. */
export function inOwnUnits(text: string, units: UnitSystem): string {
  if (units === 'metric') return text
  return TOLD.reduce(
    (words, { pattern, say }) =>
      words.replace(pattern, (_, low: string | undefined, joint: string | undefined, high: string) => {
        const to = say(Number(high), units)
        return low ? `${say(Number(low), units)}${joint}${to}` : to
      }),
    text,
  )
}
