import type { UpkeepInput } from './upkeep-types.ts'

/** Air over the water: best guess, and the ends of what it may be. */
export interface Air {
  readonly airC: number
  readonly humidityPercent: number
  readonly windMPerS: number
}

interface AirOver {
  readonly best: Air
  /** Of evaporation; undefined where the formula's own accuracy is all that is told. */
  readonly least?: Air | undefined
  readonly most?: Air | undefined
  /** What was taken instead of the weather, in words. */
  readonly words?: string | undefined
}

/** Above the water [°C], as halls are heated so that it evaporates little. */
const WARMER_C = 1
const HUMIDITY = { best: 60, damp: 75, dry: 40 } as const
/** What a fan may move [m/s]. */
const DRAUGHT_M_PER_S = 0.3

/**
 * Air over the water: the weather outdoors; under a roof still air a degree warmer than the water and 60 % damp, from still and
 * 75 % to a draught of 0.3 m/s at 40 %.
 * Valid for: heated halls. An open roof or open doors come nearer the weather.
 * Source: common practice, no source.
 */
export function airOver({ isIndoor, airC, humidityPercent, windMPerS, waterC }: UpkeepInput): AirOver {
  if (!isIndoor) return { best: { airC, humidityPercent, windMPerS } }
  const hall = (humidity: number, wind: number): Air => ({
    airC: waterC + WARMER_C,
    humidityPercent: humidity,
    windMPerS: wind,
  })
  return {
    best: hall(HUMIDITY.best, 0),
    least: hall(HUMIDITY.damp, 0),
    most: hall(HUMIDITY.dry, DRAUGHT_M_PER_S),
    words: `Under a roof the weather outside is left aside: still air is taken, ${WARMER_C} °C warmer than the water and ${HUMIDITY.best} % damp (common practice, no source), and the ranges of evaporation and of leaving CO2 are wider for it. Read the hall’s own level and pH for a week to know better.`,
  }
}
