import { LU, Matrix } from 'ml-matrix'
import type { Constants, LogK, ReactionId, Totals } from '../../../src/water/index.ts'

/**
 * The peer of the water bench: what a careful engineer would write first. Newton on the logarithms of nine master
 * species, full mole balances and an alkalinity balance, analytic Jacobian, LU by ml-matrix, Davies coefficients
 * from the last iterate. No nesting, no monotone bracket, nothing cached between waters but the constants.
 */

// Master species: H+, CO3--, B(OH)3, H2Cy-, HOCl, Ca++, Mg++, Na+, SO4--.
const CHARGES = [1, -2, 0, -1, 0, 2, 2, 1, -2] as const
type Row = readonly number[]

interface SpeciesRow {
  readonly nu: Row
  readonly logK: (k: (id: ReactionId) => number) => number
  /** Equivalents of alkalinity a mole counts. */
  readonly alkalinity: number
}

const row = (nu: Row, alkalinity: number, logK: SpeciesRow['logK']): SpeciesRow => ({ nu, alkalinity, logK })
const SPECIES: readonly SpeciesRow[] = [
  row([1, 0, 0, 0, 0, 0, 0, 0, 0], -1, () => 0), // H+
  row([0, 1, 0, 0, 0, 0, 0, 0, 0], 2, () => 0), // CO3
  row([0, 0, 1, 0, 0, 0, 0, 0, 0], 0, () => 0), // B(OH)3
  row([0, 0, 0, 1, 0, 0, 0, 0, 0], 1, () => 0), // H2Cy
  row([0, 0, 0, 0, 1, 0, 0, 0, 0], 0, () => 0), // HOCl
  row([0, 0, 0, 0, 0, 1, 0, 0, 0], 0, () => 0), // Ca
  row([0, 0, 0, 0, 0, 0, 1, 0, 0], 0, () => 0), // Mg
  row([0, 0, 0, 0, 0, 0, 0, 1, 0], 0, () => 0), // Na
  row([0, 0, 0, 0, 0, 0, 0, 0, 1], 0, () => 0), // SO4
  row([-1, 0, 0, 0, 0, 0, 0, 0, 0], 1, (k) => k('water')), // OH
  row([1, 1, 0, 0, 0, 0, 0, 0, 0], 1, (k) => k('bicarbonate')), // HCO3
  row([2, 1, 0, 0, 0, 0, 0, 0, 0], 0, (k) => k('carbonicAcid')), // CO2
  row([0, 1, 0, 0, 0, 1, 0, 0, 0], 2, (k) => k('caCo3')),
  row([1, 1, 0, 0, 0, 1, 0, 0, 0], 1, (k) => k('caHco3')),
  row([0, 0, 0, 0, 0, 1, 0, 0, 1], 0, (k) => k('caSo4')),
  row([-1, 0, 0, 0, 0, 1, 0, 0, 0], 1, (k) => k('caOh')),
  row([0, 1, 0, 0, 0, 0, 1, 0, 0], 2, (k) => k('mgCo3')),
  row([1, 1, 0, 0, 0, 0, 1, 0, 0], 1, (k) => k('mgHco3')),
  row([0, 0, 0, 0, 0, 0, 1, 0, 1], 0, (k) => k('mgSo4')),
  row([-1, 0, 0, 0, 0, 0, 1, 0, 0], 1, (k) => k('mgOh')),
  row([0, 0, 0, 0, 0, 0, 0, 1, 1], 0, (k) => k('naSo4')),
  row([1, 1, 0, 0, 0, 0, 0, 1, 0], 1, (k) => k('naHco3') + k('bicarbonate')),
  row([1, 0, 0, 0, 0, 0, 0, 0, 1], -1, (k) => k('hso4')),
  row([-1, 0, 1, 0, 0, 0, 0, 0, 0], 1, (k) => k('boricAcid')), // B(OH)4
  row([-1, 0, 0, 0, 1, 0, 0, 0, 0], 1, (k) => k('hypochlorousAcid')), // OCl
  row([1, 0, 0, 1, 0, 0, 0, 0, 0], 0, (k) => -k('k6')), // H3Cy
  row([-1, 0, 0, 1, 0, 0, 0, 0, 0], 2, (k) => k('k10')), // HCy
  row([-2, 0, 0, 1, 0, 0, 0, 0, 0], 3, (k) => k('k10') + k('k12')), // Cy
  row([0, 0, 0, 1, 1, 0, 0, 0, 0], 1, (k) => -k('k9a')), // HClCy
  row([1, 0, 0, 1, 1, 0, 0, 0, 0], 0, (k) => -k('k9a') - k('k4')), // H2ClCy
  row([-1, 0, 0, 1, 1, 0, 0, 0, 0], 2, (k) => -k('k9a') + k('k8')), // ClCy
  row([0, 0, 0, 1, 2, 0, 0, 0, 0], 1, (k) => -k('k9a') - k('k7a')), // Cl2Cy
  row([1, 0, 0, 1, 2, 0, 0, 0, 0], 0, (k) => -k('k9a') - k('k7a') - k('k2')), // HCl2Cy
  row([1, 0, 0, 1, 3, 0, 0, 0, 0], 0, (k) => -k('k9a') - k('k7a') - k('k2') - k('k1a')), // Cl3Cy
]
const CHARGE_OF = SPECIES.map(({ nu }) => nu.reduce((z, n, j) => z + n * (CHARGES[j] ?? 0), 0))

