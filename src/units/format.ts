import { inUnit } from './convert.ts'
import {
  atLeastTwoDigits,
  commaPartsThousands,
  type Fineness,
  fixed,
  fromHalfWidth,
  MINUS,
  NBSP,
  printNumber,
  roundTo,
  TWO_SIDED_95,
} from './digits.ts'
import { quantityRow, type Rung, unitOf } from './quantities.ts'
import type { Quantity, Unit, UnitSystem } from './types.ts'

export interface FormatOptions {
  /** One standard deviation in the canonical unit: the digits follow it. */
  readonly sigma?: number | undefined
  /** Decimals of the shown unit; of feet and inches, the inch is split in 2^digits. */
  readonly digits?: number | undefined
  /** short: 7′ 10″, gal/in; long: 7 ft 10 in, gal per inch. */
  readonly style?: 'short' | 'long' | undefined
}

const UNKNOWN = '—'
const EIGHTHS: { readonly [eighths: number]: string } = { 1: '⅛', 2: '¼', 3: '⅜', 4: '½', 5: '⅝', 6: '¾', 7: '⅞' }

/** A canonical number as text with its unit, rounded as its uncertainty, the options or the table say. */
export function formatQuantity(
  quantity: Quantity,
  si: number,
  system: UnitSystem,
  options: FormatOptions = {},
): string {
  if (!Number.isFinite(si)) return UNKNOWN
  const display = quantityRow(quantity)[system]
  const ladder: readonly Rung[] = display.ladder ?? [{ unit: display.main }]
  for (const rung of ladder) {
    const unit = unitOf(rung.unit)
    const decimals = rung.decimals ?? display.decimals
    const parts = rung.with === undefined ? undefined : unitOf(rung.with)
    const shown = parts ?? unit
    const value = inUnit(shown, si)
    const fineness =
      parts === undefined ? finenessOf(value, shown, decimals, options) : splitFineness(shown, decimals, options)
    const size = Math.abs(roundTo(value, fineness)) * (shown.toSI / unit.toSI)
    if (rung.below !== undefined && size >= rung.below - 1e-9) continue
    if (parts === undefined)
      return withUnit(printNumber(value, fineness, commaPartsThousands(unit, system)), unit, options)
    return printParts(value, fineness, unit, parts, system, options)
  }
  return UNKNOWN
}

/** As a field shows a number for editing: typed back, it is the same for every practical purpose. */
export function formatForEntry(quantity: Quantity, si: number, system: UnitSystem): string {
  const display = quantityRow(quantity)[system]
  const unit = unitOf(display.main)
  if (!Number.isFinite(si)) return ''
  if (display.main === 'ft' && display.ladder !== undefined)
    return formatQuantity(quantity, si, system, { digits: display.entry })
  const value = inUnit(unit, si)
  const isWhole = Math.abs(value) >= (display.entryWholeFrom ?? Number.POSITIVE_INFINITY)
  const text = printNumber(value, fixed(isWhole ? 0 : display.entry), commaPartsThousands(unit, system))
  return withUnit(text.includes('.') ? text.replace(/\.?0+$/, '') : text, unit, {})
}

/** The 95 % interval of a measured number, "± 390 gal", for a standard deviation in the canonical unit. */
export function formatPlusMinus(quantity: Quantity, si: number, sigma: number, system: UnitSystem): string {
  if (!Number.isFinite(sigma) || sigma < 0) return `±${NBSP}${UNKNOWN}`
  const display = quantityRow(quantity)[system]
  const rungs: readonly Rung[] = display.ladder ?? [{ unit: display.main }]
  const halfWidth = sigma * TWO_SIDED_95
  const isSplit = rungs.every((rung) => rung.with !== undefined)
  if (isSplit)
    return `±${NBSP}${formatQuantity(quantity, halfWidth, system, { digits: halfWidth < 0.01 ? 3 : halfWidth < 0.05 ? 1 : 0 })}`
  // The unit of the value itself, so that both can be read together.
  const rung = rungs.find((r) => r.below === undefined || Math.abs(inUnit(unitOf(r.unit), si)) < r.below) ?? rungs[0]
  const unit = unitOf(rung?.unit ?? display.main)
  const shown = halfWidth / unit.toSI
  const fineness = shown > 0 ? fromHalfWidth(shown) : fixed(0)
  return `±${NBSP}${withUnit(printNumber(shown, fineness, commaPartsThousands(unit, system)), unit, {})}`
}

