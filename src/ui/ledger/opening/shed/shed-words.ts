import type { Ageing, Place, Product, StrengthBasis, Verdict } from '../../../../chemicals/index.ts'
import type { DeviceEntry } from '../../../../document/index.ts'
import { formatQuantity, type UnitSystem } from '../../../../units/index.ts'
import { sourceWords } from '../../water/source-words.ts'

export const BASES: { readonly [B in StrengthBasis]: { readonly label: string; readonly unit: string } } = {
  'percent-by-mass': { label: '% by weight', unit: '%' },
  'trade-percent': { label: 'trade %: grams of chlorine in 100 mL', unit: 'trade %' },
  'available-chlorine': { label: '% available chlorine', unit: '% avail. Cl' },
}

export const DEVICE_KINDS: readonly { readonly id: DeviceEntry['kind']; readonly label: string }[] = [
  { id: 'feeder', label: 'feeder' },
  { id: 'skimmer', label: 'skimmer' },
  { id: 'floater', label: 'floater' },
  { id: 'bucket', label: 'bucket' },
]

export const PLACES: readonly { readonly id: Place; readonly label: string }[] = [
  { id: 'feeder', label: 'In a feeder or floater' },
  { id: 'basket', label: 'In a skimmer basket' },
  { id: 'bucket', label: 'In a bucket' },
  { id: 'shed', label: 'Where they are kept' },
  { id: 'pool', label: 'In the pool' },
]

/** What standing has done to liquid chlorine, with how far that is unsure; never finer than its range. */
export function ageingWords(ageing: Ageing, basis: StrengthBasis, units: UnitSystem): string {
  const { percent, low, high, labelPercent, days, storedC } = ageing
  const say = (value: number) => formatQuantity('number', value, units, { digits: 1 })
  const at = formatQuantity('temperature', storedC, units, { digits: 0 })
  return `About ${say(percent)} ${BASES[basis].unit} left of ${say(labelPercent)} after ${days} ${days === 1 ? 'day' : 'days'} at ${at}; between ${say(low)} and ${say(high)}, closed and in the dark. The plan counts with what is left.`
}

/** What is known of what a device has held: new is nothing, and no history is unknown. */
export function heldWords({ isNew }: Pick<DeviceEntry, 'isNew'>, newest: string | undefined): string {
  return newest ?? (isNew ? 'new, has held nothing' : 'what it held is not known')
}

/** What a device's history says to a product, in one line each. */
export function verdictWords(verdict: Verdict, product: Pick<Product, 'label'>): readonly string[] {
  if (verdict.answer === 'may') return [`${product.label} may go in.`, ...verdict.notes]
  const head = verdict.answer === 'never' ? `${product.label} must never go in.` : `${product.label}: not yet.`
  return [head, verdict.reason, verdict.instead, sourceWords(verdict)]
}

/** An id that none of these has: "own-1", "own-2". */
export function freeId(stem: string, taken: readonly string[]): string {
  let n = 1
  while (taken.includes(`${stem}-${n}`)) n++
  return `${stem}-${n}`
}
