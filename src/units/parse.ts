import { fail, ok, type Result } from '../base/index.ts'
import { outOfUnit } from './convert.ts'
import { commaPartsThousands } from './digits.ts'
import { readNumber } from './number-text.ts'
import { type ParseTrouble, parseProblem } from './problems.ts'
import { type QuantityRow, quantityRow, unitOf } from './quantities.ts'
import { UNITS } from './table.ts'
import { plainText, type Token, tokens } from './tokens.ts'
import type { Quantity, Unit, UnitSystem } from './types.ts'

const LONGEST = 60
/** Beyond this no number of a pool makes sense in any canonical unit. */
const LARGEST = 1e9

/** Reads what people type; a bare number is in the main display unit. Ambiguous text is refused, never guessed. */
export function parseQuantity(quantity: Quantity, text: string, system: UnitSystem): Result<number> {
  const row = quantityRow(quantity)
  const trouble = (code: ParseTrouble, detail?: string) =>
    fail(parseProblem(code, quantity, system, text.trim(), detail))
  if (text.length > LONGEST) return trouble('too-long')
  const plain = plainText(text, row.kind !== 'length')
  if (plain === '') return trouble('empty')
  // A power of ten as programs write it: its e is no unit.
  if (/\d ?e ?[-+]?\d/.test(plain)) return trouble('not-a-number')
  const isNegative = plain.startsWith('-')
  const found = tokens(plain.replace(/^[-+] ?/, ''), row.kind === 'length')
  if (found === undefined || found.length === 0) return trouble('no-number')
  let sum = 0
  let previous: Unit | undefined
  for (const [index, token] of found.entries()) {
    const unit = unitFor(token, index, found, previous, row, system)
    if ('trouble' in unit) return trouble(unit.trouble, unit.detail)
    if (previous !== undefined && (unit.toSI >= previous.toSI || unit.offset !== undefined))
      return trouble('order-of-units')
    const number = readNumber(token.number, commaPartsThousands(unit, system))
    if ('trouble' in number) return trouble(number.trouble, number.detail)
    sum += outOfUnit(unit, isNegative ? -number.value : number.value)
    previous = unit
  }
  if (!Number.isFinite(sum) || Math.abs(sum) > LARGEST) return trouble('too-large')
  if (sum < 0 && !row.signed) return trouble('negative')
  return ok(sum || 0)
}

type Found = Unit | { readonly trouble: ParseTrouble; readonly detail: string }

function unitFor(
  token: Token,
  index: number,
  all: readonly Token[],
  previous: Unit | undefined,
  row: QuantityRow,
  system: UnitSystem,
): Found {
  if (token.unit !== '') return named(token.unit, row, system)
  if (previous !== undefined) {
    const smaller = previous.rest === undefined ? undefined : unitOf(previous.rest)
    // 2 m 30 is understood, 2 m 3 might be 2.03 or 2.3.
    if (smaller === undefined || (smaller.id === 'cm' && !/^\d\d$/.test(token.number)))
      return { trouble: 'not-a-number', detail: '' }
    return smaller
  }
  const main = unitOf(row[system].main)
  // "7 6" is 7 ft 6 in, but "2 30" in metres is more likely a slip.
  const isFirstOfTwo = index === 0 && all.length > 1
  if (isFirstOfTwo && main.id !== 'ft' && main.id !== 'lb') return { trouble: 'not-a-number', detail: '' }
  return main
}

function named(spelling: string, row: QuantityRow, system: UnitSystem): Found {
  if (spelling === '°' && row.kind === 'temperature') return unitOf(row[system].main)
  const known = UNITS.rows.filter((unit) => unit.names.includes(spelling))
  const fitting = known.filter((unit) => unit.kind === row.kind)
  const [first, second] = fitting
  if (first === undefined) return { trouble: known.length > 0 ? 'wrong-kind' : 'unknown-unit', detail: '' }
  if (second === undefined) return first
  return fitting.find((unit) => unit.world === system) ?? { trouble: 'ambiguous-gallon', detail: spelling }
}
