import { DEFAULT_RULES, limitsFor } from '../water/index.ts'
import type { KnownReading, LocalRules, SourcedBand, Targets } from './types.ts'

/** Of the stabiliser, as advice (Falk et al. 2019, Water 11:1314; number from memory) [1]. */
const ADVICE_PER_STABILISER = 1 / 20
const FLOOR_SOURCE = 'MAHC 5.7.3.1.1 (seen second-hand)'

export interface ChlorineFloor {
  readonly mgPerL: number
  readonly adviceMgPerL?: number | undefined
  readonly reason: string
}

/**
 * The least free chlorine for bathing [mg/L]. Unknown stabiliser counts as present; a set of rules and an own one can only
 * raise it; nothing that helps lowers it.
 */
export function chlorineFloor(stabiliserMgPerL: number | undefined, rules: LocalRules): ChlorineFloor {
  const ruled = limitsFor(rules.rulesId, stabiliserMgPerL)
  const none = ruled.stabiliser === 'none'
  const standard = DEFAULT_RULES[none ? 'floorWithoutStabiliserMgPerL' : 'floorWithStabiliserMgPerL']
  const mgPerL = Math.max(standard, ruled.floorMgPerL, rules.chlorineFloorMgPerL ?? 0)
  const because = none
    ? 'Water without stabiliser'
    : stabiliserMgPerL === undefined
      ? 'Stabiliser is unknown and counts as present'
      : 'Water with stabiliser'
  const rule =
    mgPerL > Math.max(standard, ruled.floorMgPerL)
      ? `your local rule asks for ${mgPerL} mg/L`
      : mgPerL > standard
        ? `at least ${mgPerL} mg/L of free chlorine, ${ruled.floorSource}`
        : `at least ${standard} mg/L of free chlorine, ${FLOOR_SOURCE}`
  const advice = (stabiliserMgPerL ?? 0) * ADVICE_PER_STABILISER
  return {
    mgPerL,
    reason: `${because}: ${rule}. Devices that help do not lower it.`,
    ...(advice > 0 ? { adviceMgPerL: advice } : {}),
  }
}

/** The most free chlorine for bathing [mg/L]: of the default, the chosen rules and an own one the least. */
export function chlorineCeiling(stabiliserMgPerL: number | undefined, rules: LocalRules): number {
  return Math.min(DEFAULT_RULES.ceilingMgPerL, limitsFor(rules.rulesId, stabiliserMgPerL, rules).ceilingMgPerL)
}

/** Floor and ceiling where the first is above the second, so that no free chlorine is right; else undefined. */
export function chlorineClash(
  stabiliserMgPerL: number | undefined,
  rules: LocalRules,
): { readonly floorMgPerL: number; readonly ceilingMgPerL: number } | undefined {
  const floorMgPerL = chlorineFloor(stabiliserMgPerL, rules).mgPerL
  const ceilingMgPerL = chlorineCeiling(stabiliserMgPerL, rules)
  return floorMgPerL > ceilingMgPerL ? { floorMgPerL, ceilingMgPerL } : undefined
}

/** The stabiliser that the floor has to count with: what is read, or what the plan raises it to. */
export function plannedStabiliser(targets: Targets, known: KnownReading): number | undefined {
  const now = known.cya_mg_per_L
  const wanted = targets.cya_mg_per_L
  return now === undefined ? undefined : wanted && now < wanted.low ? wanted.aim : now
}

/**
 * The targets with the chlorine band lifted to the floor and, where it is not the owner's own, lowered to the ceiling; without
 * a chlorine band where the two clash, since nothing can be dosed toward both.
 */
export function withinRules(targets: Targets, known: KnownReading, rules: LocalRules): Targets {
  const { fc_mg_per_L_as_Cl2: fc, ...others } = targets
  if (!fc) return targets
  const planned = plannedStabiliser(targets, known)
  if (chlorineClash(planned, rules)) return others
  const floor = chlorineFloor(planned, rules).mgPerL
  const ceiling = chlorineCeiling(planned, rules)
  const isLifted = floor > fc.low
  const isLowered = !fc.isOwn && fc.high > ceiling
  if (!isLifted && !isLowered) return targets
  const most = fc.isOwn ? Number.POSITIVE_INFINITY : ceiling
  const low = Math.min(most, Math.max(fc.low, floor))
  const high = Math.min(most, isLifted ? Math.max(fc.high, Math.min(floor + 1, ceiling)) : fc.high)
  const words = [
    fc.source,
    ...(isLifted ? [`Lifted to the floor of ${floor} mg/L that holds here.`] : []),
    ...(isLowered ? [`Lowered to the ceiling of ${ceiling} mg/L that holds here.`] : []),
  ]
  const band: SourcedBand = {
    low,
    aim: Math.min(high, Math.max(fc.aim, low)),
    high,
    source: words.join(' '),
    isOwn: fc.isOwn,
  }
  return { ...others, fc_mg_per_L_as_Cl2: band }
}
