import type { Unit, UnitSystem } from './types.ts'

export const NBSP = '\u00a0'
export const MINUS = '\u2212'
/** 95 % of a normal distribution lies within so many standard deviations. */
export const TWO_SIDED_95 = 1.959964

/** How finely a number is shown: to a multiple of `step`, with so many decimals. */
export interface Fineness {
  readonly step: number
  readonly decimals: number
}

/** Fixed decimals. */
export function fixed(decimals: number): Fineness {
  const places = Math.min(12, Math.max(0, Math.trunc(decimals)))
  return { step: 10 ** -places, decimals: places }
}

/** Two significant digits of a half-width: what a number may honestly be shown to. */
export function fromHalfWidth(halfWidth: number): Fineness {
  const exponent = Math.floor(Math.log10(halfWidth)) - 1
  return { step: 10 ** exponent, decimals: Math.min(12, Math.max(0, -exponent)) }
}

/** Default decimals, and at least two significant digits of a small number. */
export function atLeastTwoDigits(value: number, decimals: number): Fineness {
  const size = Math.abs(value)
  if (size === 0 || !Number.isFinite(size)) return fixed(decimals)
  const wanted = 1 - Math.floor(Math.log10(size))
  return fixed(Math.max(decimals, Math.min(wanted, decimals + 4)))
}

/** The value rounded to the fineness. */
export function roundTo(value: number, fineness: Fineness): number {
  if (fineness.step >= 1) return Math.round(value / fineness.step) * fineness.step || 0
  return Number(value.toFixed(fineness.decimals)) || 0
}

/** Whether a comma before three digits parts thousands by the custom of those who use this unit. */
export function commaPartsThousands(unit: Unit, system: UnitSystem): boolean {
  return unit.world === 'any' ? system !== 'metric' : unit.world !== 'metric'
}

/** A rounded number with thousands set apart: by a comma, or by a thin space where a comma may be a decimal sign. */
export function printNumber(value: number, fineness: Fineness, hasComma: boolean): string {
  const rounded = roundTo(value, fineness)
  const [whole = '', decimals] = Math.abs(rounded).toFixed(fineness.decimals).split('.')
  const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/g, hasComma ? ',' : '\u202f')
  return `${rounded < 0 ? MINUS : ''}${grouped}${decimals === undefined ? '' : `.${decimals}`}`
}
