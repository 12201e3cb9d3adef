import type { Workspace } from './workspace.ts'

/** Carbonate, Ca, Mg, Na, K, SO4. */
const SIZE = 6

/**
 * Buffer capacity of the closed water, dA/dpH at constant ionic strength, ion pairs following [eq/kg per pH].
 * Equation: ln 10 × (J_aa − J_ac J_cc⁻¹ J_ca), the Schur complement in J = Σ m ν νᵀ.
 * Symbols: m species [mol/kg]; ν how often a species holds each conserved total, a being its alkalinity number.
 * Valid for: any solved water. J is a Gram matrix, so the result is positive: pH rises strictly with alkalinity.
 * Source: linear response of a mass-action equilibrium, Morel & Hering 1993 ch. 2 gives the two-component case (from
 *   memory); it equals the numeric derivative (test).
 * Accuracy: rounding. Real water's capacity differs by 1–2 % because ionic strength follows the acid.
 */
export function bufferCapacityOf(w: Workspace): number {
  const co2 = w.ra * w.u
  const co3 = w.rb * w.u
  const caHco3 = w.kCaHco3 * w.ca * w.u
  const mgHco3 = w.kMgHco3 * w.mg * w.u
  const naHco3 = w.kNaHco3 * w.na * w.u
  const caCo3 = w.kCaCo3 * w.ca * co3
  const mgCo3 = w.kMgCo3 * w.mg * co3
  const caOh = (w.kCaOh / w.h) * w.ca
  const mgOh = (w.kMgOh / w.h) * w.mg
  const hso4 = w.kHso4 * w.h * w.so4
  const caSo4 = w.kCaSo4 * w.ca * w.so4
  const mgSo4 = w.kMgSo4 * w.mg * w.so4
  const naSo4 = w.kNaSo4 * w.na * w.so4
  const kSo4 = w.kKSo4 * w.k * w.so4

  const ones = w.u + caHco3 + mgHco3 + naHco3
  const twos = co3 + caCo3 + mgCo3
  // `slopeOther` holds everything that is its own total or none: B, Cl, Cy, H, OH, and OH pairs and HSO4 once
  const jaa = w.slopeOther + ones + 4 * twos
  const jac = [ones + 2 * twos, caHco3 + 2 * caCo3 + caOh, mgHco3 + 2 * mgCo3 + mgOh, naHco3, 0, -hso4]
  const c = co2 + ones + twos
  const ca = caHco3 + caCo3
  const mg = mgHco3 + mgCo3
  const rows = [
    [c, ca, mg, naHco3, 0, 0],
    [ca, w.ca + ca + caOh + caSo4, 0, 0, 0, caSo4],
    [mg, 0, w.mg + mg + mgOh + mgSo4, 0, 0, mgSo4],
    [naHco3, 0, 0, w.na + naHco3 + naSo4, 0, naSo4],
    [0, 0, 0, 0, w.k + kSo4, kSo4],
    [0, caSo4, mgSo4, naSo4, kSo4, w.so4 + hso4 + caSo4 + mgSo4 + naSo4 + kSo4],
  ]
  return Math.LN10 * (jaa - quadraticForm(rows, jac))
}

/** vᵀ J⁻¹ v by Cholesky; a component that isn't in the water (a zero diagonal) is left out. */
function quadraticForm(j: number[][], v: readonly number[]): number {
  let sum = 0
  const z: number[] = []
  for (let row = 0; row < SIZE; row++) {
    const line = j[row]!
    for (let col = 0; col < row; col++) {
      let value = line[col]!
      for (let k = 0; k < col; k++) value -= line[k]! * j[col]![k]!
      line[col] = j[col]![col]! === 0 ? 0 : value / j[col]![col]!
    }
    let pivot = line[row]!
    let right = v[row]!
    for (let k = 0; k < row; k++) {
      pivot -= line[k]! * line[k]!
      right -= line[k]! * z[k]!
    }
    line[row] = pivot > 0 ? Math.sqrt(pivot) : 0
    z[row] = pivot > 0 ? right / line[row]! : 0
    sum += z[row]! * z[row]!
  }
  return sum
}
