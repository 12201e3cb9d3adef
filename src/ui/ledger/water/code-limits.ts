import type { TargetBand, TargetKey } from '../../../document/index.ts'

interface CodeLimit {
  readonly low?: number
  readonly high?: number
  /** Said of a band that reaches outside, with where the limit comes from. */
  readonly source: string
}

/** What health codes allow in public pools; a private pool does well inside them too. */
const CODE_LIMITS: { readonly [K in TargetKey]?: CodeLimit } = {
  pH: { low: 7.0, high: 7.8, source: 'MAHC 5.7.3.4: 7.0 to 7.8 (from memory); Montana ARM 37.115.1308: 7.2 to 7.8' },
  ta_mg_per_L_as_CaCO3: { low: 60, high: 180, source: 'Wisconsin ATCP 76.14: 60 to 180' },
  ch_mg_per_L_as_CaCO3: { low: 150, high: 1000, source: 'Montana ARM 37.115.1308: 150 to 1000' },
  cya_mg_per_L: { high: 90, source: 'MAHC 5.7.3.1.3: at most 90 (seen second-hand); some states 30' },
  borate_mg_per_L_as_B: { high: 50, source: 'no code; common practice, no source: never above 50' },
}
const CHLORINE_SOURCE = 'MAHC 5.7.3.1.1 (seen second-hand)'
const CHLORINE_CEILING = 10
/** Stabiliser that a test can’t tell from none [mg/L]. */
const NO_STABILISER = 1

/**
 * A sentence where a band reaches outside what codes allow, else undefined. The chlorine floor is higher with stabiliser,
 * and where stabiliser is unknown it counts as present; nothing lowers it.
 */
export function codeWarning(
  key: TargetKey,
  band: TargetBand,
  stabiliserMgPerL: number | undefined,
): string | undefined {
  const limit = key === 'fc_mg_per_L_as_Cl2' ? chlorineLimit(stabiliserMgPerL) : CODE_LIMITS[key]
  if (!limit) return undefined
  if (limit.low !== undefined && band.low < limit.low) return `Reaches below what codes allow: ${limit.source}.`
  if (limit.high !== undefined && band.high > limit.high) return `Reaches above what codes allow: ${limit.source}.`
  return undefined
}

function chlorineLimit(stabiliserMgPerL: number | undefined): CodeLimit {
  const hasStabiliser = stabiliserMgPerL === undefined || stabiliserMgPerL >= NO_STABILISER
  const low = hasStabiliser ? 2 : 1
  return {
    low,
    high: CHLORINE_CEILING,
    source: `at least ${low} mg/L ${hasStabiliser ? 'with' : 'without'} stabiliser, at most ${CHLORINE_CEILING}, ${CHLORINE_SOURCE}`,
  }
}
