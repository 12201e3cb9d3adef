import { limitsFor } from '../water/index.ts'
import { CHLORINE_FLOOR } from './limits.ts'
import type { KnownReading, SourcedBand, Targets } from './types.ts'

export interface ChlorineFloor {
  readonly mgPerL: number
  readonly adviceMgPerL?: number | undefined
  readonly reason: string
}

/**
 * The least free chlorine for bathing [mg/L]. Unknown stabiliser counts as present; a set of rules and an own one can only
 * raise it; nothing that helps lowers it.
 */
export function chlorineFloor(
  stabiliserMgPerL: number | undefined,
  ruleMgPerL?: number | undefined,
  rulesId?: string | undefined,
): ChlorineFloor {
  const none = stabiliserMgPerL !== undefined && stabiliserMgPerL < CHLORINE_FLOOR.noStabiliserMgPerL
  const standard = none ? CHLORINE_FLOOR.withoutStabiliser : CHLORINE_FLOOR.withStabiliser
  const ruled = limitsFor(rulesId, stabiliserMgPerL)
  const mgPerL = Math.max(standard, ruled.floorMgPerL, ruleMgPerL ?? 0)
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
        : `at least ${standard} mg/L of free chlorine, ${CHLORINE_FLOOR.source}`
  const advice = (stabiliserMgPerL ?? 0) * CHLORINE_FLOOR.perStabiliser
  return {
    mgPerL,
    reason: `${because}: ${rule}. Devices that help do not lower it.`,
    ...(advice > 0 ? { adviceMgPerL: advice } : {}),
  }
}

/** The targets with the chlorine band lifted to the floor, where stabiliser is or will be in the water. */
export function withFloor(
  targets: Targets,
  known: KnownReading,
  rule: number | undefined,
  rulesId: string | undefined,
): Targets {
  const fc = targets.fc_mg_per_L_as_Cl2
  if (!fc) return targets
  const now = known.cya_mg_per_L
  const wanted = targets.cya_mg_per_L
  const planned = now === undefined ? undefined : wanted && now < wanted.low ? wanted.aim : now
  const floor = chlorineFloor(planned, rule, rulesId).mgPerL
  if (floor <= fc.low) return targets
  const lifted: SourcedBand = {
    low: floor,
    aim: Math.max(fc.aim, floor),
    high: Math.max(fc.high, floor + 1),
    source: `${fc.source} Lifted to the floor of ${floor} mg/L that holds here.`,
    isOwn: fc.isOwn,
  }
  return { ...targets, fc_mg_per_L_as_Cl2: lifted }
}
