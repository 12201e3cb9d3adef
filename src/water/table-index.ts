import { MOLAR_MASSES_G_PER_MOL as MASS, MG_CACO3_PER_EQ, mgPerLOf, molPerKg } from './masses.ts'
import type { WaterReading } from './types.ts'

/** The trade's table index with its parts: index = ph + factors − tdsFactor. */
export interface TableIndex {
  readonly index: number
  readonly ph: number
  readonly temperatureFactor: number
  readonly calciumFactor: number
  readonly alkalinityFactor: number
  /** Dissolved-solids constant that is subtracted: 12.1 or 12.2. */
  readonly tdsFactor: number
}

type Points = readonly (readonly [x: number, factor: number])[]

/** Factors as printed, against °F. */
const TEMPERATURE_POINTS_F: Points = [
  [32, 0.0],
  [37, 0.1],
  [46, 0.2],
  [53, 0.3],
  [60, 0.4],
  [66, 0.5],
  [76, 0.6],
  [84, 0.7],
  [94, 0.8],
  [105, 0.9],
  [128, 1.0],
]

/** Against calcium hardness [mg/L as CaCO3]. */
export const CALCIUM_POINTS: Points = [
  [5, 0.3],
  [25, 1.0],
  [50, 1.3],
  [75, 1.5],
  [100, 1.6],
  [150, 1.8],
  [200, 1.9],
  [300, 2.1],
  [400, 2.2],
  [800, 2.5],
  [1000, 2.6],
]

/** Against total alkalinity [mg/L as CaCO3]. */
export const ALKALINITY_POINTS: Points = [
  [5, 0.7],
  [25, 1.4],
  [50, 1.7],
  [75, 1.9],
  [100, 2.0],
  [150, 2.2],
  [200, 2.3],
  [300, 2.5],
  [400, 2.6],
  [800, 2.9],
  [1000, 3.0],
]

const TDS_STEP_MG_PER_L = 1000

/**
 * The trade's table index [-].
 * Equation: pH + TF + CF + AF − 12.1, or − 12.2 where dissolved solids are 1000 mg/L or more.
 * Symbols: TF, CF, AF the printed factors for temperature, calcium hardness and total alkalinity; between rows CF and AF
 *   follow the logarithm of the reading, TF the temperature.
 * Valid for: 0–53 °C, hardness and alkalinity 5–1000 mg/L; beyond the rows the last factor holds.
 * Source: Administrative Rules of Montana 37.115 table 7; the sum is common practice. Dissolved solids that aren't given
 *   are estimated from the reading (`dissolvedSolidsMgPerL`).
 * Accuracy: ±0.05 of its own rounding; against calcite SI it runs 0.3 low in cold water and errs by up to 1 where
 *   stabiliser holds most of the alkalinity (MODEL.md).
 */
export function tableIndex(reading: WaterReading, tdsMgPerL = dissolvedSolidsMgPerL(reading)): TableIndex {
  const temperatureF = (reading.temperature_C ?? 25) * 1.8 + 32
  const temperatureFactor = between(TEMPERATURE_POINTS_F, temperatureF, (x) => x)
  const calciumFactor = between(CALCIUM_POINTS, reading.ch_mg_per_L_as_CaCO3 ?? 0, Math.log)
  const alkalinityFactor = between(ALKALINITY_POINTS, reading.ta_mg_per_L_as_CaCO3, Math.log)
  const tdsFactor = tdsMgPerL < TDS_STEP_MG_PER_L ? 12.1 : 12.2
  return {
    index: reading.pH + temperatureFactor + calciumFactor + alkalinityFactor - tdsFactor,
    ph: reading.pH,
    temperatureFactor,
    calciumFactor,
    alkalinityFactor,
    tdsFactor,
  }
}

/**
 * Dissolved solids from the readings [mg/L].
 * Equation: Ca + Mg + Na + Cl + SO4 + alkalinity as HCO3 + stabiliser + B(OH)3, sodium closing the charge balance.
 * Symbols: readings turned to moles; sodium that would be negative counts as none.
 * Valid for: choosing between the table's two constants.
 * Source: molar masses.
 * Accuracy: 2 %, since carbonate and the weak acids are counted as one form.
 */
export function dissolvedSolidsMgPerL(reading: WaterReading): number {
  const alkalinity = reading.ta_mg_per_L_as_CaCO3 / MG_CACO3_PER_EQ
  const calcium = molPerKg(reading.ch_mg_per_L_as_CaCO3 ?? 0, MASS.calciumCarbonate)
  const magnesium = molPerKg(reading.mg_hardness_mg_per_L_as_CaCO3 ?? 0, MASS.calciumCarbonate)
  const sulfate = molPerKg(reading.sulfate_mg_per_L ?? 0, MASS.sulfate)
  const chloride = molPerKg(reading.salt_mg_per_L_as_NaCl ?? 0, MASS.sodiumChloride)
  const sodium = Math.max(0, alkalinity + chloride + 2 * (sulfate - calcium - magnesium))
  return (
    mgPerLOf(calcium, MASS.calcium) +
    mgPerLOf(magnesium, MASS.magnesium) +
    mgPerLOf(sodium, MASS.sodium) +
    mgPerLOf(chloride, MASS.chloride) +
    mgPerLOf(sulfate, MASS.sulfate) +
    mgPerLOf(Math.max(0, alkalinity), MASS.bicarbonate) +
    (reading.cya_mg_per_L ?? 0) +
    mgPerLOf(molPerKg(reading.borate_mg_per_L_as_B ?? 0, MASS.boron), MASS.boricAcid)
  )
}

function between(points: Points, x: number, scale: (x: number) => number): number {
  const first = points[0]!
  if (!(x > first[0])) return first[1]
  for (let i = 1; i < points.length; i++) {
    const [x1, y1] = points[i]!
    if (x > x1) continue
    const [x0, y0] = points[i - 1]!
    return y0 + ((y1 - y0) * (scale(x) - scale(x0))) / (scale(x1) - scale(x0))
  }
  return points.at(-1)![1]
}
