import { productById } from '../chemicals/index.ts'
import { momentMs, type ReadingSet, type ReadingValues, type Spec, type System } from '../document/index.ts'
import { closedAfter, closedHold, type Doubted, doubtedHold, type Hold, startDay, type Targets } from '../plan/index.ts'
import { DPD_LIMIT_MG_PER_L, NO_STABILISER_MG_PER_L, TEST_TRAPS, trapsFor } from '../water/index.ts'
import { latestReadings } from './latest.ts'
import { deriveProducts } from './products.ts'
import { deriveTargetsAt } from './targets.ts'
import { deriveVolume } from './volume.ts'

const HOUR_MS = 3_600_000
const STABILISER = 'cya_mg_per_L'
/** How long a dose of chlorine may bleach a test (ours). */
const BLEACHES_HOURS = 24

/** Readings of a set that its own test spoils, each with how to take it rightly. */
export function doubtedReadings({ values, method }: ReadingSet): readonly Doubted[] {
  return trapsFor(values, method).flatMap(({ trap, concerns }) =>
    trap.isSpoilt ? concerns.map((key) => ({ key, words: trap.text })) : [],
  )
}

/**
 * Values without those that their own test spoils, and without what only follows from these. Stabiliser that was read as none
 * stays: whether it is none is told by what went into the water, not by how warm the sample was.
 */
export function trustedValues(values: ReadingValues, set: ReadingSet): ReadingValues {
  const spoilt = new Set<string>(doubtedReadings(set).map(({ key }) => key))
  if (spoilt.has('th_mg_per_L_as_CaCO3')) spoilt.add('ch_mg_per_L_as_CaCO3')
  if (isNoneRead(set)) spoilt.delete(STABILISER)
  return Object.fromEntries(Object.entries(values).filter(([key]) => !spoilt.has(key)))
}

/** Targets that may be dosed for: none for stabiliser that seems to be none by a test that was spoilt, since it is there to stay. */
export function targetsForDosing(targets: Targets, newest: ReadingSet | undefined): Targets {
  if (!newest || !isNoneRead(newest) || !doubtedReadings(newest).some(({ key }) => key === STABILISER)) return targets
  return { ...targets, [STABILISER]: undefined }
}

function isNoneRead({ values }: ReadingSet): boolean {
  const stabiliser = values[STABILISER]
  return stabiliser !== undefined && stabiliser < NO_STABILISER_MG_PER_L
}

/** Why nothing is dosed now: a start that left the pool closed, or readings that no dose can be counted from. */
export function holdOf(spec: Spec, system: System, nowMs: number): Hold | undefined {
  const { start } = system
  const startedMs = start && momentMs(start.at)
  const closed = start && startedMs !== undefined && closedAfter(start.mode, startDay(startedMs, nowMs))
  if (closed) return closedHold(closed)
  const newest = latestReadings(system)
  if (!newest) return undefined
  const free = newest.values.fc_mg_per_L_as_Cl2
  const high = deriveTargetsAt(spec, system.id, nowMs).targets.fc_mg_per_L_as_Cl2?.high
  const isHigh = free !== undefined && high !== undefined && free > high
  return doubtedHold([...doubtedReadings(newest), ...bleachedToNone(spec, system, newest, nowMs)], isHigh)
}

/** No colour right after so much chlorine that it may have bleached the test; none where it was read as none before. */
function bleachedToNone(spec: Spec, system: System, newest: ReadingSet, nowMs: number): readonly Doubted[] {
  const trap = TEST_TRAPS.get('dpd-none')
  const volumeM3 = deriveVolume(spec, system.id)?.m3
  const atMs = momentMs(newest.at)
  if (!trap || volumeM3 === undefined || trap.concerns(newest.values, newest.method).length === 0) return []
  const products = deriveProducts(spec, system.id, nowMs)
  const lately = system.log.flatMap((entry) => {
    if (entry.kind !== 'dose') return []
    const givenMs = momentMs(entry.at)
    if (!(givenMs <= atMs && atMs - givenMs <= BLEACHES_HOURS * HOUR_MS)) return []
    const found = productById(entry.product, products)
    return found.ok ? [{ givenMs, mgPerL: (entry.amountG / volumeM3) * found.value.product.availableChlorine }] : []
  })
  if (lately.reduce((sum, { mgPerL }) => sum + mgPerL, 0) < DPD_LIMIT_MG_PER_L) return []
  const lastMs = Math.max(...lately.map(({ givenMs }) => givenMs))
  const isReadTwice = system.water.readings.some(
    (set) =>
      set !== newest && momentMs(set.at) >= lastMs && momentMs(set.at) < atMs && set.values.fc_mg_per_L_as_Cl2 === 0,
  )
  return isReadTwice ? [] : [{ key: 'fc_mg_per_L_as_Cl2', words: trap.text }]
}