/** A fall per run as "1 : n". */
export function formatSlope(slope: number): string {
  if (Number.isNaN(slope)) return UNKNOWN
  const steepness = Math.abs(slope)
  if (steepness < 1e-3) return 'level'
  if (steepness > 100) return 'vertical'
  const run = 1 / steepness
  const text = run < 9.95 ? String(Number(run.toFixed(1))) : run.toFixed(0)
  return `1${NBSP}:${NBSP}${text}`
}

function finenessOf(value: number, unit: Unit, decimals: number, options: FormatOptions): Fineness {
  if (options.digits !== undefined) return fixed(options.digits)
  if (options.sigma !== undefined && options.sigma > 0 && Number.isFinite(options.sigma)) {
    return fromHalfWidth((options.sigma * TWO_SIDED_95) / unit.toSI)
  }
  return atLeastTwoDigits(value, decimals)
}

/** Of a number in two units: inches go by halves, other small units by tenths. */
function splitFineness(small: Unit, decimals: number, options: FormatOptions): Fineness {
  const isInch = small.id === 'in'
  const of = (digits: number): Fineness =>
    isInch ? { step: 2 ** -Math.min(4, Math.max(0, digits)), decimals: 4 } : fixed(digits)
  if (options.digits !== undefined) return of(options.digits)
  if (options.sigma === undefined || !(options.sigma > 0) || !Number.isFinite(options.sigma)) return of(decimals)
  const halfWidth = (options.sigma * TWO_SIDED_95) / small.toSI
  if (isInch && halfWidth >= 12) return { step: 12, decimals: 0 }
  if (halfWidth >= 1) return of(0)
  return of(isInch ? Math.ceil(-Math.log2(halfWidth)) : Math.ceil(-Math.log10(halfWidth)))
}

function printParts(
  value: number,
  fineness: Fineness,
  big: Unit,
  small: Unit,
  system: UnitSystem,
  options: FormatOptions,
): string {
  const ratio = Math.round(big.toSI / small.toSI)
  const isInch = small.id === 'in'
  const steps = Math.round(Math.abs(value) / fineness.step)
  const total = isInch ? steps * fineness.step : Number((steps * fineness.step).toFixed(fineness.decimals))
  const whole = Math.floor(total / ratio + 1e-9)
  const rest = Math.max(0, total - whole * ratio)
  const sign = value < 0 && total > 0 ? MINUS : ''
  const isLong = options.style === 'long'
  const wholeText = printNumber(whole, fixed(0), commaPartsThousands(big, system))
  const restText = isInch ? inches(rest) : printNumber(rest, fineness, commaPartsThousands(small, system))
  const bigText = isInch && !isLong ? `${wholeText}′` : `${wholeText}${NBSP}${big.label}`
  const smallText = isInch ? (isLong ? `${restText}${NBSP}in` : `${restText}″`) : withUnit(restText, small, options)
  if (whole === 0) return `${sign}${smallText}`
  // A part that is not known is not printed: to the nearest foot is 108 ft, not 108 ft 0 in.
  if (fineness.step >= ratio) return `${sign}${isInch ? `${wholeText}${NBSP}ft` : bigText}`
  if (rest === 0 && !isInch) return `${sign}${bigText}`
  return `${sign}${bigText}${NBSP}${smallText}`
}

function inches(value: number): string {
  const whole = Math.floor(value)
  const sixteenths = Math.round((value - whole) * 16)
  if (sixteenths === 0) return String(whole)
  if (sixteenths % 2 === 0) return `${whole === 0 ? '' : whole}${EIGHTHS[sixteenths / 2] ?? ''}`
  return `${whole === 0 ? '' : `${whole}${NBSP}`}${sixteenths}/16`
}

function withUnit(text: string, unit: Unit, options: FormatOptions): string {
  const label = options.style === 'long' ? (unit.long ?? unit.label) : unit.label
  if (label === '') return text
  return label === '°' ? `${text}${label}` : `${text}${NBSP}${label}`
}
