import {
  formatForEntry,
  formatQuantity,
  fromDisplay,
  type Quantity,
  toDisplay,
  type UnitSystem,
} from '../../units/index.ts'

/** No length of a pool is longer [m]; the same for all fields, typed or taken from a form. */
export const LONGEST_M = 1000

/** What a coordinate may become: as far from the origin as a pool is long, or from where it is. */
export const coordinateRange = (nowM: number): { readonly min: number; readonly max: number } => ({
  min: Math.min(0, nowM) - LONGEST_M,
  max: Math.max(0, nowM) + LONGEST_M,
})

/** Figures that a limit is told in, where it isn't round in the reader's units. */
const FIGURES = 3
const INCHES = 12
/** From here on a limit in feet needs no inches [ft]. */
const WHOLE_FEET = 20
/** Of a converted number's last digits. */
const SLACK = 1e-9
/** A doubt about a length for which it is told in whole feet [m]. */
const ABOUT_A_FOOT_M = 0.2

/** A multiple of a step that doesn't pass a limit. */
function within(value: number, step: number, end: 'low' | 'high'): number {
  const steps = value / step
  return step * (end === 'low' ? Math.ceil(steps - SLACK) : Math.floor(steps + SLACK))
}

/** A limit as it is told: rounded to the inside where it isn't round in the reader's units, so that what is told is allowed. */
export function limitWords(quantity: Quantity, si: number, units: UnitSystem, end: 'low' | 'high'): string {
  const shown = toDisplay(quantity, si, units)
  if (shown === si || shown === 0 || !Number.isFinite(shown)) return formatForEntry(quantity, si, units)
  const isInFeet = quantity === 'length' && units !== 'metric'
  if (isInFeet && Math.abs(shown) < WHOLE_FEET) {
    const inches = within(shown * INCHES, Math.abs(shown) < 1 ? 0.5 : 1, end)
    return formatForEntry(quantity, fromDisplay(quantity, inches / INCHES, units), units)
  }
  const step = 10 ** (Math.floor(Math.log10(Math.abs(shown))) - FIGURES + 1)
  const round = fromDisplay(quantity, within(shown, isInFeet ? Math.max(1, step) : step, end), units)
  return isInFeet
    ? formatQuantity(quantity, round, units, { sigma: ABOUT_A_FOOT_M })
    : formatForEntry(quantity, round, units)
}
