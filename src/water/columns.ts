import { ok, type Result } from '../base/index.ts'
import { withWahman } from './constants.ts'
import { alkalinityAtPH, equilibrateAtPH } from './equilibrate.ts'
import { MOLAR_MASSES_G_PER_MOL as MASS, MG_CACO3_PER_EQ, mgPerLOf } from './masses.ts'
import { readingOf } from './reading.ts'
import type { Constants, Equilibrium, Totals } from './types.ts'

/** Named numbers of a water; null where a water with those readings does not exist. */
export type Columns = Readonly<Record<string, number | null>>

const MILLI = 1e3
const MICRO = 1e6

/** Every column of a full speciation; the last ones are titration to pH 4.5 and the Wahman constants. */
export function speciationColumns(totals: Totals, equilibrium: Equilibrium, constants: Constants): Result<Columns> {
  const s = equilibrium.species
  const titrated = alkalinityAtPH(totals, 4.5, constants)
  if (!titrated.ok) return titrated
  const wahman = equilibrateAtPH(totals, equilibrium.pH, withWahman(constants))
  const other = wahman.ok ? wahman.value : null
  return ok({
    dic_mmol_per_kgw: totals.carbonMol * MILLI,
    co2aq_mmol_per_kgw: s.co2 * MILLI,
    hco3_free_mmol_per_kgw: s.hco3 * MILLI,
    co3_free_umol_per_kgw: s.co3 * MICRO,
    cahco3_umol_per_kgw: s.caHco3 * MICRO,
    caco3aq_umol_per_kgw: s.caCo3 * MICRO,
    mghco3_umol_per_kgw: s.mgHco3 * MICRO,
    mgco3aq_umol_per_kgw: s.mgCo3 * MICRO,
    nahco3aq_umol_per_kgw: s.naHco3 * MICRO,
    hco3_total_mmol_per_kgw: (s.hco3 + s.caHco3 + s.mgHco3 + s.naHco3) * MILLI,
    co3_total_umol_per_kgw: (s.co3 + s.caCo3 + s.mgCo3) * MICRO,
    ca_free_mmol_per_kgw: s.ca * MILLI,
    mg_free_mmol_per_kgw: s.mg * MILLI,
    caso4aq_umol_per_kgw: s.caSo4 * MICRO,
    mgso4aq_umol_per_kgw: s.mgSo4 * MICRO,
    naso4_umol_per_kgw: s.naSo4 * MICRO,
    boh3_mmol_per_kgw: s.boh3 * MILLI,
    boh4_mmol_per_kgw: s.boh4 * MILLI,
    h3cy_umol_per_kgw: s.h3cy * MICRO,
    h2cy_umol_per_kgw: s.h2cy * MICRO,
    hcy2_umol_per_kgw: s.hcy2 * MICRO,
    h2clcy_umol_per_kgw: s.h2clcy * MICRO,
    hclcy_umol_per_kgw: s.hclcy * MICRO,
    clcy2_umol_per_kgw: s.clcy2 * MICRO,
    hcl2cy_umol_per_kgw: s.hcl2cy * MICRO,
    cl2cy_umol_per_kgw: s.cl2cy * MICRO,
    cl3cy_umol_per_kgw: s.cl3cy * MICRO,
    hocl_mg_per_L_as_Cl2: equilibrium.activeChlorineMgPerL,
    ocl_mg_per_L_as_Cl2: equilibrium.hypochloriteMgPerL,
    chlorinated_cyanurates_mg_per_L_as_Cl2: equilibrium.boundChlorineMgPerL,
    alk_carbonate_mg_per_L_as_CaCO3: equilibrium.alkalinity.carbonate,
    alk_borate_mg_per_L_as_CaCO3: equilibrium.alkalinity.borate,
    alk_cyanurate_mg_per_L_as_CaCO3: equilibrium.alkalinity.cyanurate + equilibrium.alkalinity.chlorinatedCyanurate,
    alk_ocl_mg_per_L_as_CaCO3: equilibrium.alkalinity.hypochlorite,
    ionic_strength_mol_per_kgw: equilibrium.ionicStrength,
    calcite_SI: finiteOrNull(equilibrium.calciteSI),
    log10_pCO2_atm: finiteOrNull(equilibrium.log10PCO2Atm),
    specific_conductance_uS_per_cm_at_T: equilibrium.conductanceMicroSPerCm,
    log10_gamma_HCO3: equilibrium.logGammas.hco3,
    log10_gamma_CO3: equilibrium.logGammas.co3,
    log10_gamma_Ca: equilibrium.logGammas.ca,
    buffer_capacity_mmol_eq_per_kgw_per_pH: equilibrium.bufferCapacity * MILLI,
    ta_titrated_to_pH4p5_closed_mg_per_L_as_CaCO3: (totals.alkalinityEq - titrated.value) * MG_CACO3_PER_EQ,
    alt_W19_hocl_mg_per_L_as_Cl2: other?.equilibrium.activeChlorineMgPerL ?? null,
    alt_W19_ocl_mg_per_L_as_Cl2: other?.equilibrium.hypochloriteMgPerL ?? null,
    alt_W19_dic_mmol_per_kgw: other && other.totals.carbonMol * MILLI,
    alt_W19_calcite_SI: other && finiteOrNull(other.equilibrium.calciteSI),
  })
}