function logKAt(k: LogK, kelvin: number): number {
  if (k.kind === 'vantHoff')
    return k.logK25 + ((k.deltaHKJPerMol * 1000) / (8.314462618 * Math.LN10)) * (1 / 298.15 - 1 / kelvin)
  const [a1 = 0, a2 = 0, a3 = 0, a4 = 0, a5 = 0, a6 = 0] = k.a
  return a1 + a2 * kelvin + a3 / kelvin + a4 * Math.log10(kelvin) + a5 / kelvin ** 2 + a6 * kelvin ** 2
}

/** pH of a closed water, or NaN where Newton did not converge in 100 steps. */
export function peerPH(totals: Totals, constants: Constants): number {
  const kelvin = totals.temperatureC + 273.15
  const k = (id: ReactionId) => logKAt(constants.reactions[id].logK, kelvin)
  const logK = SPECIES.map((species) => species.logK(k))
  const wanted = [
    totals.alkalinityEq,
    totals.carbonMol,
    totals.boronMol,
    totals.cyanurateMol,
    totals.chlorineMol,
    totals.calciumMol,
    totals.magnesiumMol,
    totals.sodiumMol,
    totals.sulfateMol,
  ]
  const floor = 1e-30
  const x = [-7.5, ...wanted.slice(1).map((total) => Math.log10(Math.max(total, floor)))]
  x[1] = Math.log10(Math.max(totals.carbonMol * 1e-3, floor))
  x[4] = Math.log10(Math.max(totals.chlorineMol * 1e-2, floor))
  let ionic = 0.01
  for (let step = 0; step < 100; step++) {
    const root = Math.sqrt(ionic)
    const davies = -0.51 * (root / (1 + root) - 0.3 * ionic)
    const molality = SPECIES.map(({ nu }, i) => {
      let log = (logK[i] ?? 0) - davies * (CHARGE_OF[i] ?? 0) ** 2
      for (let j = 0; j < 9; j++) log += (nu[j] ?? 0) * ((x[j] ?? 0) + davies * (CHARGES[j] ?? 0) ** 2)
      return 10 ** log
    })
    const residual = wanted.map((total) => -total)
    const jacobian = Matrix.zeros(9, 9)
    SPECIES.forEach(({ nu, alkalinity }, i) => {
      const c = molality[i] ?? 0
      for (let b = 0; b < 9; b++) {
        const weight = b === 0 ? alkalinity : (nu[b] ?? 0)
        if (weight === 0) continue
        residual[b] = (residual[b] ?? 0) + weight * c
        for (let j = 0; j < 9; j++) jacobian.set(b, j, jacobian.get(b, j) + weight * c * (nu[j] ?? 0) * Math.LN10)
      }
    })
    let worst = 0
    for (let b = 0; b < 9; b++)
      worst = Math.max(worst, Math.abs(residual[b] ?? 0) / Math.max(Math.abs(wanted[b] ?? 0), 1e-9))
    for (let b = 1; b < 9; b++) {
      if ((wanted[b] ?? 0) > 0) continue
      for (let j = 0; j < 9; j++) jacobian.set(b, j, b === j ? 1 : 0)
      residual[b] = 0
    }
    if (worst < 1e-10 && step > 2) return -(x[0] ?? 0) - davies
    const dx = new LU(jacobian).solve(Matrix.columnVector(residual.map((r) => -r)))
    for (let j = 0; j < 9; j++) x[j] = (x[j] ?? 0) + Math.max(-1, Math.min(1, dx.get(j, 0)))
    const strong = totals.chlorideMol + totals.potassiumMol
    ionic = 0.5 * (strong + molality.reduce((sum, c, i) => sum + c * (CHARGE_OF[i] ?? 0) ** 2, 0))
  }
  return Number.NaN
}
