import type { Band } from '../../../plan/index.ts'

/** What a scale spans, in the reading's own unit. */
export interface Domain {
  readonly min: number
  readonly max: number
}

/** What a scale must show of one movement. */
export interface Span {
  readonly before?: number | undefined
  readonly after?: number | undefined
  readonly band?: Band | undefined
}

const MARGIN = 0.06
/** An index is always shown with balance in sight, so that small moves look small. */
const INDEX_SPAN = 0.6
const NEVER_BELOW_ZERO = (key: string) => key !== 'calciteSI' && key !== 'temperature_C'

/**
 * One domain for all scales of a reading, so that the band stands at the same place in every line: the band with its own
 * width on both sides, stretched to hold every value, with a small margin. Concentrations never start below zero.
 */
export function domainOf(key: string, spans: readonly Span[]): Domain {
  let min = Number.POSITIVE_INFINITY
  let max = Number.NEGATIVE_INFINITY
  const take = (value: number | undefined) => {
    if (value === undefined || !Number.isFinite(value)) return
    min = Math.min(min, value)
    max = Math.max(max, value)
  }
  for (const { before, after, band } of spans) {
    take(before)
    take(after)
    if (band) {
      const width = band.high - band.low
      take(band.low - width)
      take(band.high + width)
    }
  }
  if (key === 'calciteSI') {
    take(-INDEX_SPAN)
    take(INDEX_SPAN)
  }
  if (min > max) return { min: 0, max: 1 }
  const pad = (max - min) * MARGIN || Math.max(Math.abs(max) * MARGIN, 1)
  const low = min - pad
  return { min: NEVER_BELOW_ZERO(key) ? Math.max(0, low) : low, max: max + pad }
}

/** Where a value stands on a scale of that length; what lies outside the domain stands at its end. */
export function placeOn(domain: Domain, value: number, length: number): number {
  if (Number.isNaN(value)) return 0
  const share = (value - domain.min) / (domain.max - domain.min)
  return Math.min(1, Math.max(0, share)) * length
}

/** Whether a value lies in a band, its ends included; undefined without a band. */
export function isWithin(value: number, band: Band | undefined): boolean | undefined {
  return band ? value >= band.low && value <= band.high : undefined
}

/** One domain for each key that any of the lines moves. */
export function domainsOf<K extends string>(
  lines: readonly { readonly movements: readonly (Span & { readonly key: K })[] }[],
): ReadonlyMap<K, Domain> {
  const spans = new Map<K, Span[]>()
  for (const line of lines)
    for (const movement of line.movements) {
      const list = spans.get(movement.key)
      if (list) list.push(movement)
      else spans.set(movement.key, [movement])
    }
  return new Map([...spans].map(([key, list]) => [key, domainOf(key, list)]))
}
