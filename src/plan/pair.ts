import {
  addTotals,
  type Constants,
  type Delta,
  equilibrateAtPH,
  scaleDelta,
  sumDeltas,
  type Totals,
} from '../water/index.ts'

const ROUNDS = 40
const SETTLED = 1e-13

/**
 * Amounts of two doses that bring the closed water to a pH and an alkalinity together; undefined where one of them would
 * be negative or the two do the same.
 * Equation: x1 a1 + x2 a2 = A* − A, x1 c1 + x2 c2 = C* − C, with C* the carbon that pH* needs at A*.
 * Symbols: a, c change of alkalinity and carbon by one unit of a dose; the doses' other ions shift C* through ionic
 *   strength, so the round is repeated with them in.
 * Valid for: any two doses that are independent in (A, C).
 * Source: conservation; the 2 × 2 is exact in each round.
 * Accuracy: totals to 1e-13 mol/kg.
 */
export function pairTo(
  totals: Totals,
  target: { readonly pH: number; readonly alkalinityEq: number },
  first: Delta,
  second: Delta,
  constants: Constants,
): readonly [number, number] | undefined {
  const a1 = first.alkalinityEq ?? 0
  const a2 = second.alkalinityEq ?? 0
  const c1 = first.carbonMol ?? 0
  const c2 = second.carbonMol ?? 0
  const determinant = a1 * c2 - a2 * c1
  const scale = Math.hypot(a1, c1) * Math.hypot(a2, c2)
  if (!(Math.abs(determinant) > 1e-9 * scale)) return undefined
  let x1 = 0
  let x2 = 0
  for (let round = 0; round < ROUNDS; round++) {
    const dosed = addTotals(
      totals,
      sumDeltas([scaleDelta(first, Math.max(0, x1)), scaleDelta(second, Math.max(0, x2))]),
    )
    const wanted = equilibrateAtPH({ ...dosed, alkalinityEq: target.alkalinityEq, carbonMol: 0 }, target.pH, constants)
    if (!wanted.ok) return undefined
    const dA = target.alkalinityEq - totals.alkalinityEq
    const dC = wanted.value.totals.carbonMol - totals.carbonMol
    const next1 = (dA * c2 - dC * a2) / determinant
    const next2 = (a1 * dC - c1 * dA) / determinant
    const moved = Math.abs(next1 - x1) * Math.hypot(a1, c1) + Math.abs(next2 - x2) * Math.hypot(a2, c2)
    x1 = next1
    x2 = next2
    if (moved < SETTLED) break
  }
  return x1 >= 0 && x2 >= 0 ? [x1, x2] : undefined
}

/** CO2 leaving the water [mol/kg]: alkalinity stays, pH rises. */
export const AERATION: Delta = Object.freeze({ carbonMol: -1 })
