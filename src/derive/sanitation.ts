import type { Result } from '../base/index.ts'
import type { ReadingMethod, ReadingValues, Site } from '../document/index.ts'
import { startWater } from '../plan/index.ts'
import {
  type ActiveChlorineSpread,
  activeChlorineSpread,
  CONSTANT_SETS,
  type CombinedChlorine,
  faecalIncident,
  type IncidentResponse,
  leastSeen,
  limitsFor,
  type MetalsAdvice,
  metalsAdvice,
  type Superchlorination,
  sunHalfLives,
  superchlorination,
  type TakenReading,
  type TrapHere,
  trapsFor,
  type WaterLimits,
} from '../water/index.ts'

/** Chlorine that works at once, under both published sets of constants, and what the sun leaves of it. */
export interface ActiveChlorineAccount extends ActiveChlorineSpread {
  /** The set that the owner chose; `mgPerL` is under O'Brien's either way. */
  readonly chosen: 'obrien' | 'wahman'
  /** Under the chosen set [mg/L as Cl2]. */
  readonly chosenMgPerL: number
  /** Half-lives at the surface in clear summer noon, with this water's stabiliser and without it [min]. */
  readonly sunHereMin: number
  readonly sunWithoutStabiliserMin: number
}

/** What readings say about the water's safety, beyond its balance. */
export interface Sanitation {
  /** The rules for bathing that hold here. */
  readonly limits: WaterLimits
  /** Undefined where pH, alkalinity or free chlorine is unknown. */
  readonly active: Result<ActiveChlorineAccount> | undefined
  /** Whether stabiliser was read, so that it tells: without it, the figures above are those of water that has none. */
  readonly isStabiliserKnown: boolean
  readonly combined: CombinedChlorine | undefined
  /** The dose that breaks combined chlorine down, or why none may be given; undefined without both readings. */
  readonly superchlorination: Result<Superchlorination> | undefined
  /** What to do after an accident in the water, or what stands against treating it here. */
  readonly incidents: { readonly formed: Result<IncidentResponse>; readonly diarrhoea: Result<IncidentResponse> }
  readonly metals: MetalsAdvice
  /** Ways in which the tests mislead on these very readings. */
  readonly traps: readonly TrapHere[]
}

/** The account of chlorine, accidents, metals and test traps for one set of readings. */
export function sanitationOf(
  values: ReadingValues,
  method: ReadingMethod,
  taken: TakenReading,
  { rules, indoor: isIndoor }: Site,
  chosen: ActiveChlorineAccount['chosen'],
  isNoneDoubted: boolean,
): Sanitation {
  const { pH, temperature_C: temperatureC, fc_mg_per_L_as_Cl2: freeMgPerL } = values
  const { combined } = taken
  const stabiliserMgPerL = isNoneDoubted ? undefined : values.cya_mg_per_L
  const leastSeenMgPerL = leastSeen(method, 'cya_mg_per_L') ?? Number.POSITIVE_INFINITY
  const water = { stabiliserMgPerL, leastSeenMgPerL, pH, temperatureC }
  return {
    limits: limitsFor(rules?.profile, stabiliserMgPerL, rules, isIndoor),
    active: freeMgPerL === undefined ? undefined : activeOf(taken.reading, chosen),
    isStabiliserKnown: stabiliserMgPerL !== undefined,
    combined,
    superchlorination:
      combined && freeMgPerL !== undefined
        ? superchlorination({
            freeMgPerL,
            combinedMgPerL: combined.combinedMgPerL,
            stabiliserMgPerL,
            isIndoor,
            rules,
          })
        : undefined,
    incidents: {
      formed: faecalIncident({ ...water, kind: 'formed' }),
      diarrhoea: faecalIncident({ ...water, kind: 'diarrhoea' }),
    },
    metals: metalsAdvice(values),
    traps: trapsFor(values, method),
  }
}

/** Always from O'Brien's set, since the spread is against Wahman's. */
function activeOf(
  reading: TakenReading['reading'],
  chosen: ActiveChlorineAccount['chosen'],
): Result<ActiveChlorineAccount> | undefined {
  const { pH, ta_mg_per_L_as_CaCO3 } = reading
  if (pH === undefined || ta_mg_per_L_as_CaCO3 === undefined) return undefined
  const start = startWater({ ...reading, pH, ta_mg_per_L_as_CaCO3 }, CONSTANT_SETS.default)
  if (!start.ok) return start
  const { totals } = start.value.water
  const spread = activeChlorineSpread(totals, CONSTANT_SETS.default)
  if (!spread.ok) return spread
  const sun = sunHalfLives(totals, CONSTANT_SETS[chosen === 'wahman' ? 'wahman' : 'default'])
  if (!sun.ok) return sun
  const { mgPerL, wahmanMgPerL } = spread.value
  return {
    ok: true,
    value: {
      ...spread.value,
      chosen,
      chosenMgPerL: chosen === 'wahman' ? wahmanMgPerL : mgPerL,
      sunHereMin: sun.value.hereMin,
      sunWithoutStabiliserMin: sun.value.withoutStabiliserMin,
    },
  }
}
