import { deltaPerGram, type Product } from '../chemicals/index.ts'
import { type Delta, MOLAR_MASSES_G_PER_MOL as MASS, MG_CACO3_PER_EQ, type TotalKey } from '../water/index.ts'
import type { TargetKey } from './types.ts'

export type LinearKey = Exclude<TargetKey, 'pH'>

/** The conserved total behind a reading, and the mg per mol it is read in. */
export const TOTAL_OF: { readonly [K in LinearKey]: { readonly total: TotalKey; readonly mgPerMol: number } } = {
  ta_mg_per_L_as_CaCO3: { total: 'alkalinityEq', mgPerMol: MG_CACO3_PER_EQ },
  ch_mg_per_L_as_CaCO3: { total: 'calciumMol', mgPerMol: 1000 * MASS.calciumCarbonate },
  cya_mg_per_L: { total: 'cyanurateMol', mgPerMol: 1000 * MASS.cyanuricAcid },
  borate_mg_per_L_as_B: { total: 'boronMol', mgPerMol: 1000 * MASS.boron },
  fc_mg_per_L_as_Cl2: { total: 'chlorineMol', mgPerMol: 1000 * MASS.chlorineAsCl2 },
  salt_mg_per_L_as_NaCl: { total: 'chlorideMol', mgPerMol: 1000 * MASS.sodiumChloride },
}

/** Change of a reading by a change of totals [mg/L]. */
export function readingChange(delta: Delta, key: LinearKey): number {
  const { total, mgPerMol } = TOTAL_OF[key]
  return (delta[total] ?? 0) * mgPerMol
}

/** What dries to salt of a change: sodium, chloride and sulfate together [mg/kg]. */
export function saltChange(delta: Delta): number {
  return (
    1000 *
    (MASS.sodium * (delta.sodiumMol ?? 0) +
      MASS.chloride * (delta.chlorideMol ?? 0) +
      MASS.sulfate * (delta.sulfateMol ?? 0))
  )
}

/** mg/L of a reading that one gram per cubic metre of a product brings. */
export function effectPerGPerM3(product: Product, key: LinearKey): number {
  return readingChange(deltaPerGram(product), key) / 1000
}
