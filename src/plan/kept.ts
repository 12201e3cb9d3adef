import { deltaOf, type ProductList, productById } from '../chemicals/index.ts'
import { methodSigma, PEOPLE_READING_NAMES, type PeopleReading, type PeopleReadingKey } from '../water/index.ts'
import { type LinearKey, readingChange } from './effect.ts'
import { MS_PER_HOUR } from './given.ts'
import { LIMITS } from './limits.ts'
import type { GivenDose, KeptReading, OpeningInput, ReadingMethod } from './types.ts'

/** Readings of one moment, with those that follow from others. */
export interface ReadAt {
  readonly values: PeopleReading
  readonly atMs: number
  readonly method: ReadingMethod
}

/** What moves a kept reading other than time. */
export interface KeptContext {
  readonly nowMs: number
  /** Nothing from before it is kept: other water came in, say. */
  readonly sinceMs: number
  readonly volumeM3: number
  readonly given: readonly GivenDose[]
  readonly productList?: ProductList | undefined
}

/** Readings that doses move and whose test tells by how much. */
const DOSED: readonly LinearKey[] = [
  'ta_mg_per_L_as_CaCO3',
  'ch_mg_per_L_as_CaCO3',
  'cya_mg_per_L',
  'borate_mg_per_L_as_B',
  'salt_mg_per_L_as_NaCl',
]
/** Readings that hardly any dose moves; metals and temperature none. */
const UNDOSED: readonly PeopleReadingKey[] = ['copper_mg_per_L', 'iron_mg_per_L', 'manganese_mg_per_L', 'temperature_C']
/** Less stabiliser than this is none, which would lower the chlorine floor: it has to be read anew [mg/L]. */
const SOME_STABILISER_MG_PER_L = 1

/**
 * What the newest readings lack and earlier ones still tell: no older than `LIMITS.readingHours`, and moved by the doses
 * between the two by no more than one standard deviation of its test. Never pH, free or combined chlorine, which decide
 * bathing and change within hours, and never that there is no stabiliser, since that would lower the chlorine floor.
 */
export function keptReadings(newest: ReadAt, earlier: readonly ReadAt[], context: KeptContext): readonly KeptReading[] {
  const sets = earlier
    .filter(({ atMs }) => atMs <= newest.atMs && atMs >= context.sinceMs)
    .filter(({ atMs }) => context.nowMs - atMs <= LIMITS.readingHours * MS_PER_HOUR)
    .toSorted((a, b) => b.atMs - a.atMs)
  return [...DOSED, ...UNDOSED].flatMap((key): KeptReading[] => {
    if (newest.values[key] !== undefined) return []
    const set = sets.find(({ values }) => values[key] !== undefined)
    const value = set?.values[key]
    if (!set || value === undefined) return []
    if (key === 'cya_mg_per_L' && value < SOME_STABILISER_MG_PER_L) return []
    if (isDosed(key) && isMoved(key, value, set, newest.atMs, context)) return []
    return [{ key, value, atMs: set.atMs, method: set.method }]
  })
}

const isDosed = (key: PeopleReadingKey): key is LinearKey => DOSED.some((each) => each === key)

/** Whether doses since moved a reading by more than its test can tell; one that nobody knows may have. */
function isMoved(key: LinearKey, value: number, set: ReadAt, untilMs: number, context: KeptContext): boolean {
  const since = context.given.filter(({ atMs }) => atMs >= set.atMs && atMs < untilMs)
  let moved = 0
  for (const { product, amountG } of since) {
    const found = productById(product, context.productList)
    if (!found.ok) return true
    moved += Math.abs(readingChange(deltaOf(found.value.product, amountG / context.volumeM3), key))
  }
  return moved > (methodSigma(set.method, key, value)?.sigma ?? 0)
}

/** One sentence that marks what was kept, and from when. */
export function keptWords({ kept = [], measuredAtMs }: Pick<OpeningInput, 'kept' | 'measuredAtMs'>): string[] {
  if (kept.length === 0 || measuredAtMs === undefined) return []
  const each = kept.map(({ key, value, atMs }) => {
    const unit = key === 'temperature_C' ? ' °C' : ' mg/L'
    const hours = Math.max(0, Math.round((measuredAtMs - atMs) / MS_PER_HOUR))
    return `${PEOPLE_READING_NAMES[key]} ${Number(value.toPrecision(3))}${unit} (kept from ${hours} h before)`
  })
  return [
    `The newest readings lack ${each.join(', ')}. No dose has moved what is kept, as far as its test can tell; it is kept for ${LIMITS.readingHours} h at most and clears nobody to bathe.`,
  ]
}
