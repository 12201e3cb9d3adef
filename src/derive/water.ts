import type { ReadingSet, Spec, System } from '../document/index.ts'
import { defaultTargets, type KnownReading, type Targets } from '../plan/index.ts'
import { CONSTANT_SETS, equilibrate, tableIndex, totalsOf, type WaterReading } from '../water/index.ts'
import { memoLast } from './memo.ts'
import type { DerivedWater } from './types.ts'
import { systemById } from './volume.ts'

const HOUR_MS = 3_600_000
/** Readings without which a water cannot be solved, and those that count as nothing until they are measured. */
const ASSUMED_ZERO: readonly (keyof WaterReading)[] = [
  'ch_mg_per_L_as_CaCO3',
  'mg_hardness_mg_per_L_as_CaCO3',
  'sulfate_mg_per_L',
  'cya_mg_per_L',
  'borate_mg_per_L_as_B',
  'fc_mg_per_L_as_Cl2',
  'salt_mg_per_L_as_NaCl',
]

/** The moment of a reading set [ms], or undefined where its date can't be read. */
export function momentOf(at: string): number | undefined {
  const ms = Date.parse(at)
  return Number.isFinite(ms) ? ms : undefined
}

/** The newest of the pool's reading sets. */
export function latestReadings(system: System): ReadingSet | undefined {
  return system.water.readings.reduce<ReadingSet | undefined>(
    (newest, set) => (newest === undefined || (momentOf(set.at) ?? 0) >= (momentOf(newest.at) ?? 0) ? set : newest),
    undefined,
  )
}

/** The bands that this pool aims for: its surface's and regime's defaults with the owner's own over them. */
export const deriveTargets = memoLast((spec: Spec, systemId: string): Targets => {
  const system = systemById(spec, systemId)
  if (!system) return {}
  return defaultTargets(spec.site.surface, system.regime.id, system.water.targets)
})

/** The water as measured last: solved where it can be, with what had to be taken as absent. */
export const deriveWater = memoLast((spec: Spec, systemId: string, nowMs: number): DerivedWater => {
  const system = systemById(spec, systemId)
  const readings = system && latestReadings(system)
  const latest = readings ?? system?.water.fill
  const from = readings ? 'readings' : latest ? 'fill' : undefined
  const known: KnownReading = latest?.values ?? {}
  const measuredAtMs = latest && momentOf(latest.at)
  const solved = solve(known)
  return {
    latest,
    from,
    known,
    measuredAtMs,
    ageHours: measuredAtMs === undefined ? undefined : (nowMs - measuredAtMs) / HOUR_MS,
    solved,
    assumedZero: solved ? ASSUMED_ZERO.filter((key) => known[key] === undefined) : [],
    targets: deriveTargets(spec, systemId),
    tableIndex: indexOf(known),
  }
})

function solve(known: KnownReading): DerivedWater['solved'] {
  const { pH, ta_mg_per_L_as_CaCO3 } = known
  if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return undefined
  const totals = totalsOf({ ...known, pH, ta_mg_per_L_as_CaCO3 }, CONSTANT_SETS.default)
  if (!totals.ok) return totals
  const equilibrium = equilibrate(totals.value, CONSTANT_SETS.default)
  if (!equilibrium.ok) return equilibrium
  return { ok: true, value: { totals: totals.value, equilibrium: equilibrium.value } }
}

/** The table index needs all its readings: it is not shown for a guess. */
function indexOf(known: KnownReading): number | undefined {
  const { pH, ta_mg_per_L_as_CaCO3, ch_mg_per_L_as_CaCO3, temperature_C } = known
  if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return undefined
  if (!ch_mg_per_L_as_CaCO3 || temperature_C === undefined) return undefined
  return tableIndex({ ...known, pH, ta_mg_per_L_as_CaCO3 }).index
}
