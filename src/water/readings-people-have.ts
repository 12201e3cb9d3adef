import { fail, ok, type Result } from '../base/index.ts'
import { MOLAR_MASSES_G_PER_MOL as MASS, MG_CACO3_PER_EQ } from './masses.ts'
import { methodSigma } from './methods.ts'
import { hardnessDisagrees, peopleReadingBad } from './problems-readings.ts'
import type { SourceStatus } from './sourcing.ts'

/** A figure between two ends, of which one is the likeliest. */
export interface Likely {
  readonly low: number
  readonly best: number
  readonly high: number
  readonly status: SourceStatus
}

/** Share of hardness that is calcium where nothing tells: half in dolomite country, nearly all in limestone. */
const CALCIUM_SHARE = Object.freeze({ low: 0.5, best: 0.75, high: 1 })

export interface HardnessReadings {
  readonly th_mg_per_L_as_CaCO3: number
  readonly ch_mg_per_L_as_CaCO3?: number | undefined
  readonly mg_hardness_mg_per_L_as_CaCO3?: number | undefined
}

/**
 * Calcium hardness behind a total hardness [mg/L as CaCO3].
 * Equation: CH = TH − MH; without magnesium, a share of TH between a half and all.
 * Symbols: TH total, CH calcium, MH magnesium hardness.
 * Valid for: fresh water; strontium, barium and metals are left out.
 * Source: definition; the share is common practice, no source (1 : 1 is dolomite's own).
 * Accuracy: the interval. With calcium read as well, that reading is kept and total hardness only checked against it.
 */
export function calciumFromTotal(readings: HardnessReadings, methodId: string): Result<Likely> {
  const { th_mg_per_L_as_CaCO3: total, ch_mg_per_L_as_CaCO3: calcium } = readings
  const magnesium = readings.mg_hardness_mg_per_L_as_CaCO3
  const named = [
    ['th_mg_per_L_as_CaCO3', 'Total hardness', total],
    ['ch_mg_per_L_as_CaCO3', 'Calcium hardness', calcium],
    ['mg_hardness_mg_per_L_as_CaCO3', 'Magnesium hardness', magnesium],
  ] as const
  for (const [path, name, value] of named) {
    if (value !== undefined && !(value >= 0 && Number.isFinite(value))) return fail(peopleReadingBad(path, name, value))
  }
  const sigma =
    (methodSigma(methodId, 'th_mg_per_L_as_CaCO3', total) ?? methodSigma('unknown', 'th_mg_per_L_as_CaCO3', total))
      ?.sigma ?? 0
  const parts = (calcium ?? 0) + (magnesium ?? 0)
  if (parts - total > CLASH * Math.SQRT2 * sigma) return fail(hardnessDisagrees(total, parts, sigma))
  if (calcium !== undefined) return ok({ low: calcium, best: calcium, high: calcium, status: 'derived' })
  if (magnesium !== undefined) {
    const rest = Math.max(0, total - magnesium)
    return ok({ low: Math.max(0, rest - 2 * sigma), best: rest, high: rest + 2 * sigma, status: 'derived' })
  }
  return ok({
    low: CALCIUM_SHARE.low * total,
    best: CALCIUM_SHARE.best * total,
    high: CALCIUM_SHARE.high * total,
    status: 'common practice, no source',
  })
}

/** How many standard deviations apart two readings must be to clash. */
const CLASH = 2.5

/** mg/L of dissolved solids that a meter shows for 1 µS/cm at 25 °C: 0.5 set for table salt, 0.7 for natural waters. */
const SOLIDS_PER_CONDUCTIVITY = Object.freeze({ low: 0.5, best: 0.6, high: 0.7 })

/**
 * Dissolved solids from conductivity [mg/L].
 * Equation: TDS = f κ, f from 0.5 to 0.7.
 * Symbols: κ conductivity at 25 °C [µS/cm].
 * Valid for: pool and tap water up to some 10 000 µS/cm; undissociated matter (stabiliser, boric acid) does not conduct.
 * Source: common practice, no source.
 * Accuracy: the interval.
 */
export function solidsFromConductivity(microSPerCm: number): Result<Likely> {
  if (!(microSPerCm >= 0 && Number.isFinite(microSPerCm)))
    return fail(peopleReadingBad('conductivity_uS_per_cm', 'Conductivity', microSPerCm))
  const { low, best, high } = SOLIDS_PER_CONDUCTIVITY
  return ok({
    low: low * microSPerCm,
    best: best * microSPerCm,
    high: high * microSPerCm,
    status: 'common practice, no source',
  })
}

/** The conductivity at 25 °C that a meter turned into its dissolved solids [µS/cm]; its factor is printed on the meter, 0.5 to 0.7. */
export function conductivityFromSolids(tdsMgPerL: number, factor?: number): Result<Likely> {
  if (!(tdsMgPerL >= 0 && Number.isFinite(tdsMgPerL)))
    return fail(peopleReadingBad('tds_mg_per_L', 'Dissolved solids', tdsMgPerL))
  if (factor !== undefined) {
    if (!(factor > 0 && factor <= 1)) return fail(peopleReadingBad('tds_mg_per_L', 'The meter’s factor', factor))
    return ok({ low: tdsMgPerL / factor, best: tdsMgPerL / factor, high: tdsMgPerL / factor, status: 'derived' })
  }
  const { low, best, high } = SOLIDS_PER_CONDUCTIVITY
  return ok({
    low: tdsMgPerL / high,
    best: tdsMgPerL / best,
    high: tdsMgPerL / low,
    status: 'common practice, no source',
  })
}

/**
 * Total alkalinity of a report that gives bicarbonate and carbonate [mg/L as CaCO3].
 * Equation: 50043.45 (HCO3 / 61016.8 + 2 CO3 / 60008.9).
 * Symbols: both in mg/L as the ion.
 * Valid for: waters whose alkalinity is carbonate: tap and well water, not a pool with stabiliser or borate.
 * Source: molar masses, IUPAC abridged standard atomic weights.
 * Accuracy: that of the readings.
 */
export function alkalinityFromBicarbonate(bicarbonateMgPerL: number, carbonateMgPerL = 0): Result<number> {
  for (const value of [bicarbonateMgPerL, carbonateMgPerL]) {
    if (!(value >= 0 && Number.isFinite(value)))
      return fail(peopleReadingBad('ta_mg_per_L_as_CaCO3', 'Bicarbonate or carbonate', value))
  }
  const eq = bicarbonateMgPerL / MASS.bicarbonate + (2 * carbonateMgPerL) / MASS.carbonate
  return ok((eq * MG_CACO3_PER_EQ) / 1000)
}

/** Bicarbonate that an alkalinity would be if it were all that [mg/L as HCO3]. */
export function bicarbonateFromAlkalinity(taMgPerL: number): number {
  return (taMgPerL / MG_CACO3_PER_EQ) * MASS.bicarbonate * 1000
}
