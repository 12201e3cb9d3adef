import { momentMs, type ReadingSet, type Spec, type System } from '../document/index.ts'
import { type GivenDose, type KeptReading, keptReadings, type ReadAt } from '../plan/index.ts'
import type { PeopleReading } from '../water/index.ts'
import type { ConstantsId } from './constants.ts'
import { trustedValues } from './hold.ts'
import { isPools, latestReadings } from './latest.ts'
import { deriveProducts } from './products.ts'
import { noneDoubted } from './stabiliser.ts'
import { deriveVolume } from './volume.ts'
import { dosableReading } from './water.ts'

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

/** Since when the water is the same but for doses [ms]; a start changes it by more, and so does an exchange that was ticked. */
function sameWaterSinceMs(system: System, nowMs: number): number {
  if (system.start && momentMs(system.start.at) <= nowMs) return Number.POSITIVE_INFINITY
  const exchanges = system.log.flatMap((entry) =>
    entry.kind === 'note' && entry.line?.startsWith('exchange') ? [momentMs(entry.at)] : [],
  )
  return Math.max(Number.NEGATIVE_INFINITY, ...exchanges)
}

interface ReadingsForDosing {
  readonly values: PeopleReading
  readonly kept: readonly KeptReading[]
  /** Why a reading is not taken as it was entered. */
  readonly remarks: readonly string[]
}

/** Readings to dose by: the newest, and what they lack and earlier ones of the same water still tell, each marked. */
export function readingsForDosing(
  spec: Spec,
  system: System,
  nowMs: number,
  constants: ConstantsId,
): ReadingsForDosing | undefined {
  const newest = latestReadings(system)
  if (!newest) return undefined
  const products = deriveProducts(spec, system.id, nowMs)
  const doubted = noneDoubted(system, newest, products)
  const isOurs = (set: ReadingSet) => isPools(set, system)
  const at = (set: ReadingSet): ReadAt => {
    const values = dosableReading(set, constants)
    return { values: isOurs(set) ? trustedValues(values, set) : values, atMs: momentMs(set.at), method: set.method }
  }
  const read = at(newest)
  // a report about the main says nothing of the pool, and the pool's nothing of it
  const earlier = isOurs(newest) ? system.water.readings.filter((set) => set !== newest && isOurs(set)).map(at) : []
  const kept = keptReadings(read, earlier, {
    nowMs,
    sinceMs: sameWaterSinceMs(system, nowMs),
    volumeM3: deriveVolume(spec, system.id)?.m3 ?? Number.NaN,
    given: givenDoses(system),
    productList: products,
  })
  const values = { ...read.values, ...Object.fromEntries(kept.map(({ key, value }) => [key, value])) }
  return doubted === undefined
    ? { values, kept, remarks: [] }
    : { values: { ...values, cya_mg_per_L: undefined }, kept, remarks: [doubted] }
}
