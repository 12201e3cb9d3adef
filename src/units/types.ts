export type UnitSystem = 'us' | 'metric' | 'imperial'

/**
 * What a number measures. Its canonical unit, the only one the program computes in: length, elevation [m]; area [m²];
 * volume, liquid [m³]; mass [kg]; temperature [°C]; concentration [mg/L]; hardness, alkalinity
 * [mg/L as CaCO3]; conductivity [µS/cm]; flow [m³/h]; areaRate, a height of water
 * a day [mm/d]; volumePerLevel [m³ per m of level]; energy [kWh]; duration [h]; wind [m/s]; percent [%]; angle [°];
 * pH and number without a unit.
 */
export type Quantity =
  | 'length'
  | 'elevation'
  | 'area'
  | 'volume'
  | 'mass'
  | 'liquid'
  | 'temperature'
  | 'concentration'
  | 'hardness'
  | 'alkalinity'
  | 'conductivity'
  | 'flow'
  | 'areaRate'
  | 'volumePerLevel'
  | 'energy'
  | 'duration'
  | 'wind'
  | 'percent'
  | 'angle'
  | 'pH'
  | 'number'

/** Units of one kind convert into each other. */
export type Kind =
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'temperature'
  | 'concentration'
  | 'hardness'
  | 'alkalinity'
  | 'conductivity'
  | 'flow'
  | 'areaRate'
  | 'volumePerLevel'
  | 'energy'
  | 'duration'
  | 'wind'
  | 'percent'
  | 'angle'
  | 'none'

/** `si = shown × toSI + offset`. */
export interface Unit {
  readonly id: string
  /** As printed after a number. */
  readonly label: string
  /** As printed in running text, where it differs. */
  readonly long?: string
  readonly kind: Kind
  readonly toSI: number
  readonly offset?: number
  /** Whose unit it is: tells a US gallon from an imperial one, and 18,640 from 18.640. */
  readonly world: 'us' | 'imperial' | 'metric' | 'any'
  /** Lower-case spellings that are understood. */
  readonly names: readonly string[]
  /** The unit of a bare number that follows: 7 ft 6 is 7 ft 6 in. */
  readonly rest?: string
}
