import { describe, expect, test } from 'vitest'
import {
  addTotals,
  doseColumns,
  equilibrate,
  equilibrateAtPH,
  equilibrateOpen,
  openColumns,
  scaleDelta,
  stoichiometryDelta,
  type Totals,
} from '../../src/water/index.ts'
import { expectColumns, goldenRows, goldenStoichiometry, good, ORACLE, stateOf } from './golden.ts'

const doses = goldenRows('dose_reactions')
const inverse = goldenRows('inverse')
const fills = goldenRows('first_fill')

function dosed(totals: Totals, mmolPerKg: Readonly<Record<string, number>>, amount = 1): Totals {
  const delta = stoichiometryDelta(mmolPerKg)
  if (!delta) throw new Error(`unknown formula in ${Object.keys(mmolPerKg).join(', ')}`)
  return addTotals(totals, scaleDelta(delta, amount / 1000))
}

describe('doses against USGS PHREEQC 3.6.3 (phreeqc.dat)', () => {
  test('the table holds 28 doses', () => {
    expect(doses.length).toBe(28)
  })

  test.each(doses)('$id: $product, kept from air, gives the table’s water', (row) => {
    const { totals, equilibrium } = stateOf(row.start)
    expectColumns(doseColumns(totals, equilibrium), row.start_output, `${row.id} start`)
    const after = dosed(totals, row.stoichiometry_mmol_per_kgw)
    expectColumns(doseColumns(after, good(equilibrate(after, ORACLE))), row.after_closed, row.id)
  })

  test.each(doses)('$id: $product, in balance with air, gives the table’s water', (row) => {
    const after = dosed(stateOf(row.start).totals, row.stoichiometry_mmol_per_kgw)
    const open = good(equilibrateOpen(after, -3.38, ORACLE))
    expectColumns(openColumns(open.totals, open.equilibrium), row.after_open_log10_pCO2_minus3p38, row.id)
    expect(open.equilibrium.log10PCO2Atm).toBeCloseTo(-3.38, 9)
    expect(open.totals.alkalinityEq).toBe(after.alkalinityEq)
  })

  test('pH after every dose is within 0.0003 of the table, closed and open', () => {
    for (const row of doses) {
      const after = dosed(stateOf(row.start).totals, row.stoichiometry_mmol_per_kgw)
      expect(Math.abs(good(equilibrate(after, ORACLE)).pH - row.after_closed['pH']!), row.id).toBeLessThan(0.0003)
      const open = good(equilibrateOpen(after, -3.38, ORACLE)).equilibrium.pH
      expect(Math.abs(open - row.after_open_log10_pCO2_minus3p38['pH']!), row.id).toBeLessThan(0.0003)
    }
  })
})

/** Which product (or pure formula) each dose key of the inverse table means, and how its amount counts. */
const DOSE_KEYS: Readonly<Record<string, Readonly<Record<string, number>> | null>> = {
  muriatic_acid_31p45_g_per_m3: goldenStoichiometry('muriatic acid 31.45 % w/w HCl'),
  sodium_bisulfate_93p2_g_per_m3: goldenStoichiometry('sodium bisulfate 93.2 % w/w NaHSO4'),
  sodium_bicarbonate_g_per_m3: goldenStoichiometry('sodium bicarbonate 100 %'),
  soda_ash_g_per_m3: goldenStoichiometry('soda ash anhydrous 100 %'),
  co2_g_per_m3: goldenStoichiometry('carbon dioxide 100 %'),
  borax_decahydrate_g_per_m3: goldenStoichiometry('borax decahydrate 100 %'),
  NaHCO3_mmol_per_kgw: { NaHCO3: 1 },
  Na2CO3_mmol_per_kgw: { Na2CO3: 1 },
  HCl_mmol_per_kgw: { HCl: 1 },
  // the same acid in other units
  muriatic_acid_31p45_mL_per_m3: null,
  acid_meq_per_kgw: null,
}

describe('the doses of the inverse and first-fill tables bring their waters', () => {
  test.each(inverse)('$id: $description', (row) => {
    let totals = stateOf(row.start).totals
    for (const [key, amount] of Object.entries(row.dose)) {
      const stoichiometry = DOSE_KEYS[key]
      expect(stoichiometry, key).not.toBeUndefined()
      if (stoichiometry) totals = dosed(totals, stoichiometry, amount)
    }
    expectColumns(doseColumns(totals, good(equilibrate(totals, ORACLE))), row.after_closed, row.id)
  })

  test.each(fills)('$id', (row) => {
    let totals = stateOf(row.start).totals
    for (const [product, amount] of [...Object.entries(row.doses_g_per_m3), ...Object.entries(row.doses_mL_per_m3)]) {
      totals = dosed(totals, goldenStoichiometry(product), amount)
    }
    expectColumns(doseColumns(totals, good(equilibrate(totals, ORACLE))), row.after_closed, row.id)
    const aerated = row.after_aeration_to_target_pH
    if (!aerated) return
    const { co2_removed_mmol_per_kgw: removed = Number.NaN, ...reference } = aerated
    const there = good(equilibrateAtPH(totals, aerated['pH']!, ORACLE))
    expectColumns(doseColumns(there.totals, there.equilibrium), reference, `${row.id} aerated`)
    expect(Math.abs((totals.carbonMol - there.totals.carbonMol) * 1000 - removed)).toBeLessThan(0.005 * removed)
  })
})
