import type { Result } from '../base/index.ts'
import type { Constants, Delta, Equilibrium, FullReading, TotalKey, Totals, WaterReading } from './types.ts'

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

export declare const TOTAL_KEYS: readonly TotalKey[]
/** Totals of plain nothing at 25 °C. */
export declare const PURE_WATER: Totals
export declare const CONSTANT_SETS: {
  readonly default: Constants
  readonly oracle: Constants
  readonly wahman: Constants
}
/** A set with the chlorine–cyanurate constants of Wahman in place of O'Brien's. */
export declare function withWahman(constants: Constants): Constants

export declare const MOLAR_MASSES_G_PER_MOL: Readonly<Record<string, number>>
export declare const MG_CACO3_PER_EQ: number
/** Change of totals by one mol of a formula, e.g. `NaHCO3`; undefined for a formula that isn't in the table. */
export declare function formulaDelta(formula: string): Delta | undefined
/** Molar mass of a formula in the table [g/mol]. */
export declare function formulaMassGPerMol(formula: string): number | undefined
/** Sum of formulas times their amounts, e.g. {NaHCO3: 0.8} in mmol gives a Delta in mmol. */
export declare function stoichiometryDelta(stoichiometry: Readonly<Record<string, number>>): Delta | undefined

export declare function addTotals(totals: Totals, delta: Delta): Totals
export declare function scaleDelta(delta: Delta, factor: number): Delta
export declare function sumDeltas(deltas: readonly Delta[]): Delta
/** after − before. */
export declare function differenceOf(after: Totals, before: Totals): Delta
/** (1 − fractionB) of a and fractionB of b, by volume; temperature mixes too. */
export declare function mix(a: Totals, b: Totals, fractionB: number): Totals
/** Water leaves, solutes stay: every total × factor. */
export declare function concentrate(totals: Totals, factor: number): Totals
export declare function atTemperature(totals: Totals, temperatureC: number): Totals
/** Charge of the strong ions [eq/kg]; equals alkalinityEq in every consistent water. */
export declare function strongIonChargeEq(totals: Totals): number

/** pH and total alkalinity measured → conserved totals. */
export declare function totalsOf(reading: WaterReading, constants: Constants): Result<Totals>
/** Conserved totals → pH and everything, no exchange with air. */
export declare function equilibrate(totals: Totals, constants: Constants): Result<Equilibrium>
/** The same with carbon replaced by balance with air of that CO2 pressure. */
export declare function equilibrateOpen(
  totals: Totals,
  log10PCO2Atm: number,
  constants: Constants,
): Result<{ readonly totals: Totals; readonly equilibrium: Equilibrium }>
/** The same with carbon replaced by what this pH needs (CO2 put in or taken out at constant alkalinity). */
export declare function equilibrateAtPH(
  totals: Totals,
  pH: number,
  constants: Constants,
): Result<{ readonly totals: Totals; readonly equilibrium: Equilibrium }>
export declare function readingOf(totals: Totals, equilibrium: Equilibrium): FullReading

export type Columns = Readonly<Record<string, number | null>>
/** The columns of a full speciation, the Wahman alternative and the closed titration to pH 4.5 included. */
export declare function speciationColumns(
  totals: Totals,
  equilibrium: Equilibrium,
  constants: Constants,
): Result<Columns>
/** The columns of a water after a dose, a blend, evaporation. */
export declare function doseColumns(totals: Totals, equilibrium: Equilibrium): Columns
/** The short columns of a water in balance with air. */
export declare function openColumns(totals: Totals, equilibrium: Equilibrium): Columns

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
