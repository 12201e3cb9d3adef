import type { TargetBand, TargetKey } from '../../../document/index.ts'
import type { WaterLimits } from '../../../water/index.ts'

interface CodeLimit {
  readonly low?: number | undefined
  readonly high?: number | undefined
  /** Said of a band that reaches outside, with where the limit comes from. */
  readonly source: string
}

/** Never above this, whatever the rules: they say nothing of borate [mg/L as B]. */
const BORATE: CodeLimit = { high: 50, source: 'no code; common practice, no source: never above 50' }

/**
 * A sentence where a band reaches outside what the rules for bathing allow, else undefined. The chlorine floor is higher
 * with stabiliser, and where stabiliser is unknown it counts as present; nothing lowers it.
 */
export function codeWarning(key: TargetKey, band: TargetBand, limits: WaterLimits): string | undefined {
  const limit = limitOf(key, limits)
  if (!limit) return undefined
  if (limit.low !== undefined && band.low < limit.low) return `Reaches below what is allowed: ${limit.source}.`
  if (limit.high !== undefined && band.high > limit.high) return `Reaches above what is allowed: ${limit.source}.`
  return undefined
}

function limitOf(key: TargetKey, limits: WaterLimits): CodeLimit | undefined {
  const { profile } = limits
  const source = `${profile.source} (${profile.status})`
  switch (key) {
    case 'pH':
      return { low: limits.pHLow, high: limits.pHHigh, source: `${limits.pHLow} to ${limits.pHHigh}, ${source}` }
    case 'ta_mg_per_L_as_CaCO3':
      return {
        low: limits.alkalinityLowMgPerL,
        high: limits.alkalinityHighMgPerL,
        source: `${limits.alkalinityLowMgPerL} to ${limits.alkalinityHighMgPerL} mg/L, ${source}`,
      }
    case 'ch_mg_per_L_as_CaCO3':
      return profile.calciumLowMgPerL === undefined || profile.calciumHighMgPerL === undefined
        ? undefined
        : {
            low: profile.calciumLowMgPerL,
            high: profile.calciumHighMgPerL,
            source: `${profile.calciumLowMgPerL} to ${profile.calciumHighMgPerL} mg/L, ${source}`,
          }
    case 'cya_mg_per_L':
      return { high: limits.stabiliserHighMgPerL, source: `at most ${limits.stabiliserHighMgPerL} mg/L, ${source}` }
    case 'borate_mg_per_L_as_B':
      return BORATE
    case 'fc_mg_per_L_as_Cl2':
      return {
        low: limits.floorMgPerL,
        high: limits.ceilingMgPerL,
        source: `at least ${limits.floorMgPerL} mg/L ${limits.stabiliser === 'none' ? 'without' : 'with'} stabiliser, at most ${limits.ceilingMgPerL}; ${limits.floorSource}`,
      }
    case 'salt_mg_per_L_as_NaCl':
      return undefined
  }
}
