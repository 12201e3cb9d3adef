import { fail, ok, type Problem, type Result } from '../../base/index.ts'
import { formatForEntry, parseQuantity, type Quantity, type UnitSystem } from '../../units/index.ts'
import { limitWords } from './limits.ts'

/** What a field's change answers: a problem where the document refused it. */
// biome-ignore lint/suspicious/noConfusingVoidType: plain setters return nothing and are welcome too
export type Answer = Problem | undefined | void

export interface Range {
  /** Both in the canonical unit; the ends are allowed. */
  readonly min?: number | undefined
  readonly max?: number | undefined
  /** The ends are told as they are, not rounded to the inside: they can be seen elsewhere. */
  readonly isExact?: boolean | undefined
}

/** Relative slack at the ends of a range, so that a converted end is still inside. */
const SLACK = 1e-9

type Say = (si: number, end: 'low' | 'high') => string

function outside(range: Range, value: number, say: Say): Problem | undefined {
  const { min, max } = range
  const slack = SLACK * Math.max(1, Math.abs(value))
  const isLow = min !== undefined && value < min - slack
  const isHigh = max !== undefined && value > max + slack
  if (!isLow && !isHigh) return undefined
  const hint =
    min !== undefined && max !== undefined
      ? `Between ${say(min, 'low')} and ${say(max, 'high')}.`
      : min !== undefined
        ? `Not less than ${say(min, 'low')}.`
        : `Not more than ${say(max ?? value, 'high')}.`
  return {
    code: 'field-out-of-range',
    path: '',
    what: isLow ? 'This is too small.' : 'This is too large.',
    why: 'It cannot be used.',
    hint,
  }
}

/** What was typed into a quantity's field, in the canonical unit; an empty field is undefined. */
export function readQuantity(
  quantity: Quantity,
  text: string,
  system: UnitSystem,
  range: Range = {},
): Result<number | undefined> {
  if (text.trim() === '') return ok(undefined)
  const parsed = parseQuantity(quantity, text, system)
  if (!parsed.ok) return parsed
  const problem = outside(range, parsed.value, (si, end) =>
    range.isExact ? formatForEntry(quantity, si, system) : limitWords(quantity, si, system, end),
  )
  return problem ? fail(problem) : parsed
}

/** What was typed into a plain number's field, its thousands parted as the units part them; with no digits a whole number. */
export function readNumber(
  text: string,
  system: UnitSystem,
  range: Range = {},
  digits?: number,
): Result<number | undefined> {
  const read = readQuantity('number', text, system, range)
  return read.ok && read.value !== undefined && digits === 0 ? ok(Math.round(read.value)) : read
}
