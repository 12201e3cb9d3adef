import { quantityRow, unitOf } from './quantities.ts'
import type { Quantity, Unit, UnitSystem } from './types.ts'

/** The shown number of a canonical one. */
export function inUnit(unit: Unit, si: number): number {
  return (si - (unit.offset ?? 0)) / unit.toSI
}

/** The canonical number of a shown one. */
export function outOfUnit(unit: Unit, shown: number): number {
  return shown * unit.toSI + (unit.offset ?? 0)
}

/** The number alone in the main display unit, for axes and charts. */
export function toDisplay(quantity: Quantity, si: number, system: UnitSystem): number {
  return inUnit(unitOf(quantityRow(quantity)[system].main), si)
}

/** The canonical number of one given in the main display unit. */
export function fromDisplay(quantity: Quantity, shown: number, system: UnitSystem): number {
  return outOfUnit(unitOf(quantityRow(quantity)[system].main), shown)
}

/** The label of the main display unit; empty where there is none. */
export function unitLabel(quantity: Quantity, system: UnitSystem): string {
  return unitOf(quantityRow(quantity)[system].main).label
}

/** What one press of an arrow key changes, in the canonical unit. */
export function displayStep(quantity: Quantity, system: UnitSystem): number {
  const display = quantityRow(quantity)[system]
  return display.step * unitOf(display.stepUnit ?? display.main).toSI
}

/** The nearest whole inch or centimetre [m]. */
export function snapLength(si: number, system: UnitSystem): number {
  if (system === 'metric') return Math.round(si * 100) / 100 || 0
  const inch = unitOf('in').toSI
  return Math.round(si / inch) * inch || 0
}
