import type { ClimateMonth, Site, System } from '../../../document/index.ts'
import { MONTHS } from './upkeep-words.ts'

/**
 * The twelve rows with one month changed. Where there were none yet, `usual` stands for the other months until each is
 * set: a document keeps all twelve or none.
 */
export function withMonth(
  climate: readonly ClimateMonth[] | undefined,
  month: number,
  changed: ClimateMonth,
  usual: ClimateMonth,
): readonly ClimateMonth[] {
  const rows = climate?.length === 12 ? climate : Array.from({ length: 12 }, () => usual)
  return rows.map((row, index) => (index === month ? changed : row))
}

/** What nobody gave, in words without numbers: the numbers stand in the fields. */
export function assumedNames(
  site: Site,
  system: System,
  month: number,
  isWaterMeasured: boolean,
  isDrawn: boolean,
): readonly string[] {
  const row = site.climate?.[month]
  return [
    ...(row || site.indoor
      ? []
      : [`${MONTHS[month]}’s weather (that of a mild summer day stands in for it, so give your own)`]),
    ...(row?.waterC === undefined && !isWaterMeasured ? ['the water’s temperature'] : []),
    ...(site.latitudeDeg === undefined ? ['the latitude'] : []),
    ...(system.regime.bathersPerDay === undefined ? ['that nobody bathes'] : []),
    ...(isDrawn ? [] : ['the mean depth']),
  ]
}
