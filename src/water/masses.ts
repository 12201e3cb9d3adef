/**
 * Molar masses [g/mol] of what readings are expressed as.
 * Source: IUPAC abridged standard atomic weights, as used by the golden tables.
 */
export const MOLAR_MASSES_G_PER_MOL = Object.freeze({
  calciumCarbonate: 100.0869,
  sodiumChloride: 58.4428,
  /** One HOCl counts as one Cl2. */
  chlorineAsCl2: 70.906,
  cyanuricAcid: 129.074,
  boron: 10.811,
  calcium: 40.078,
  magnesium: 24.305,
  sulfate: 96.06,
  chloride: 35.453,
  sodium: 22.98977,
  potassium: 39.0983,
  lithium: 6.94,
  carbonDioxide: 44.0095,
  bicarbonate: 61.0168,
  carbonate: 60.0089,
  boricAcid: 61.833,
  nitrogen: 14.007,
})

/** Milligrams of alkalinity as CaCO3 per equivalent: half the molar mass. */
export const MG_CACO3_PER_EQ = 50043.45

const MG_PER_G = 1000

/** mg/L → mol/kg, one litre taken as one kilogram of water. */
export function molPerKg(mgPerL: number, molarMassGPerMol: number): number {
  return mgPerL / MG_PER_G / molarMassGPerMol
}

/** mol/kg → mg/L. */
export function mgPerLOf(molPerKgWater: number, molarMassGPerMol: number): number {
  return molPerKgWater * MG_PER_G * molarMassGPerMol
}
