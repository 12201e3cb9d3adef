import {
  batherDemandG,
  breakpointRatio,
  darkLossPerDay,
  extraterrestrialRadiation,
  NITROGEN_G_PER_BATHER_HOUR,
  photolysisPerDay,
  solarRadiation,
} from '../water/index.ts'
import type { Covered } from './covers.ts'
import { type Helper, sharesLeft } from './helpers.ts'
import type { SolvedWater } from './solved.ts'
import type { DemandTerm, UpkeepInput } from './upkeep-types.ts'

/** Chlorine that dust, leaves and walls use, by water surface [g/m² day]: from memory, a factor of three either way. */
const DEBRIS = { value: 0.5, low: 0.17, high: 1.5 } as const
/** 30 mL of urine and 0.2 L of sweat by WHO 2006 table 4.1 [g N per bather and hour]. */
export const LEAN_NITROGEN_G = 0.57
export const HIGH_RATIO = 15
/** Sunlight's uncertainty without and with stabiliser: the kernel is an upper estimate with it. */
const SUN_FACTOR = { low: 1 / 1.5, lowStabilised: 1 / 5, high: 1.5 } as const

/**
 * What uses chlorine up in a day of holding a residual [mg/L day as Cl2], by cause; the terms add up to the demand.
 * Equation: sun k_sun R; warmth k_dark R; bathers g/V; base g/m² · surface/V.
 * Symbols: R residual held [mg/L]; k first-order losses [1/day]; V volume [m³].
 * Valid for: a residual kept steady; when it is dosed once a day its mean counts as R.
 * Source: each term's own.
 * Accuracy: each term's range; together no better than a factor of two without a log to fit.
 */
export function demandTerms(
  input: UpkeepInput,
  water: SolvedWater,
  residualMgPerL: number,
  covered: Covered,
  helpers: readonly Helper[],
): readonly DemandTerm[] {
  const { volumeM3 } = input
  const isStabilised = water.reading.cya_mg_per_L !== undefined && water.reading.cya_mg_per_L > 0
  const ra = extraterrestrialRadiation(input.latitudeDeg, input.dayOfYear)
  const solarMJPerM2Day = solarRadiation(ra, input.sunshine)
  // glass holds near-ultraviolet back (from memory), and what passes is not known
  const openLight = input.isIndoor ? 0 : 1 - covered.daylightShare * (1 - covered.cover.lightPasses)
  const perDay = photolysisPerDay(water.equilibrium, { solarMJPerM2Day, meanDepthM: input.meanDepthM }) * openLight
  const sun = perDay * residualMgPerL

  const warmth = darkLossPerDay(input.waterC) * residualMgPerL

  const hours = input.bathersPerDay * input.bathingHours
  const spared = sharesLeft(helpers, 'bathers')
  const bathers = (nitrogenG: number, ratio: number | undefined, share: number) =>
    (batherDemandG(hours, nitrogenG, ratio) / volumeM3) * share

  const open = 1 - covered.dayShare * covered.cover.debrisCut
  const sparedBase = sharesLeft(helpers, 'base')
  const base = (gPerM2: number, share: number) => ((gPerM2 * input.waterSurfaceM2) / volumeM3) * open * share

  const named = helpers.map((helper) => helper.label).join(', ')
  return [
    {
      id: 'sun',
      label: 'Sunlight',
      value: sun,
      low: sun * (isStabilised ? SUN_FACTOR.lowStabilised : SUN_FACTOR.low),
      high: sun * SUN_FACTOR.high,
      how: input.isIndoor
        ? 'None is counted under a roof.'
        : `${solarMJPerM2Day.toFixed(1)} MJ/m² on the water, ${Math.round(openLight * 100)} % of it past the cover, bleaching the chlorine that stabiliser does not hold, averaged over ${input.meanDepthM.toFixed(1)} m of depth.`,
      source: 'FAO-56 eq. 21 and 35; Nowell & Hoigné 1992, Water Res. 26:593; attenuation and cover light from memory',
    },
    {
      id: 'warmth',
      label: 'Warmth and what is dissolved',
      value: warmth,
      low: warmth / 2,
      high: warmth * 2,
      how: '14 % of the residual a day at 28 °C, doubling every 10 °C.',
      source: 'Wojtowicz, JSPSI 5(1), abstract; the doubling is common practice, no source',
    },
    {
      id: 'bathers',
      label: 'Bathers',
      value: bathers(NITROGEN_G_PER_BATHER_HOUR, undefined, spared.value),
      low: bathers(LEAN_NITROGEN_G, breakpointRatio, spared.low),
      high: bathers(NITROGEN_G_PER_BATHER_HOUR, HIGH_RATIO, spared.high),
      how: `${hours} bather-hours a day at 0.85 g of nitrogen and 12 g of chlorine for each${spared.value < 1 ? `, of which ${named} may spare ${Math.round((1 - spared.value) * 100)} %` : ''}.`,
      source:
        'nitrogen from memory (WHO 2006 table 4.1 gives 0.57 g); ratio 10 to 15 in practice: CRC handbook, ISBN 978-1-4398-5332-0, chapter 40 (excerpt seen); 12 is our middle',
    },
    {
      id: 'base',
      label: 'Dust, leaves and walls',
      value: base(DEBRIS.value, sparedBase.value),
      low: base(DEBRIS.low, sparedBase.low),
      high: base(DEBRIS.high, sparedBase.high),
      how: `0.5 g of chlorine for each square metre of open water a day, ${Math.round(open * 100)} % of it past the cover${sparedBase.value < 1 ? `, of which ${named} may spare ${Math.round((1 - sparedBase.value) * 100)} %` : ''}.`,
      source: 'from memory, a factor of three either way',
    },
  ]
}

/** Range of a sum whose terms err independently: deviations add as squares. */
export function rangeOf(terms: readonly DemandTerm[]): {
  readonly value: number
  readonly low: number
  readonly high: number
} {
  const value = terms.reduce((sum, term) => sum + term.value, 0)
  const below = Math.sqrt(terms.reduce((sum, term) => sum + (term.value - term.low) ** 2, 0))
  const above = Math.sqrt(terms.reduce((sum, term) => sum + (term.high - term.value) ** 2, 0))
  return { value, low: value - below, high: value + above }
}
