import type { Workspace } from './workspace.ts'

/**
 * Writes activity coefficients and conditional constants into the workspace for its ionic strength [-].
 * Equation: WATEQ, log10 γ = −A z² √I / (1 + B a √I) + b I, for species with data; Davies,
 *   log10 γ = −A z² (√I / (1 + √I) − 0.3 I), for other ions; log10 γ = 0.1 I for other neutral species.
 *   Water: activity 1 − 0.017 Σ m, in every reaction that takes up or gives off H2O.
 * Symbols: I ionic strength [mol/kg]; A, B Debye–Hückel; a ion size [Å]; b [kg/mol].
 * Valid for: I up to about 0.5; beyond it the extrapolation is smooth but unproven.
 * Source: Truesdell & Jones 1974 with the a, b of phreeqc.dat (seen); water after Garrels & Christ 1965; Davies 1962, Ion Association (from memory).
 * Accuracy: 0.006 in log10 γ of HCO3-, 0.025 of divalent ions against the golden tables.
 */
export function updateGammas(w: Workspace): void {
  const { debyeA, debyeB, k } = w.conditions
  const ionic = w.ionic
  const root = Math.sqrt(ionic)
  const davies = -debyeA * (root / (1 + root) - 0.3 * ionic)
  const size = debyeB * root
  const limiting = -Math.LN10 * debyeA * root
  const salting = Math.LN10 * ionic
  const water = 1 - 0.017 * w.solutes
  const g0 = Math.exp(0.1 * salting)
  const g1 = Math.exp(Math.LN10 * davies)
  const g1Squared = g1 * g1
  const g2 = g1Squared * g1Squared
  const g3 = g2 * g2 * g1
  const gH = Math.exp(limiting / (1 + 9 * size))
  const gOH = Math.exp(limiting / (1 + 3.5 * size))
  const gHCO3 = Math.exp(limiting / (1 + 5.4 * size))
  const gHCO3Squared = gHCO3 * gHCO3
  const gCO3 = gHCO3Squared * gHCO3Squared
  const gCO2 = Math.exp(0.066 * salting)
  const gCa = Math.exp((4 * limiting) / (1 + 5 * size) + 0.165 * salting)
  const gMg = Math.exp((4 * limiting) / (1 + 5.5 * size) + 0.2 * salting)
  const gNa = Math.exp(limiting / (1 + 4.08 * size) + 0.082 * salting)
  const gK = Math.exp(limiting / (1 + 3.5 * size) + 0.015 * salting)
  const gSO4 = Math.exp((4 * limiting) / (1 + 5 * size) - 0.04 * salting)
  const gNaSO4 = Math.exp(limiting / (1 + 3.5 * size) + 0.1072 * salting)
  const gCaHCO3 = Math.exp(limiting / (1 + 6 * size))
  const gMgHCO3 = Math.exp(limiting / (1 + 4 * size))
  const gNeutral2 = g0 * g0 // b = 0.2: MgSO4, NaHCO3
  const gCaSO4 = Math.exp(0.0445 * salting)

  w.gammaIonic = ionic
  w.g0 = g0
  w.g1 = g1
  w.g2 = g2
  w.g3 = g3
  w.gH = gH
  w.gCO2 = gCO2
  w.gHCO3 = gHCO3
  w.gCO3 = gCO3
  w.gCa = gCa
  w.gSO4 = gSO4

  w.kw = (k.water * water) / gOH
  w.kc1 = ((k.bicarbonate / k.carbonicAcid) * gCO2 * water) / gHCO3
  w.kc2 = gHCO3 / (k.bicarbonate * gCO3)
  w.kCaHco3 = ((k.caHco3 / k.bicarbonate) * gCa * gHCO3) / gCaHCO3
  w.kCaCo3 = (k.caCo3 * gCa * gCO3) / g0
  w.kCaSo4 = (k.caSo4 * gCa * gSO4) / gCaSO4
  w.kCaOh = (k.caOh * gCa * water) / g1
  w.kMgHco3 = ((k.mgHco3 / k.bicarbonate) * gMg * gHCO3) / gMgHCO3
  w.kMgCo3 = (k.mgCo3 * gMg * gCO3) / g0
  w.kMgSo4 = (k.mgSo4 * gMg * gSO4) / gNeutral2
  w.kMgOh = (k.mgOh * gMg * water) / g1
  w.kNaHco3 = (k.naHco3 * gNa * gHCO3) / gNeutral2
  w.kNaSo4 = (k.naSo4 * gNa * gSO4) / gNaSO4
  w.kKSo4 = (k.kSo4 * gK * gSO4) / g1
  w.kHso4 = (k.hso4 * gSO4) / g1
  w.kB = (k.boricAcid * g0) / g1
  w.kOcl = (k.hypochlorousAcid * g0) / g1
  w.k6 = (k.k6 * g0) / g1
  w.k10 = (k.k10 * g1) / g2
  w.k12 = (k.k12 * g2) / g3
  w.k4 = (k.k4 * g0) / g1
  w.k8 = (k.k8 * g1) / g2
  w.k2 = (k.k2 * g0) / g1
  w.h9 = g0 / (k.k9a * water)
  w.h7 = g0 / (k.k7a * water)
  w.h1 = g0 / (k.k1a * water)
}
