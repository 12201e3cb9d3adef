import { momentMs, type ReadingSet, type Spec, type System } from '../document/index.ts'
import { type GivenDose, type KeptReading, keptReadings, type ReadAt } from '../plan/index.ts'
import type { PeopleReading } from '../water/index.ts'
import type { ConstantsId } from './constants.ts'
import { deriveProducts } from './products.ts'
import { deriveVolume } from './volume.ts'
import { dosableReading, latestReadings } from './water.ts'

/** Doses that were given, oldest first; the plan tells those before the readings from those since. */
export function givenDoses(system: System): readonly GivenDose[] {
  return system.log
    .flatMap((entry) =>
      entry.kind === 'dose'
        ? [{ line: entry.line, product: entry.product, amountG: entry.amountG, atMs: momentMs(entry.at) }]
        : [],
    )
    .sort((a, b) => a.atMs - b.atMs)
}

/** Whether a set is the fill water's, only put on the pool's list: the same moment and the same figures. */
export function isCopyOf(set: ReadingSet, fill: ReadingSet): boolean {
  if (momentMs(set.at) !== momentMs(fill.at)) return false
  const keys = Object.keys({ ...set.values, ...fill.values }) as (keyof ReadingSet['values'])[]
  return keys.every((key) => set.values[key] === fill.values[key])
}

/** Since when the water is the same but for doses [ms]; a start changes it by more, and so does an exchange that was ticked. */
function sameWaterSinceMs(system: System, nowMs: number): number {
  if (system.start && momentMs(system.start.at) <= nowMs) return Number.POSITIVE_INFINITY
  const exchanges = system.log.flatMap((entry) =>
    entry.kind === 'note' && entry.line?.startsWith('exchange') ? [momentMs(entry.at)] : [],
  )
  return Math.max(Number.NEGATIVE_INFINITY, ...exchanges)
}

/** Readings to dose by: the newest, and what they lack and earlier ones of the same water still tell, each marked. */
export function readingsToDoseBy(
  spec: Spec,
  system: System,
  nowMs: number,
  constants: ConstantsId,
): { readonly values: PeopleReading; readonly kept: readonly KeptReading[] } | undefined {
  const newest = latestReadings(system)
  if (!newest) return undefined
  const { fill, readings } = system.water
  const at = (set: ReadingSet): ReadAt => ({
    values: dosableReading(set, constants),
    atMs: momentMs(set.at),
    method: set.method,
  })
  const isPools = (set: ReadingSet) => set.method !== 'supplier' && !(fill && isCopyOf(set, fill))
  const read = at(newest)
  // a report about the main says nothing of the pool, and the pool's nothing of it
  const earlier = isPools(newest) ? readings.filter((set) => set !== newest && isPools(set)).map(at) : []
  const kept = keptReadings(read, earlier, {
    nowMs,
    sinceMs: sameWaterSinceMs(system, nowMs),
    volumeM3: deriveVolume(spec, system.id)?.m3 ?? Number.NaN,
    given: givenDoses(system),
    productList: deriveProducts(spec, system.id, nowMs),
  })
  return { values: { ...read.values, ...Object.fromEntries(kept.map(({ key, value }) => [key, value])) }, kept }
}
