import type { Result } from '../base/index.ts'
import type { Equilibrium, WaterReading } from './types.ts'

export { type Columns, doseColumns, openColumns, speciationColumns } from './columns.ts'
export { CONSTANT_SETS, withWahman } from './constants.ts'
export { alkalinityAtPH, equilibrate, equilibrateAtPH, equilibrateOpen, type Solution } from './equilibrate.ts'
export { FORMULA_NAMES, formulaDelta, formulaMassGPerMol, stoichiometryDelta } from './formulas.ts'
export { MG_CACO3_PER_EQ, MOLAR_MASSES_G_PER_MOL, mgPerLOf, molPerKg } from './masses.ts'
export { fullReading, READING_KEYS, readingOf, totalsOf } from './reading.ts'
export {
  addTotals,
  atTemperature,
  concentrate,
  differenceOf,
  mix,
  PURE_WATER,
  scaleDelta,
  strongIonChargeEq,
  sumDeltas,
  TOTAL_KEYS,
} from './totals.ts'
export type {
  AlkalinityParts,
  Constants,
  Delta,
  Equilibrium,
  FullReading,
  LogGammas,
  LogK,
  Reaction,
  ReactionId,
  Species,
  TotalKey,
  Totals,
  WaterReading,
} from './types.ts'

export interface TableIndex {
  readonly index: number
  readonly ph: number
  readonly temperatureFactor: number
  readonly calciumFactor: number
  readonly alkalinityFactor: number
  readonly tdsFactor: number
}
/** The trade's published table. `tdsMgPerL` is estimated from the reading where it isn't given. */
export declare function tableIndex(reading: WaterReading, tdsMgPerL?: number): TableIndex

/** g Cl2 per g ammonia nitrogen, theory: 7.593. */
export declare const breakpointRatio: number
export interface ContactTime {
  readonly organism: string
  readonly ctMgMinPerL: number
  readonly minutes: number
  readonly source: string
}
/** Only for water without stabiliser: with any, a Problem says so. */
export declare function contactTime(
  organismId: string,
  water: {
    readonly freeChlorineMgPerL: number
    readonly pH: number
    readonly temperatureC: number
    readonly cyanurateMgPerL: number
  },
): Result<ContactTime>
/** Half-life of all oxidising chlorine at the surface under clear summer noon sun [min]. */
export declare function halfLifeInSunMin(equilibrium: Equilibrium): number

/** [MJ/m² day] */
export declare function extraterrestrialRadiation(latitudeDeg: number, dayOfYear: number): number
/** [h] */
export declare function daylightHours(latitudeDeg: number, dayOfYear: number): number
/** [MJ/m² day] */
export declare function clearSkyRadiation(raMJPerM2Day: number, elevationM: number): number
/** From the fraction of possible sunshine, 0…1 [MJ/m² day]. */
export declare function solarRadiation(raMJPerM2Day: number, sunshineFraction: number): number
export declare function saturationVapourPressureKPa(temperatureC: number): number
export interface EvaporationInput {
  readonly waterC: number
  readonly airC: number
  /** 0…1 */
  readonly relativeHumidity: number
  readonly windMPerS: number
  /** 1 = Carrier's; about 0.72 for quiet outdoor water. */
  readonly activityFactor?: number | undefined
}
export declare function evaporationMmPerDay(input: EvaporationInput): number
export declare function schmidtNumberCO2(temperatureC: number): number
export declare function gasTransferVelocityMPerDay(windU10MPerS: number, temperatureC: number): number
/** CO2 out of the water [mol/m² day]; negative is into it. */
export declare function co2FluxMolPerM2Day(
  equilibrium: Equilibrium,
  log10PCO2Atm: number,
  transferVelocityMPerDay: number,
): number
export interface SunlitBody {
  readonly solarMJPerM2Day: number
  readonly meanDepthM: number
  /** Attenuation of near-ultraviolet light [1/m]. */
  readonly attenuationPerM?: number | undefined
}
/** First-order loss of all oxidising chlorine by sunlight, averaged over depth and day [1/day]. */
export declare function photolysisPerDay(equilibrium: Equilibrium, body: SunlitBody): number
/** First-order loss of chlorine in the dark (thermal, organic) [1/day]. */
export declare function darkLossPerDay(temperatureC: number, at28CPerDay?: number): number
/** Chlorine that bathers use [g Cl2]. */
export declare function batherDemandG(batherHours: number, nitrogenGPerBatherHour?: number, ratio?: number): number
