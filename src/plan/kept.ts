import { deltaOf, type Product, type ProductList, productById } from '../chemicals/index.ts'
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
/** A dose's share of what is kept is said from here on [mg/L]. */
const LEAST_SAID_MG_PER_L = 0.5

/**
 * What the newest readings lack and earlier ones still tell: no older than `LIMITS.readingHours`, and moved by the doses
 * between the two by no more than one standard deviation of its test; what those moved is added. Never pH, free or combined
 * chlorine, which decide bathing and change within hours, and never that there is no stabiliser, since that would lower the
 * chlorine floor.
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
    const kept = { key, value, atMs: set.atMs, method: set.method }
    if (!isDosed(key)) return [kept]
    const moved = movedBy(key, set, newest.atMs, context)
    if (moved === undefined || moved.sum > (methodSigma(set.method, key, value)?.sigma ?? 0)) return []
    if (moved.sum === 0) return [kept]
    return [{ ...kept, value: Math.max(0, value + moved.net), byDoses: moved.net }]
  })
}

const isDosed = (key: PeopleReadingKey): key is LinearKey => DOSED.some((each) => each === key)

/** What doses between two moments moved a reading by, and all of it regardless of sign; undefined where nobody knows one. */
function movedBy(key: LinearKey, set: ReadAt, untilMs: number, context: KeptContext) {
  let [net, sum] = [0, 0]
  for (const { product, amountG, atMs } of context.given) {
    if (atMs < set.atMs || atMs >= untilMs) continue
    const found = productById(product, context.productList)
    if (!found.ok) return undefined
    const moved = changeBy(found.value.product, amountG / context.volumeM3, key)
    net += moved
    sum += Math.abs(moved)
  }
  return { net, sum }
}

/** What a dose leaves of itself in a reading once its chlorine is used, which most of it is by the next reading. */
function changeBy(product: Product, gPerM3: number, key: LinearKey): number {
  const used = productById('chlorine-used')
  const spent = used.ok ? deltaOf(used.value.product, gPerM3 * product.availableChlorine) : {}
  return readingChange(deltaOf(product, gPerM3), key) + readingChange(spent, key)
}

/** One sentence that marks what was kept, and from when. */
export function keptWords({ kept = [], measuredAtMs }: Pick<OpeningInput, 'kept' | 'measuredAtMs'>): string[] {
  if (kept.length === 0 || measuredAtMs === undefined) return []
  const each = kept.map(({ key, value, atMs, byDoses }) => {
    const unit = key === 'temperature_C' ? ' °C' : ' mg/L'
    const hours = Math.max(0, Math.round((measuredAtMs - atMs) / MS_PER_HOUR))
    const dosed =
      byDoses !== undefined && Math.abs(byDoses) >= LEAST_SAID_MG_PER_L
        ? `, ${byDoses < 0 ? '−' : '+'}${Number(Math.abs(byDoses).toPrecision(2))} by doses since`
        : ''
    return `${PEOPLE_READING_NAMES[key]} ${Number(value.toPrecision(3))}${unit} (kept from ${hours} h before${dosed})`
  })
  return [
    `The newest readings lack ${each.join(', ')}. No dose has moved what is kept by more than its test can tell, and what doses moved by the sums is counted in; it is kept for ${LIMITS.readingHours} h at most and clears nobody to bathe.`,
  ]
}
