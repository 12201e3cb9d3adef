import { scaleDelta, sumDeltas } from './totals.ts'
import type { Delta } from './types.ts'

interface Formula {
  readonly massGPerMol: number
  readonly delta: Delta
}

const row = (massGPerMol: number, delta: Delta): Formula => ({ massGPerMol, delta })

/**
 * What one mol of a dissolved formula changes. `Xc` is chlorine of oxidation state +1, so NaXcO is sodium hypochlorite;
 * `Cya` is the ring C3N3O3, so H3Cya is cyanuric acid. Hydrate water is not part of a formula: a product's purity tells it.
 * Alkalinity always equals the charge of the strong ions the formula brings, plus what the weak ones already are at the
 * zero level (CO2, B(OH)3, H3Cya, HOCl).
 * Source: definitions; molar masses from IUPAC atomic weights as in the golden product table.
 */
const FORMULAS: Readonly<Record<string, Formula>> = Object.freeze({
  HCl: row(36.4609, { alkalinityEq: -1, chlorideMol: 1 }),
  H2SO4: row(98.0785, { alkalinityEq: -2, sulfateMol: 1 }),
  NaHSO4: row(120.06, { alkalinityEq: -1, sodiumMol: 1, sulfateMol: 1 }),
  Na2SO4: row(142.042, { sodiumMol: 2, sulfateMol: 1 }),
  KHSO4: row(136.168, { alkalinityEq: -1, potassiumMol: 1, sulfateMol: 1 }),
  K2SO4: row(174.257, { potassiumMol: 2, sulfateMol: 1 }),
  CO2: row(44.0095, { carbonMol: 1 }),
  NaHCO3: row(84.0066, { alkalinityEq: 1, carbonMol: 1, sodiumMol: 1 }),
  KHCO3: row(100.115, { alkalinityEq: 1, carbonMol: 1, potassiumMol: 1 }),
  Na2CO3: row(105.9884, { alkalinityEq: 2, carbonMol: 1, sodiumMol: 2 }),
  K2CO3: row(138.205, { alkalinityEq: 2, carbonMol: 1, potassiumMol: 2 }),
  CaCO3: row(100.0869, { alkalinityEq: 2, carbonMol: 1, calciumMol: 1 }),
  NaOH: row(39.9971, { alkalinityEq: 1, sodiumMol: 1 }),
  KOH: row(56.1056, { alkalinityEq: 1, potassiumMol: 1 }),
  LiOH: row(23.948, { alkalinityEq: 1, lithiumMol: 1 }),
  'Ca(OH)2': row(74.0927, { alkalinityEq: 2, calciumMol: 1 }),
  'Mg(OH)2': row(58.3197, { alkalinityEq: 2, magnesiumMol: 1 }),
  NaCl: row(58.4428, { sodiumMol: 1, chlorideMol: 1 }),
  KCl: row(74.551, { potassiumMol: 1, chlorideMol: 1 }),
  CaCl2: row(110.984, { calciumMol: 1, chlorideMol: 2 }),
  MgCl2: row(95.211, { magnesiumMol: 1, chlorideMol: 2 }),
  MgSO4: row(120.367, { magnesiumMol: 1, sulfateMol: 1 }),
  CaSO4: row(136.138, { calciumMol: 1, sulfateMol: 1 }),
  H3BO3: row(61.833, { boronMol: 1 }),
  Na2B4O7: row(201.22, { alkalinityEq: 2, boronMol: 4, sodiumMol: 2 }),
  H3Cya: row(129.074, { cyanurateMol: 1 }),
  NaH2Cya: row(151.056, { alkalinityEq: 1, cyanurateMol: 1, sodiumMol: 1 }),
  Xc3Cya: row(232.409, { chlorineMol: 3, cyanurateMol: 1 }),
  NaXc2Cya: row(219.946, { alkalinityEq: 1, chlorineMol: 2, cyanurateMol: 1, sodiumMol: 1 }),
  HXcO: row(52.4603, { chlorineMol: 1 }),
  NaXcO: row(74.4422, { alkalinityEq: 1, chlorineMol: 1, sodiumMol: 1 }),
  LiXcO: row(58.392, { alkalinityEq: 1, chlorineMol: 1, lithiumMol: 1 }),
  CaXc2O2: row(142.982, { alkalinityEq: 2, chlorineMol: 2, calciumMol: 1 }),
})

export const FORMULA_NAMES: readonly string[] = Object.freeze(Object.keys(FORMULAS))

/** Change of totals by one mol of the formula; undefined for one that isn't in the table. */
export function formulaDelta(formula: string): Delta | undefined {
  return Object.hasOwn(FORMULAS, formula) ? FORMULAS[formula]!.delta : undefined
}

/** Molar mass of the formula, without hydrate water [g/mol]. */
export function formulaMassGPerMol(formula: string): number | undefined {
  return Object.hasOwn(FORMULAS, formula) ? FORMULAS[formula]!.massGPerMol : undefined
}

/** Formulas times their amounts, summed: mmol in, mmol out. Undefined where a formula isn't in the table. */
export function stoichiometryDelta(stoichiometry: Readonly<Record<string, number>>): Delta | undefined {
  const parts: Delta[] = []
  for (const [formula, amount] of Object.entries(stoichiometry)) {
    const delta = formulaDelta(formula)
    if (!delta) return undefined
    parts.push(scaleDelta(delta, amount))
  }
  return sumDeltas(parts)
}
