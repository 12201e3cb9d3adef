import { fail, ok, type Result } from '../base/index.ts'
import { methodSigma } from './methods.ts'
import { chlorineReadingBad, combinedDisagrees, totalBelowFree } from './problems-chlorine.ts'

export interface ChlorineReadings {
  readonly fc_mg_per_L_as_Cl2: number
  readonly tc_mg_per_L_as_Cl2?: number | undefined
  readonly cc_mg_per_L_as_Cl2?: number | undefined
}

export interface CombinedChlorine {
  /** [mg/L as Cl2] */
  readonly combinedMgPerL: number
  /** One standard deviation [mg/L]. */
  readonly sigmaMgPerL: number
  /** True where the two readings differ by less than they scatter, so that it may as well be none. */
  readonly isWithinScatter: boolean
}

/** How many standard deviations apart two readings must be to clash. */
const CLASH = 2.5

/**
 * Combined chlorine [mg/L as Cl2], from total less free, or as read; undefined where neither is there.
 * Equation: CC = TC − FC; σ² = σ(TC)² + σ(FC)².
 * Symbols: FC free, TC total, CC combined chlorine; σ by `methodSigma`.
 * Valid for: both read in one sample. In stabilised water the chlorine on the ring reads as free, not as combined.
 * Source: definition.
 * Accuracy: the σ given; a difference below zero but inside the scatter is none, further below is a clash.
 */
export function combinedChlorine(readings: ChlorineReadings, methodId: string): Result<CombinedChlorine | undefined> {
  const { fc_mg_per_L_as_Cl2: free, tc_mg_per_L_as_Cl2: total, cc_mg_per_L_as_Cl2: read } = readings
  const named = [
    ['fc_mg_per_L_as_Cl2', 'Free chlorine', free],
    ['tc_mg_per_L_as_Cl2', 'Total chlorine', total],
    ['cc_mg_per_L_as_Cl2', 'Combined chlorine', read],
  ] as const
  for (const [path, name, value] of named) {
    if (value !== undefined && !(value >= 0 && Number.isFinite(value)))
      return fail(chlorineReadingBad(path, name, value))
  }
  const sigma = (key: 'fc_mg_per_L_as_Cl2' | 'tc_mg_per_L_as_Cl2' | 'cc_mg_per_L_as_Cl2', value: number) =>
    (methodSigma(methodId, key, value) ?? methodSigma('unknown', key, value))?.sigma ?? 0
  if (total === undefined) {
    if (read === undefined) return ok(undefined)
    const own = sigma('cc_mg_per_L_as_Cl2', read)
    return ok({ combinedMgPerL: read, sigmaMgPerL: own, isWithinScatter: read < own })
  }
  const scatter = Math.hypot(sigma('fc_mg_per_L_as_Cl2', free), sigma('tc_mg_per_L_as_Cl2', total))
  const difference = total - free
  if (difference < -CLASH * scatter) return fail(totalBelowFree(total, free, scatter))
  if (read !== undefined) {
    const own = sigma('cc_mg_per_L_as_Cl2', read)
    if (Math.abs(difference - read) > CLASH * Math.hypot(scatter, own))
      return fail(combinedDisagrees(total, free, read))
    return ok({ combinedMgPerL: read, sigmaMgPerL: own, isWithinScatter: read < own })
  }
  return ok({
    combinedMgPerL: Math.max(0, difference),
    sigmaMgPerL: scatter,
    isWithinScatter: Math.abs(difference) < scatter,
  })
}
