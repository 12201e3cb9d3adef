import { fail, ok, type Problem, type Result } from '../../base/index.ts'
import { formatForEntry, formatQuantity, parseQuantity, type Quantity, type UnitSystem } from '../../units/index.ts'

/** What a field's change answers: a problem where the document refused it. */
// biome-ignore lint/suspicious/noConfusingVoidType: plain setters return nothing and are welcome too
export type Answer = Problem | undefined | void

export interface Range {
  /** Both in the canonical unit; the ends are allowed. */
  readonly min?: number | undefined
  readonly max?: number | undefined
}

/** Relative slack at the ends of a range, so that a converted end is still inside. */
const SLACK = 1e-9

function outside(range: Range, value: number, say: (si: number) => string): Problem | undefined {
  const { min, max } = range
  const slack = SLACK * Math.max(1, Math.abs(value))
  const isLow = min !== undefined && value < min - slack
  const isHigh = max !== undefined && value > max + slack
  if (!isLow && !isHigh) return undefined
  const hint =
    min !== undefined && max !== undefined
      ? `Between ${say(min)} and ${say(max)}.`
      : min !== undefined
        ? `Not less than ${say(min)}.`
        : `Not more than ${say(max ?? value)}.`
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
  const problem = outside(range, parsed.value, (si) => formatForEntry(quantity, si, system))
  return problem ? fail(problem) : parsed
}

/** What was typed into a plain number's field; a decimal comma is taken. */
export function readNumber(text: string, range: Range = {}, digits?: number): Result<number | undefined> {
  const trimmed = text.trim().replaceAll('−', '-')
  if (trimmed === '') return ok(undefined)
  if (/^\d{1,3},\d{3}$/.test(trimmed)) {
    return fail({
      code: 'field-ambiguous-comma',
      path: '',
      what: 'This comma can be read in two ways.',
      why: 'One thousand and one are not the same.',
      hint: `Type ${trimmed.replace(',', '')} or ${trimmed.replace(',', '.')}.`,
    })
  }
  const value = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(trimmed) ? Number(trimmed.replace(',', '.')) : Number.NaN
  if (!Number.isFinite(value)) {
    return fail({
      code: 'field-not-a-number',
      path: '',
      what: 'This is not a number.',
      why: 'Only a number can be used here.',
      hint: 'Type a number, such as 12 or 0.5.',
    })
  }
  const rounded = digits === 0 ? Math.round(value) : value
  const problem = outside(range, rounded, (n) => formatQuantity('number', n, 'metric', { digits: digits ?? 2 }))
  return problem ? fail(problem) : ok(rounded)
}
