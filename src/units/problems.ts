import type { Problem } from '../base/index.ts'
import { quantityRow } from './quantities.ts'
import type { Quantity, UnitSystem } from './types.ts'

export type ParseTrouble =
  | 'empty'
  | 'too-long'
  | 'no-number'
  | 'not-a-number'
  | 'ambiguous-comma'
  | 'ambiguous-gallon'
  | 'unknown-unit'
  | 'wrong-kind'
  | 'order-of-units'
  | 'negative'
  | 'too-large'
  | 'divided-by-zero'

// biome-ignore format: a table of words
const WORDS: { readonly [T in ParseTrouble]: { readonly what: (text: string, noun: string) => string; readonly why: string; readonly hint: (example: string, detail: string) => string } } = {
  empty: { what: (_, noun) => `There is no text to read ${noun} from.`, why: 'An empty field is unknown, never zero.', hint: (e) => `Type it like ${e}.` },
  'too-long': { what: (_, noun) => `This text is too long for ${noun}.`, why: 'Only a number and its unit are read.', hint: (e) => `Type it like ${e}.` },
  'no-number': { what: (t, noun) => `“${t}” has no number where ${noun} needs one.`, why: 'Nothing is guessed.', hint: (e) => `Type it like ${e}.` },
  'not-a-number': { what: (t) => `“${t}” can't be read as one number.`, why: 'Its points, commas, spaces or letters don’t fall where those of a number do.', hint: (e) => `Type it like ${e}.` },
  'ambiguous-comma': { what: (t) => `The comma in “${t}” can be read two ways.`, why: 'It may part thousands or decimals, a thousandfold difference.', hint: (_, d) => `Write ${d}.` },
  'ambiguous-gallon': { what: (t) => `“${t}” doesn't say whether its unit is the US or the imperial one.`, why: 'They differ by a fifth in the gallon.', hint: (_, d) => `Write “${d} us” or “${d} imp”.` },
  'unknown-unit': { what: (t) => `“${t}” has a unit that isn't known here.`, why: 'Nothing is guessed.', hint: (e) => `Type it like ${e}.` },
  'wrong-kind': { what: (t, noun) => `“${t}” isn't ${noun}.`, why: 'Its unit measures something else; a fluid ounce is not an ounce of weight.', hint: (e) => `Type it like ${e}.` },
  'order-of-units': { what: (t) => `The parts of “${t}” don't go from a large unit to a smaller one.`, why: 'Only parts like feet and inches can be added.', hint: (e) => `Type it like ${e}.` },
  negative: { what: (_, noun) => `This is below zero, which ${noun} can't be.`, why: 'It would turn every result around.', hint: (e) => `Type it like ${e}.` },
  'too-large': { what: (_, noun) => `This is too large for ${noun} here.`, why: 'Beyond it something was mistyped.', hint: (e) => `Type it like ${e}.` },
  'divided-by-zero': { what: (t) => `“${t}” divides by zero.`, why: 'There is no such number.', hint: (e) => `Type it like ${e}.` },
}

/** What could not be read, worded for the person who typed it. `detail` goes into the hint of the ambiguous ones. */
export function parseProblem(
  code: ParseTrouble,
  quantity: Quantity,
  system: UnitSystem,
  text: string,
  detail = '',
): Problem {
  const row = quantityRow(quantity)
  const words = WORDS[code]
  const shown = text.length > 24 ? `${text.slice(0, 24)}…` : text
  return {
    code: `typed-${code}`,
    path: '',
    what: words.what(shown, row.noun),
    why: words.why,
    hint: words.hint(row.example[system], detail),
  }
}