/** The columns of a water after a dose, a blend, evaporation, air or heat. */
export function doseColumns(totals: Totals, equilibrium: Equilibrium): Columns {
  const reading = readingOf(totals, equilibrium)
  return {
    pH: equilibrium.pH,
    ta_mg_per_L_as_CaCO3: reading.ta_mg_per_L_as_CaCO3,
    ch_mg_per_L_as_CaCO3: reading.ch_mg_per_L_as_CaCO3,
    mg_hardness_mg_per_L_as_CaCO3: reading.mg_hardness_mg_per_L_as_CaCO3,
    cya_mg_per_L: reading.cya_mg_per_L,
    borate_mg_per_L_as_B: reading.borate_mg_per_L_as_B,
    fc_mg_per_L_as_Cl2: reading.fc_mg_per_L_as_Cl2,
    chloride_mg_per_L: mgPerLOf(totals.chlorideMol, MASS.chloride),
    sulfate_mg_per_L: reading.sulfate_mg_per_L,
    sodium_mg_per_L: mgPerLOf(totals.sodiumMol, MASS.sodium),
    magnesium_mg_per_L: mgPerLOf(totals.magnesiumMol, MASS.magnesium),
    potassium_mg_per_L: mgPerLOf(totals.potassiumMol, MASS.potassium),
    dic_mmol_per_kgw: totals.carbonMol * MILLI,
    hocl_mg_per_L_as_Cl2: equilibrium.activeChlorineMgPerL,
    ocl_mg_per_L_as_Cl2: equilibrium.hypochloriteMgPerL,
    co2aq_mmol_per_kgw: equilibrium.species.co2 * MILLI,
    ionic_strength_mol_per_kgw: equilibrium.ionicStrength,
    calcite_SI: finiteOrNull(equilibrium.calciteSI),
    log10_pCO2_atm: finiteOrNull(equilibrium.log10PCO2Atm),
  }
}

/** The short columns of a water in balance with air. */
export function openColumns(totals: Totals, equilibrium: Equilibrium): Columns {
  return {
    pH: equilibrium.pH,
    ta_mg_per_L_as_CaCO3: totals.alkalinityEq * MG_CACO3_PER_EQ,
    dic_mmol_per_kgw: totals.carbonMol * MILLI,
    calcite_SI: finiteOrNull(equilibrium.calciteSI),
    hocl_mg_per_L_as_Cl2: equilibrium.activeChlorineMgPerL,
  }
}

/** JSON has no infinity: a water without calcium or carbonate has no index. */
function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null
}
