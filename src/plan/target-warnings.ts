import type { Problem } from '../base/index.ts'
import { LOCAL_CODE_FIRST, limitsFor } from '../water/index.ts'
import { chlorineClash, plannedStabiliser } from './floor.ts'
import { floorAboveCeiling } from './problems.ts'
import { REGIMES } from './regimes.ts'
import { surfaceOf } from './surfaces.ts'
import { TARGET_LABELS } from './targets.ts'
import type { LocalRules, OpeningInput, TargetKey } from './types.ts'

/** A range that somebody else lays down for a reading, and what comes of leaving it. */
interface Range {
  readonly key: TargetKey
  readonly low?: number | undefined
  readonly high?: number | undefined
  readonly kind: 'code' | 'maker'
  readonly says: string
  readonly why: string
}

/** Above this much borate nobody wrote for pools (common practice, no source) [mg/L as B]. */
const MOST_BORATE_MG_PER_L = 50

/** What decides which ranges hold. */
export type TargetsToJudge = Pick<OpeningInput, 'targets' | 'start' | 'regimeId' | 'surface'> & LocalRules

/** Every range that these targets are held against. */
function rangesFor(input: TargetsToJudge): readonly Range[] {
  const stabiliser = input.targets.cya_mg_per_L
  // stabiliser that is wanted or there counts, and so does what nobody read: the floor has to hold when the plan is done
  const isStabilised = (input.start.cya_mg_per_L ?? 1) >= 1 || (stabiliser?.aim ?? 0) >= 1
  const limits = limitsFor(input.rulesId, isStabilised ? Math.max(1, stabiliser?.aim ?? 1) : 0, {
    chlorineFloorMgPerL: input.chlorineFloorMgPerL,
    chlorineCeilingMgPerL: input.chlorineCeilingMgPerL,
  })
  const { profile } = limits
  const says = `${profile.label} (${profile.edition}; ${profile.status})`
  const { chlorineFloorMgPerL: ownFloor, chlorineCeilingMgPerL: ownCeiling } = input
  const saysChlorine = [
    says,
    ...(ownFloor !== undefined && limits.floorSource === 'your own floor'
      ? [`your own floor of ${ownFloor} mg/L`]
      : []),
    ...(ownCeiling === limits.ceilingMgPerL ? [`your own ceiling of ${ownCeiling} mg/L`] : []),
  ].join('; ')
  const surface = surfaceOf(input.surface)
  const code = (key: TargetKey, low: number | undefined, high: number | undefined, why: string): Range => ({
    key,
    low,
    high,
    kind: 'code',
    says,
    why,
  })
  const salt = input.regimeId === 'salt' ? REGIMES.get('salt')?.bands.salt_mg_per_L_as_NaCl : undefined
  return [
    code('pH', limits.pHLow, limits.pHHigh, 'Outside it chlorine works worse, or water eats metal, plaster and eyes.'),
    {
      ...code(
        'fc_mg_per_L_as_Cl2',
        limits.floorMgPerL,
        limits.ceilingMgPerL,
        'Below it germs outlast a swim; above it nobody may bathe.',
      ),
      says: saysChlorine,
    },
    code(
      'ta_mg_per_L_as_CaCO3',
      limits.alkalinityLowMgPerL,
      limits.alkalinityHighMgPerL,
      'Too little lets pH jump; too much makes it creep up.',
    ),
    code(
      'cya_mg_per_L',
      undefined,
      limits.stabiliserHighMgPerL,
      'Above it chlorine works too slowly to treat an incident.',
    ),
    code(
      'ch_mg_per_L_as_CaCO3',
      profile.calciumLowMgPerL,
      profile.calciumHighMgPerL,
      'Too little eats plaster and grout; too much scales.',
    ),
    {
      key: 'ch_mg_per_L_as_CaCO3',
      low: surface.calcium.low,
      high: surface.calcium.high,
      kind: 'maker',
      says: `The band for this surface (${surface.calcium.source})`,
      why: 'The maker of the surface has the last word on it.',
    },
    {
      key: 'borate_mg_per_L_as_B',
      high: MOST_BORATE_MG_PER_L,
      kind: 'maker',
      says: 'Common practice, no source',
      why: 'More buffers little more and is more to swallow.',
    },
    ...(salt
      ? ([
          {
            key: 'salt_mg_per_L_as_NaCl',
            low: salt.low,
            high: salt.high,
            kind: 'maker',
            says: `What generators are usually built for (${salt.source})`,
            why: 'Too little stops the cell, too much corrodes and may trip it.',
          },
        ] as const)
      : []),
  ]
}

/** Targets that reach outside a code or a maker's range, with the reason; they stay the owner's. A floor above the ceiling first. */
export function targetWarnings(input: TargetsToJudge): Problem[] {
  const clash = chlorineClash(plannedStabiliser(input.targets, input.start), input)
  const outside = rangesFor(input).flatMap((range): Problem[] => {
    const band = input.targets[range.key]
    // a chlorine band that is nobody's own is brought within the rules anyhow
    if (!band || (range.key === 'fc_mg_per_L_as_Cl2' && (clash || !band.isOwn))) return []
    const below = range.low !== undefined && band.low < range.low - 1e-9
    const above = range.high !== undefined && band.high > range.high + 1e-9
    if (!below && !above) return []
    const unit = range.key === 'pH' ? '' : ' mg/L'
    const ends = [
      ...(below ? [`down to ${band.low}${unit}, below ${range.low}${unit}`] : []),
      ...(above ? [`up to ${band.high}${unit}, above ${range.high}${unit}`] : []),
    ]
    return [
      {
        code: range.kind === 'code' ? 'target-outside-code' : 'target-outside-makers-range',
        path: `targets.${range.key}`,
        what: `${TARGET_LABELS[range.key]} may go ${ends.join(' and ')}.`,
        why: `${range.says}. ${range.why}`,
        hint: range.kind === 'code' ? `Narrow the band. ${LOCAL_CODE_FIRST}` : 'Keep it only if the maker allows it.',
      },
    ]
  })
  return clash ? [floorAboveCeiling(clash), ...outside] : outside
}
