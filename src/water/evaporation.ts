/**
 * Saturation vapour pressure [kPa].
 * Equation: 0.6108 exp(17.27 t / (t + 237.3)).
 * Symbols: t [°C].
 * Valid for: 0–50 °C.
 * Source: Allen et al. 1998, FAO-56 eq. 11.
 * Accuracy: 0.1 %; 3.168 at 25 °C.
 */
export function saturationVapourPressureKPa(temperatureC: number): number {
  return 0.6108 * Math.exp((17.27 * temperatureC) / (temperatureC + 237.3))
}

/** Heat of vaporisation [kJ/kg]. Source: FAO-56 annex 3, 2501 − 2.361 t; 2450 at 20 °C. */
export function latentHeatKJPerKg(temperatureC: number): number {
  return 2501 - 2.361 * temperatureC
}

/** Wind at 2 m from wind at height z [m/s]. Source: FAO-56 eq. 47, u 4.87 / ln(67.8 z − 5.42). */
export function windAt2M(windMPerS: number, heightM: number): number {
  return (windMPerS * 4.87) / Math.log(67.8 * heightM - 5.42)
}

export interface EvaporationInput {
  readonly waterC: number
  readonly airC: number
  /** 0…1 */
  readonly relativeHumidity: number
  /** Over the water [m/s]. */
  readonly windMPerS: number
  /** 1 is Carrier's own; 0.72–0.74 measured on quiet water. */
  readonly activityFactor?: number | undefined
}

/** Quiet outdoor water against Carrier's formula: Smith, Löf & Jones 1994, Solar Energy 53:3, abstract (0.72 calm, 0.82 in wind). */
export const QUIET_WATER_FACTOR = 0.72

const SECONDS_PER_DAY = 86400

/**
 * Evaporation from open water [mm/day], kilograms a square metre.
 * Equation: f (pw − pa) (0.089 + 0.0782 v) / Y.
 * Symbols: pw saturation pressure at the water's temperature, pa vapour pressure of the air [kPa]; v wind over the water
 *   [m/s]; Y heat of vaporisation [kJ/kg]; f activity factor.
 * Valid for: 10–40 °C, wind to 6 m/s. Negative is condensation.
 * Source: Carrier 1918 in the SI form of ASHRAE, HVAC Applications; f after Smith et al. 1994, 1998.
 * Accuracy: 15 %. 80 °F water in still air of 80 °F and 50 %: 5.49 mm/day in the original units, 5.51 here.
 */
export function evaporationMmPerDay(input: EvaporationInput): number {
  const vapour = saturationVapourPressureKPa(input.airC) * input.relativeHumidity
  const deficit = saturationVapourPressureKPa(input.waterC) - vapour
  const perSecond = (deficit * (0.089 + 0.0782 * input.windMPerS)) / latentHeatKJPerKg(input.waterC)
  return (input.activityFactor ?? 1) * perSecond * SECONDS_PER_DAY
}
