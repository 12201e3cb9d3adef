import { invariant, table } from '../base/index.ts'
import { UNITS } from './table.ts'
import type { Kind, Quantity, Unit, UnitSystem } from './types.ts'

/** One way of printing: used while the shown number stays below `below` of its unit. */
export interface Rung {
  readonly unit: string
  readonly below?: number
  /** Printed as whole units and the rest in this smaller one: 14 lb 6 oz. */
  readonly with?: string
  readonly decimals?: number
}

interface Display {
  /** The unit of a bare number and of chart axes. */
  readonly main: string
  readonly decimals: number
  /** Decimals fine enough for a field to be typed back. */
  readonly entry: number
  /** From this number on a field shows whole units: a decimal would be finer than anyone can say. */
  readonly entryWholeFrom?: number
  /** One press of an arrow key, in `stepUnit` (the main unit where absent). */
  readonly step: number
  readonly stepUnit?: string
  readonly ladder?: readonly Rung[]
}

export interface QuantityRow {
  readonly id: Quantity
  readonly kind: Kind
  readonly noun: string
  readonly example: { readonly [S in UnitSystem]: string }
  readonly signed: boolean
  readonly us: Display
  readonly metric: Display
  readonly imperial: Display
}

const same = (display: Display) => ({ us: display, metric: display, imperial: display })
const everywhere = (example: string) => ({ us: example, metric: example, imperial: example })
const feetAndInches: Display = {
  main: 'ft',
  decimals: 0,
  entry: 3,
  step: 1,
  stepUnit: 'in',
  ladder: [{ unit: 'ft', with: 'in' }],
}
const poundsAndOunces: Display = {
  main: 'lb',
  decimals: 1,
  entry: 2,
  step: 1,
  stepUnit: 'oz',
  ladder: [
    { unit: 'oz', below: 16, decimals: 0 },
    { unit: 'lb', with: 'oz', below: 100, decimals: 0 },
    { unit: 'lb', decimals: 0 },
  ],
}

