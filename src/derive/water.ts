import { ok } from '../base/index.ts'
import { momentMs, type ReadingSet, type ReadingValues, type Spec } from '../document/index.ts'
import { startWater } from '../plan/index.ts'
import {
  CONSTANT_SETS,
  readingFromPeople,
  type TakenReading,
  type ToldReading,
  tableIndex,
  whyIndicesDiffer,
} from '../water/index.ts'
import { type ConstantsId, constantsOf } from './constants.ts'
import { latestReadings } from './latest.ts'
import { memoLast } from './memo.ts'
import { deriveProducts } from './products.ts'
import { sanitationOf } from './sanitation.ts'
import { noneDoubted } from './stabiliser.ts'
import { deriveTargetsAt } from './targets.ts'
import type { DerivedWater } from './types.ts'
import { systemById } from './volume.ts'

const HOUR_MS = 3_600_000

/** Readings that doses may be reckoned on: those taken, and those that follow from others by more than custom. */
export function dosableReading(set: ReadingSet, constants: ConstantsId): ReadingValues {
  const taken = readingFromPeople(set.values, set.method, CONSTANT_SETS[constants])
  const told = taken.told.filter(({ likely }) => likely.status === 'derived')
  return { ...set.values, ...Object.fromEntries(told.map(({ key, likely }) => [key, likely.best])) }
}

type Measured = Omit<DerivedWater, 'ageHours' | 'targets' | 'targetPhases'>

/** All that doesn't hang on what time it is. */
const measured = memoLast((spec: Spec, systemId: string, asked: ConstantsId | undefined): Measured => {
  const system = systemById(spec, systemId)
  const readings = system && latestReadings(system)
  const latest = readings ?? system?.water.fill
  const from = readings ? 'readings' : latest ? 'fill' : undefined
  const known: ReadingValues = latest?.values ?? {}
  const constants = constantsOf(system, asked)
  const method = latest?.method ?? 'unknown'
  const taken = readingFromPeople(known, method, CONSTANT_SETS[constants])
  const solved = solve(taken, constants)
  const doubt =
    system && readings && noneDoubted(system, readings, deriveProducts(spec, systemId, momentMs(readings.at)))
  const dependable: ReadingValues = latest ? dosableReading(latest, constants) : {}
  return {
    latest,
    from,
    known,
    measuredAtMs: latest && momentMs(latest.at),
    told: taken.told,
    clashes: taken.problems,
    ...solved,
    assumptions: [...(doubt === undefined ? [] : [doubt]), ...solved.assumptions],
    tableIndex: tableIndexOf(dependable),
    indices: indicesOf(dependable, solved.solved, constants),
    sanitation: sanitationOf(
      known,
      method,
      taken,
      spec.site,
      constants === 'wahman' ? 'wahman' : 'obrien',
      doubt !== undefined,
    ),
  }
})

/** The water as measured last: solved where it can be, with what had to be taken as absent. */
export const deriveWater = memoLast(
  (spec: Spec, systemId: string, nowMs: number, asked?: ConstantsId): DerivedWater => {
    const water = measured(spec, systemId, asked)
    const { targets, phases } = deriveTargetsAt(spec, systemId, nowMs)
    const { measuredAtMs } = water
    return {
      ...water,
      ageHours: measuredAtMs === undefined ? undefined : (nowMs - measuredAtMs) / HOUR_MS,
      targets,
      targetPhases: phases,
    }
  },
)

function solve(
  { reading, told }: { readonly reading: TakenReading['reading']; readonly told: readonly ToldReading[] },
  constants: ConstantsId,
): Pick<DerivedWater, 'solved' | 'assumptions'> {
  const { pH, ta_mg_per_L_as_CaCO3 } = reading
  if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return { solved: undefined, assumptions: [] }
  const start = startWater({ ...reading, pH, ta_mg_per_L_as_CaCO3 }, CONSTANT_SETS[constants])
  return start.ok
    ? { solved: ok(start.value.water), assumptions: [...told.map(({ words }) => words), ...start.value.assumptions] }
    : { solved: start, assumptions: [] }
}

/** Indices need all their readings: they are not shown for a guess. */
function indexReading(known: ReadingValues) {
  const { pH, ta_mg_per_L_as_CaCO3, ch_mg_per_L_as_CaCO3, temperature_C } = known
  if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return undefined
  if (!ch_mg_per_L_as_CaCO3 || temperature_C === undefined) return undefined
  return { ...known, pH, ta_mg_per_L_as_CaCO3 }
}

function tableIndexOf(known: ReadingValues): number | undefined {
  const reading = indexReading(known)
  return reading && tableIndex(reading).index
}

function indicesOf(
  known: ReadingValues,
  solved: DerivedWater['solved'],
  constants: ConstantsId,
): DerivedWater['indices'] {
  const reading = indexReading(known)
  if (!reading || !solved?.ok) return undefined
  return whyIndicesDiffer(reading, solved.value.equilibrium, CONSTANT_SETS[constants])
}
