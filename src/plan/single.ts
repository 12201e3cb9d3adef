import { bracketedRoot } from '../base/index.ts'
import { addTotals, type Constants, type Delta, equilibrate, scaleDelta, type Totals } from '../water/index.ts'

// beyond this the water would be a brine: 0.5 g × 2^17 is 65 kg/m³
const MOST_DOUBLINGS = 17
const SMALLEST_G_PER_M3 = 0.5

/**
 * Amount of a dose that brings the closed water to a pH [g/m³]; undefined where no amount does.
 * Equation: pH(totals + x δ) = pH*, x ≥ 0.
 * Symbols: δ change of totals by 1 g/m³ [mol/kg].
 * Valid for: doses along which pH moves one way (every acid, base and CO2 of the table).
 * Source: the water kernel; root by Brent.
 * Accuracy: 1e-9 g/m³.
 */
export function doseToPH(totals: Totals, delta: Delta, pH: number, constants: Constants): number | undefined {
  const distance = (x: number): number => {
    const solved = equilibrate(addTotals(totals, scaleDelta(delta, x)), constants)
    return solved.ok ? solved.value.pH - pH : Number.NaN
  }
  const atZero = distance(0)
  if (!Number.isFinite(atZero)) return undefined
  if (atZero === 0) return 0
  let lo = 0
  let hi = SMALLEST_G_PER_M3
  for (let i = 0; i < MOST_DOUBLINGS; i++) {
    const there = distance(hi)
    if (!Number.isFinite(there)) return undefined
    if (there === 0 || there > 0 !== atZero > 0) {
      const root = bracketedRoot(distance, lo, hi, 1e-9)
      return root.ok ? root.value.x : undefined
    }
    lo = hi
    hi *= 2
  }
  return undefined
}
