import { fail, ok, type Result, under } from '../../base/index.ts'
import {
  addTotals,
  type Constants,
  concentrate,
  equilibrateOpen,
  mix,
  type PeopleReading,
  PURE_WATER,
  type Totals,
  type WaterReading,
} from '../../water/index.ts'
import { expectedOf, type SolvedWater, solvedWater } from '../solved.ts'
import { startWater } from '../start.ts'
import type { ExpectedWater } from '../types.ts'
import type { Dilution, DilutionRange } from './dilution.ts'
import type { ExpectedReading } from './types.ts'

/** Linear readings: conserved, so a blend of waters is a blend of them. */
const LINEAR = [
  'ta_mg_per_L_as_CaCO3',
  'ch_mg_per_L_as_CaCO3',
  'mg_hardness_mg_per_L_as_CaCO3',
  'sulfate_mg_per_L',
  'cya_mg_per_L',
  'borate_mg_per_L_as_B',
  'fc_mg_per_L_as_Cl2',
  'salt_mg_per_L_as_NaCl',
] as const satisfies readonly (keyof WaterReading)[]

/** log10 of the CO2 pressure of air [atm], 420 µatm (from memory of NOAA's record, 2023–25). */
const AIR_LOG10_PCO2 = -3.377

export interface ExpectedInput {
  readonly before: PeopleReading
  readonly dilution: DilutionRange
  /** What comes in; rain, with nothing in it, where absent. A reading missing in it leaves that expectation out. */
  readonly fresh?: PeopleReading | undefined
  /** True where months have passed: chlorine is used up, and pH may have moved to where air would have it. */
  readonly isLong: boolean
  /** True where dirt came with the water, so that chlorine may be used up. */
  readonly isDirty?: boolean | undefined
  readonly temperatureC?: number | undefined
  readonly constants: Constants
}

export interface Expected {
  readonly readings: readonly ExpectedReading[]
  readonly water?: ExpectedWater | undefined
  /** What the solved water had to assume of the water before, in words. */
  readonly assumptions: readonly string[]
}

/**
 * The readings to expect after an exchange, with the range that the dilution leaves. Linear ones follow from the mass
 * balance; pH is solved from the blended totals, where both pH and alkalinity were known.
 */
export function expectedReadings(input: ExpectedInput): Result<Expected> {
  const { before, dilution, fresh, isLong } = input
  const solved = solve(input)
  if (!solved.ok) return solved
  const waters = solved.value
  const readings: ExpectedReading[] = []
  if (waters && before.pH !== undefined) {
    const all = [...waters.closed, ...waters.open].map(({ equilibrium }) => equilibrium.pH)
    readings.push({
      key: 'pH',
      before: before.pH,
      value: waters.best.equilibrium.pH,
      low: Math.min(...all),
      high: Math.max(...all),
    })
  }
  for (const key of LINEAR) {
    const was = before[key]
    const comes = fresh ? fresh[key] : 0
    // chlorine that is used up takes alkalinity with it: only the solved water knows how much
    if (was === undefined || comes === undefined || (key === 'ta_mg_per_L_as_CaCO3' && isLong && !waters)) continue
    const of = ({ keeps, fresh: share }: Dilution) => was * keeps + comes * share
    const ends = [of(dilution.least), of(dilution.value), of(dilution.most)]
    let [low, value, high] = [Math.min(...ends), of(dilution.value), Math.max(...ends)]
    if (key === 'fc_mg_per_L_as_Cl2') {
      if (isLong || input.isDirty) low = 0
      if (isLong) value = 0
    }
    if (isLong && key === 'ta_mg_per_L_as_CaCO3' && waters) {
      const solvedEnds = waters.closed.map((water) => water.reading.ta_mg_per_L_as_CaCO3)
      value = waters.best.reading.ta_mg_per_L_as_CaCO3
      low = Math.min(...solvedEnds)
      high = Math.max(...solvedEnds)
    }
    // bacteria may have eaten it over winter: it can be all gone
    if (isLong && key === 'cya_mg_per_L') low = 0
    readings.push({ key, before: was, value, low, high })
  }
  return ok({
    readings,
    ...(waters ? { water: expectedOf(waters.best) } : {}),
    assumptions: waters?.assumptions ?? [],
  })
}

interface Waters {
  readonly best: SolvedWater
  readonly closed: readonly SolvedWater[]
  /** In balance with air. */
  readonly open: readonly SolvedWater[]
  readonly assumptions: readonly string[]
}

interface KnownTotals {
  readonly totals: Totals
  readonly assumptions: readonly string[]
}

function totalsFrom(
  known: PeopleReading | undefined,
  path: string,
  constants: Constants,
): Result<KnownTotals | undefined> {
  if (!known) return ok({ totals: PURE_WATER, assumptions: [] })
  const { pH, ta_mg_per_L_as_CaCO3 } = known
  if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return ok(undefined)
  const water = startWater({ ...known, pH, ta_mg_per_L_as_CaCO3 }, constants)
  if (!water.ok) return fail(under(path, water.problem))
  return ok({ totals: water.value.water.totals, assumptions: water.value.assumptions })
}

function solve(input: ExpectedInput): Result<Waters | undefined> {
  const { dilution, constants, isLong } = input
  const old = totalsFrom(input.before, 'before', constants)
  if (!old.ok) return old
  const fresh = totalsFrom(input.fresh, 'fill', constants)
  if (!fresh.ok) return fresh
  if (!old.value || !fresh.value) return ok(undefined)
  const { totals: before, assumptions } = old.value
  const comes = fresh.value.totals
  const temperatureC = input.temperatureC ?? before.temperatureC
  const after = ({ keeps, fresh: share }: Dilution): Totals => {
    // vapour leaves, or something comes in: never both in one
    const blended = keeps > 1 ? concentrate(before, keeps) : mix(before, comes, share)
    return { ...(isLong ? chlorineUsed(blended) : blended), temperatureC }
  }
  const best = solvedWater(after(dilution.value), constants)
  if (!best.ok) return best
  const closed: SolvedWater[] = [best.value]
  const open: SolvedWater[] = []
  for (const end of [dilution.least, dilution.value, dilution.most]) {
    const totals = after(end)
    const shut = solvedWater(totals, constants)
    if (!shut.ok) return shut
    closed.push(shut.value)
    if (!isLong) continue
    const air = equilibrateOpen(totals, AIR_LOG10_PCO2, constants)
    if (!air.ok) return air
    open.push({ ...shut.value, equilibrium: air.value.equilibrium })
  }
  return ok({ best: best.value, closed, open, assumptions })
}

/** All chlorine spent: each mole takes one of alkalinity and leaves one of chloride. */
function chlorineUsed(totals: Totals): Totals {
  const used = totals.chlorineMol
  return addTotals(totals, { alkalinityEq: -used, chlorineMol: -used, chlorideMol: used })
}
