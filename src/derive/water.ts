import { ok } from '../base/index.ts'
import { momentMs, type ReadingSet, type Spec, type System } from '../document/index.ts'
import { defaultTargets, type KnownReading, startWater, type Targets } from '../plan/index.ts'
import { CONSTANT_SETS, tableIndex } from '../water/index.ts'
import { memoLast } from './memo.ts'
import type { DerivedWater } from './types.ts'
import { systemById } from './volume.ts'

const HOUR_MS = 3_600_000
/** The newest of the pool's reading sets. */
export function latestReadings(system: System): ReadingSet | undefined {
  return system.water.readings.reduce<ReadingSet | undefined>(
    (newest, set) => (newest === undefined || momentMs(set.at) >= momentMs(newest.at) ? set : newest),
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
  const measuredAtMs = latest && momentMs(latest.at)
  return {
    latest,
    from,
    known,
    measuredAtMs,
    ageHours: measuredAtMs === undefined ? undefined : (nowMs - measuredAtMs) / HOUR_MS,
    ...solve(known),
    targets: deriveTargets(spec, systemId),
    tableIndex: indexOf(known),
  }
})

function solve(known: KnownReading): Pick<DerivedWater, 'solved' | 'assumptions'> {
  const { pH, ta_mg_per_L_as_CaCO3 } = known
  if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return { solved: undefined, assumptions: [] }
  const start = startWater({ ...known, pH, ta_mg_per_L_as_CaCO3 }, CONSTANT_SETS.default)
  return start.ok
    ? { solved: ok(start.value.water), assumptions: start.value.assumptions }
    : { solved: start, assumptions: [] }
}

/** The table index needs all its readings: it is not shown for a guess. */
function indexOf(known: KnownReading): number | undefined {
  const { pH, ta_mg_per_L_as_CaCO3, ch_mg_per_L_as_CaCO3, temperature_C } = known
  if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return undefined
  if (!ch_mg_per_L_as_CaCO3 || temperature_C === undefined) return undefined
  return tableIndex({ ...known, pH, ta_mg_per_L_as_CaCO3 }).index
}