/** What can be measured, and how each system shows it. */
// biome-ignore format: a table
export const QUANTITIES = table<QuantityRow>([
  {
    id: 'length', kind: 'length', noun: 'a length', signed: true,
    example: { us: '7 ft 6 in', metric: '2.3 m', imperial: '7 ft 6 in' },
    us: feetAndInches,
    metric: { main: 'm', decimals: 2, entry: 3, step: 1, stepUnit: 'cm' },
    imperial: feetAndInches,
  },
  {
    id: 'elevation', kind: 'length', noun: 'a height', signed: true,
    example: { us: '490 ft', metric: '150 m', imperial: '490 ft' },
    us: { main: 'ft', decimals: 0, entry: 1, step: 50 },
    metric: { main: 'm', decimals: 0, entry: 1, step: 10 },
    imperial: { main: 'ft', decimals: 0, entry: 1, step: 50 },
  },
  {
    id: 'area', kind: 'area', noun: 'an area', signed: false,
    example: { us: '610 ft²', metric: '57 m²', imperial: '610 ft²' },
    us: { main: 'ft2', decimals: 0, entry: 2, step: 1 },
    metric: { main: 'm2', decimals: 1, entry: 3, step: 0.1 },
    imperial: { main: 'ft2', decimals: 0, entry: 2, step: 1 },
  },
  {
    id: 'volume', kind: 'volume', noun: 'a volume', signed: false,
    example: { us: '18,600 gal', metric: '70.5 m³', imperial: '15,500 gal' },
    us: { main: 'gal', decimals: 0, entry: 1, entryWholeFrom: 1000, step: 100 },
    metric: { main: 'm3', decimals: 1, entry: 3, step: 0.5 },
    imperial: { main: 'impgal', decimals: 0, entry: 1, entryWholeFrom: 1000, step: 100 },
  },
  {
    id: 'mass', kind: 'mass', noun: 'a weight', signed: false,
    example: { us: '14 lb 6 oz', metric: '1.2 kg', imperial: '14 lb 6 oz' },
    us: poundsAndOunces,
    metric: {
      main: 'kg', decimals: 2, entry: 3, step: 0.05,
      ladder: [{ unit: 'g', below: 1000, decimals: 0 }, { unit: 'kg', below: 10, decimals: 2 }, { unit: 'kg', decimals: 1 }],
    },
    imperial: poundsAndOunces,
  },
  {
    id: 'liquid', kind: 'volume', noun: 'a volume of liquid', signed: false,
    example: { us: '41 fl oz', metric: '1.2 L', imperial: '41 fl oz' },
    us: {
      main: 'floz', decimals: 0, entry: 2, step: 1,
      ladder: [{ unit: 'floz', below: 128 }, { unit: 'gal', with: 'floz', below: 10 }, { unit: 'gal', decimals: 1 }],
    },
    metric: {
      main: 'mL', decimals: 0, entry: 1, step: 10,
      ladder: [{ unit: 'mL', below: 1000 }, { unit: 'L', below: 10, decimals: 2 }, { unit: 'L', decimals: 1 }],
    },
    imperial: {
      main: 'impfloz', decimals: 0, entry: 2, step: 1,
      ladder: [{ unit: 'impfloz', below: 160 }, { unit: 'impgal', with: 'impfloz', below: 10 }, { unit: 'impgal', decimals: 1 }],
    },
  },
  {
    id: 'temperature', kind: 'temperature', noun: 'a temperature', signed: true,
    example: { us: '78 °F', metric: '26 °C', imperial: '26 °C' },
    us: { main: 'F', decimals: 0, entry: 1, step: 1 },
    metric: { main: 'C', decimals: 0, entry: 1, step: 0.5 },
    imperial: { main: 'C', decimals: 0, entry: 1, step: 0.5 },
  },
  {
    id: 'concentration', kind: 'concentration', noun: 'a concentration', signed: false, example: everywhere('80 mg/L'),
    ...same({ main: 'mgL', decimals: 0, entry: 3, step: 1 }),
  },
  {
    id: 'hardness', kind: 'hardness', noun: 'a hardness', signed: false, example: everywhere('250 mg/L'),
    ...same({ main: 'hardnessMgL', decimals: 0, entry: 3, step: 1 }),
  },
  {
    id: 'alkalinity', kind: 'alkalinity', noun: 'an alkalinity', signed: true, example: everywhere('80 mg/L'),
    ...same({ main: 'alkalinityMgL', decimals: 0, entry: 3, step: 1 }),
  },
  {
    id: 'conductivity', kind: 'conductivity', noun: 'a conductivity', signed: false, example: everywhere('1200 µS/cm'),
    ...same({ main: 'uScm', decimals: 0, entry: 1, step: 10 }),
  },
  {
    id: 'flow', kind: 'flow', noun: 'a flow', signed: false,
    example: { us: '40 gal/min', metric: '9 m³/h', imperial: '33 gal/min' },
    us: { main: 'gpm', decimals: 0, entry: 2, step: 1 },
    metric: { main: 'm3h', decimals: 1, entry: 3, step: 0.5 },
    imperial: { main: 'impgpm', decimals: 0, entry: 2, step: 1 },
  },
  {
    id: 'areaRate', kind: 'areaRate', noun: 'a height of water a day', signed: true,
    example: { us: '0.2 in/d', metric: '5 mm/d', imperial: '0.2 in/d' },
    us: { main: 'ind', decimals: 2, entry: 3, step: 0.05 },
    metric: { main: 'mmd', decimals: 1, entry: 2, step: 0.5 },
    imperial: { main: 'ind', decimals: 2, entry: 3, step: 0.05 },
  },
  {
    id: 'volumePerLevel', kind: 'volumePerLevel', noun: 'a volume per level', signed: false,
    example: { us: '380 gal/in', metric: '0.57 m³/cm', imperial: '317 gal/in' },
    us: { main: 'galin', decimals: 0, entry: 1, step: 1 },
    metric: { main: 'm3cm', decimals: 2, entry: 4, step: 0.01 },
    imperial: { main: 'impgalin', decimals: 0, entry: 1, step: 1 },
  },
  {
    id: 'energy', kind: 'energy', noun: 'an energy', signed: true, example: everywhere('120 kWh'),
    ...same({ main: 'kWh', decimals: 0, entry: 2, step: 1 }),
  },
  {
    id: 'duration', kind: 'duration', noun: 'a time', signed: false, example: everywhere('8 h'),
    ...same({ main: 'h', decimals: 0, entry: 2, step: 0.5 }),
  },
  {
    id: 'wind', kind: 'wind', noun: 'a wind speed', signed: false,
    example: { us: '5 mph', metric: '2 m/s', imperial: '5 mph' },
    us: { main: 'mph', decimals: 0, entry: 1, step: 1 },
    metric: { main: 'ms', decimals: 1, entry: 2, step: 0.5 },
    imperial: { main: 'mph', decimals: 0, entry: 1, step: 1 },
  },
  {
    id: 'percent', kind: 'percent', noun: 'a percentage', signed: true, example: everywhere('10 %'),
    ...same({ main: 'percent', decimals: 0, entry: 2, step: 1 }),
  },
  {
    id: 'angle', kind: 'angle', noun: 'an angle', signed: true, example: everywhere('47°'),
    ...same({ main: 'degree', decimals: 0, entry: 4, step: 1 }),
  },
  {
    id: 'pH', kind: 'none', noun: 'a pH', signed: false, example: everywhere('7.5'),
    ...same({ main: 'one', decimals: 1, entry: 3, step: 0.1 }),
  },
  {
    id: 'number', kind: 'none', noun: 'a number', signed: true, example: everywhere('2'),
    ...same({ main: 'one', decimals: 0, entry: 6, step: 1 }),
  },
])

/** The row of a quantity; its name comes from the types, so it is always there. */
export function quantityRow(quantity: Quantity): QuantityRow {
  const row = QUANTITIES.get(quantity)
  invariant(row, `no quantity ${quantity}`)
  return row
}

/** The unit of that id. */
export function unitOf(id: string): Unit {
  const unit = UNITS.get(id)
  invariant(unit, `no unit ${id}`)
  return unit
}
