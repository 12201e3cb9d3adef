import type { Result } from '../base/index.ts'

export type UnitSystem = 'us' | 'metric' | 'imperial'
/**
 * Canonical unit of each: length [m], elevation [m], area [m²], volume [m³], mass [kg], liquid [m³], temperature [°C],
 * concentration [mg/L], flow [m³/h], areaRate (height of water a day) [mm/d], volumePerLevel [m³ per m],
 * energy [kWh], duration [h], wind [m/s], percent [%], angle [°], pH and number without a unit.
 */
export type Quantity =
  | 'length' | 'elevation' | 'area' | 'volume' | 'mass' | 'liquid' | 'temperature' | 'concentration' | 'flow'
  | 'areaRate' | 'volumePerLevel' | 'energy' | 'duration' | 'wind' | 'percent' | 'angle' | 'pH' | 'number'
export interface FormatOptions {
  /** One standard deviation in the canonical unit: the digits follow it. */
  readonly sigma?: number | undefined
  /** Decimals of the shown unit; for feet and inches the inch is split 2^digits ways. */
  readonly digits?: number | undefined
  /** short: 7′ 10″, gal/in; long: 7 ft 10 in, gal per inch. */
  readonly style?: 'short' | 'long' | undefined
}
export declare function formatQuantity(quantity: Quantity, si: number, system: UnitSystem, options?: FormatOptions): string
/** As a field shows it for editing: fine enough that typing it back changes nothing that matters. */
export declare function formatForEntry(quantity: Quantity, si: number, system: UnitSystem): string
/** "± 390 gal": the 95 % interval (1.96 sigma). */
export declare function formatPlusMinus(quantity: Quantity, si: number, sigma: number, system: UnitSystem): string
/** Fall per run → "1 : 7". */
export declare function formatSlope(slope: number): string
export declare function parseQuantity(quantity: Quantity, text: string, system: UnitSystem): Result<number>
export declare function snapLength(si: number, system: UnitSystem): number
/** One press of an arrow key, in the canonical unit. */
export declare function displayStep(quantity: Quantity, system: UnitSystem): number
/** The number alone in the main display unit, for axes and charts, and its label. */
export declare function toDisplay(quantity: Quantity, si: number, system: UnitSystem): number
export declare function fromDisplay(quantity: Quantity, shown: number, system: UnitSystem): number
export declare function unitLabel(quantity: Quantity, system: UnitSystem): string
