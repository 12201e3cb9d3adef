import type { Conditions } from './conditions.ts'
import type { Totals } from './types.ts'

/**
 * The numbers of one solve, all in one object that the sweeps write into, so nothing is allocated on the way.
 * Concentrations [mol/kg]; h is the activity of H+; constants with a small k are conditional: on concentrations,
 * with the activity coefficients folded in (those that carry H+ stay on its activity).
 */
export interface Workspace {
  readonly conditions: Conditions
  alkalinity: number
  carbon: number
  readonly calcium: number
  readonly magnesium: number
  readonly sodium: number
  readonly potassium: number
  readonly lithium: number
  chloride: number
  readonly sulfate: number
  readonly boron: number
  readonly cyanurate: number
  readonly chlorine: number

  pH: number
  h: number
  ionic: number
  /** Free bicarbonate, calcium, magnesium, sodium, potassium, sulfate, HOCl, H2Cy-. */
  u: number
  ca: number
  mg: number
  na: number
  k: number
  so4: number
  x: number
  y: number
  /** CO2/HCO3 and CO3/HCO3. */
  ra: number
  rb: number
  /** Pairs per free bicarbonate: with HCO3, and CO3 with its pairs. */
  e1: number
  e2: number
  /** Alkalinity of borate, of all cyanurate species, of OCl, of OH with pairs less H and HSO4. */
  borate: number
  cyAlk: number
  oclAlk: number
  hydroxide: number
  /** d alkalinity / d ln(1/h) of chlorine and cyanurate, and of all parts other than carbonate, at their own totals. */
  slopeChlorine: number
  slopeOther: number

  // What the steps of a sweep hand on: a number returned by a function that isn't inlined would be put on the heap.
  /** Ionic strength of the newest species [mol/kg]. */
  ionicNow: number
  /** Largest relative change of a free metal or sulfate in the last pass. */
  moved: number
  /** Alkalinity of the species less what is held [eq/kg], and its slope, d / d ln(1/h). */
  excess: number
  slope: number

  /** Sum of all dissolved particles [mol/kg]. */
  solutes: number
  // activity coefficients, at `gammaIonic`
  gammaIonic: number
  g0: number
  g1: number
  g2: number
  g3: number
  gH: number
  gCO2: number
  gHCO3: number
  gCO3: number
  gCa: number
  gSO4: number

  kw: number
  kc1: number
  kc2: number
  kCaHco3: number
  kCaCo3: number
  kCaSo4: number
  kCaOh: number
  kMgHco3: number
  kMgCo3: number
  kMgSo4: number
  kMgOh: number
  kNaHco3: number
  kNaSo4: number
  kKSo4: number
  kHso4: number
  kB: number
  kOcl: number
  k6: number
  k10: number
  k12: number
  k4: number
  k8: number
  k2: number
  /** Chlorine taken up per HOCl: HClCy/H2Cy, Cl2Cy/HClCy, Cl3Cy/HCl2Cy. */
  h9: number
  h7: number
  h1: number
}

/** A solve's start: everything free, pH and ionic strength guessed. */
export function workspaceOf(totals: Totals, conditions: Conditions): Workspace {
  const lithium = totals.lithiumMol ?? 0
  const singly = totals.sodiumMol + totals.potassiumMol + lithium + totals.chlorideMol
  const doubly = totals.calciumMol + totals.magnesiumMol + totals.sulfateMol
  return {
    conditions,
    alkalinity: totals.alkalinityEq,
    carbon: present(totals.carbonMol),
    calcium: present(totals.calciumMol),
    magnesium: present(totals.magnesiumMol),
    sodium: present(totals.sodiumMol),
    potassium: present(totals.potassiumMol),
    lithium: present(lithium),
    chloride: present(totals.chlorideMol),
    sulfate: present(totals.sulfateMol),
    boron: present(totals.boronMol),
    cyanurate: present(totals.cyanurateMol),
    chlorine: present(totals.chlorineMol),
    pH: 7.5,
    h: 10 ** -7.5,
    ionic: Math.max(0, 0.5 * (singly + Math.abs(totals.alkalinityEq)) + 2 * doubly),
    u: Math.max(0, Math.min(totals.carbonMol, totals.alkalinityEq)),
    ca: present(totals.calciumMol),
    mg: present(totals.magnesiumMol),
    na: present(totals.sodiumMol),
    k: present(totals.potassiumMol),
    so4: present(totals.sulfateMol),
    x: -1,
    y: 0,
    ra: 0,
    rb: 0,
    e1: 0,
    e2: 0,
    borate: 0,
    cyAlk: 0,
    oclAlk: 0,
    hydroxide: 0,
    slopeChlorine: 0,
    slopeOther: 0,
    ionicNow: 0,
    moved: 0,
    excess: 0,
    slope: 0,
    solutes: singly + doubly + totals.boronMol + totals.cyanurateMol,
    gammaIonic: -1,
    g0: 1,
    g1: 1,
    g2: 1,
    g3: 1,
    gH: 1,
    gCO2: 1,
    gHCO3: 1,
    gCO3: 1,
    gCa: 1,
    gSO4: 1,
    kw: 0,
    kc1: 0,
    kc2: 0,
    kCaHco3: 0,
    kCaCo3: 0,
    kCaSo4: 0,
    kCaOh: 0,
    kMgHco3: 0,
    kMgCo3: 0,
    kMgSo4: 0,
    kMgOh: 0,
    kNaHco3: 0,
    kNaSo4: 0,
    kKSo4: 0,
    kHso4: 0,
    kB: 0,
    kOcl: 0,
    k6: 0,
    k10: 0,
    k12: 0,
    k4: 0,
    k8: 0,
    k2: 0,
    h9: 0,
    h7: 0,
    h1: 0,
  }
}

/** Below this a total counts as none: about a tenth of a nanogram in a litre [mol/kg]. */
const TRACE = 1e-15

/** Takes traces, and the rounding dust of a subtraction, for zero; a truly negative total was refused before. */
function present(amount: number): number {
  return amount > TRACE ? amount : 0
}
