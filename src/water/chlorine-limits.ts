import { DEFAULT_RULES, LOCAL_CODE_FIRST, RULES, type RuleProfile } from './rules.ts'

/** Stabiliser below this counts as none: a test cannot tell it from zero [mg/L]. */
export const NO_STABILISER_MG_PER_L = 1

/** The owner's own figures: a floor can only be raised by them, a ceiling only lowered. */
export interface OwnChlorineLimits {
  readonly chlorineFloorMgPerL?: number | undefined
  readonly chlorineCeilingMgPerL?: number | undefined
}

/** What a set of rules comes to in one water; every figure present. */
export interface WaterLimits {
  readonly profile: RuleProfile
  readonly stabiliser: 'none' | 'present' | 'unknown'
  /** Least free chlorine for bathing [mg/L]. */
  readonly floorMgPerL: number
  /** Most free chlorine for bathing [mg/L]. */
  readonly ceilingMgPerL: number
  readonly pHLow: number
  readonly pHHigh: number
  readonly combinedHighMgPerL: number
  readonly stabiliserHighMgPerL: number
  readonly alkalinityLowMgPerL: number
  readonly alkalinityHighMgPerL: number
  /** Where the floor comes from, for a person. */
  readonly floorSource: string
  /** What has to be said beside the figures; the last one always that the local code comes first. */
  readonly notes: readonly string[]
}

/**
 * Limits for bathing in a water, by a profile of rules. Unknown stabiliser counts as present; a profile that is silent on a
 * figure, unknown, or not meant for water with stabiliser leaves the default's. There is no place for a device that helps:
 * ozone, UV, ions or electrolysis lower no floor.
 */
export function limitsFor(
  profileId: string | undefined,
  stabiliserMgPerL: number | undefined,
  own: OwnChlorineLimits = {},
  isIndoor = false,
): WaterLimits {
  const stabiliser =
    stabiliserMgPerL === undefined ? 'unknown' : stabiliserMgPerL < NO_STABILISER_MG_PER_L ? 'none' : 'present'
  const notes: string[] = []
  const asked = RULES.get(profileId ?? DEFAULT_RULES.id)
  if (!asked) notes.push(`No rules are known here by the name ${profileId}; the default holds.`)
  let profile = asked ?? DEFAULT_RULES
  if (profile.onlyWithoutStabiliser && stabiliser !== 'none') {
    notes.push(
      `${profile.label} holds only in water without stabiliser, and here it is ${stabiliser === 'unknown' ? 'unknown' : 'in the water'}; the default holds.`,
    )
    profile = DEFAULT_RULES
  }
  const key = stabiliser === 'none' ? 'floorWithoutStabiliserMgPerL' : 'floorWithStabiliserMgPerL'
  const ruled = profile[key]
  const standard = ruled ?? DEFAULT_RULES[key]
  const from = ruled === undefined ? DEFAULT_RULES : profile
  const floorMgPerL = Math.max(standard, own.chlorineFloorMgPerL ?? 0)
  const ceilingMgPerL = Math.min(
    profile.ceilingMgPerL ?? DEFAULT_RULES.ceilingMgPerL,
    own.chlorineCeilingMgPerL ?? Number.POSITIVE_INFINITY,
  )
  if (!(floorMgPerL <= ceilingMgPerL)) {
    notes.push(
      `No free chlorine is allowed: the floor of ${floorMgPerL} mg/L is above the ceiling of ${ceilingMgPerL}. Check your own limits.`,
    )
  }
  const indoor = isIndoor ? profile.combinedHighIndoorMgPerL : undefined
  return {
    profile,
    stabiliser,
    floorMgPerL,
    ceilingMgPerL,
    pHLow: profile.pHLow ?? DEFAULT_RULES.pHLow,
    pHHigh: profile.pHHigh ?? DEFAULT_RULES.pHHigh,
    combinedHighMgPerL: indoor ?? profile.combinedHighMgPerL ?? DEFAULT_RULES.combinedHighMgPerL,
    stabiliserHighMgPerL: profile.stabiliserHighMgPerL ?? DEFAULT_RULES.stabiliserHighMgPerL,
    alkalinityLowMgPerL: profile.alkalinityLowMgPerL ?? DEFAULT_RULES.alkalinityLowMgPerL,
    alkalinityHighMgPerL: profile.alkalinityHighMgPerL ?? DEFAULT_RULES.alkalinityHighMgPerL,
    floorSource: floorMgPerL > standard ? 'your own floor' : `${from.source} (${from.statuses?.[key] ?? from.status})`,
    notes: [...notes, profile.note, ...(profile.note.includes(LOCAL_CODE_FIRST) ? [] : [LOCAL_CODE_FIRST])],
  }
}
