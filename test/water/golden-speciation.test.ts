import { describe, expect, test } from 'vitest'
import { CONSTANT_SETS, equilibrate, readingOf, speciationColumns } from '../../src/water/index.ts'
import { expectColumns, goldenRows, good, ORACLE, stateOf } from './golden.ts'

const rows = goldenRows('speciation')

describe('speciation against USGS PHREEQC 3.6.3 (phreeqc.dat)', () => {
  test('the table holds 24 waters of 47 columns', () => {
    expect(rows.length).toBe(24)
    for (const row of rows) expect(Object.keys(row.output).length).toBe(47)
  })

  test.each(rows)('every column of $id ($name) is inside tier A', (row) => {
    const { totals, equilibrium } = stateOf(row.input)
    expectColumns(good(speciationColumns(totals, equilibrium, ORACLE)), row.output, row.id)
  })

  test.each(rows)('the conserved totals of $id are those of the table', (row) => {
    const { totals } = stateOf(row.input)
    const mine = {
      Ca_mmol_per_kgw: totals.calciumMol,
      Mg_mmol_per_kgw: totals.magnesiumMol,
      Na_mmol_per_kgw: totals.sodiumMol,
      Cl_mmol_per_kgw: totals.chlorideMol,
      SO4_mmol_per_kgw: totals.sulfateMol,
      B_mmol_per_kgw: totals.boronMol,
      cyanurate_mmol_per_kgw: totals.cyanurateMol,
      free_chlorine_mmol_per_kgw: totals.chlorineMol,
      alkalinity_meq_per_kgw: totals.alkalinityEq,
    }
    for (const [key, value] of Object.entries(mine)) {
      const reference = row.totals[key]!
      expect(Math.abs(value * 1000 - reference), key).toBeLessThanOrEqual(1e-6 * Math.abs(reference) + 1e-9)
    }
  })

  // the constants are the table's own, so what is left is the activity model: far inside tier A
  test('chemistry agrees to a tenth of tier A or better where it decides anything', () => {
    for (const row of rows) {
      const { totals, equilibrium } = stateOf(row.input)
      const columns = good(speciationColumns(totals, equilibrium, ORACLE))
      const off = (column: string) => Math.abs(columns[column]! - row.output[column]!)
      expect(off('calcite_SI'), row.id).toBeLessThan(0.001)
      expect(off('log10_pCO2_atm'), row.id).toBeLessThan(0.0005)
      for (const column of ['hocl_mg_per_L_as_Cl2', 'alt_W19_hocl_mg_per_L_as_Cl2', 'dic_mmol_per_kgw']) {
        expect(off(column), `${row.id} ${column}`).toBeLessThanOrEqual(0.0005 * row.output[column]!)
      }
    }
  })

  test.each(rows)('readings of $id survive the way to totals and back', (row) => {
    const { totals, equilibrium } = stateOf(row.input)
    const back = readingOf(totals, equilibrium)
    for (const [key, value] of Object.entries(row.input)) {
      expect(back[key as keyof typeof back], key).toBeCloseTo(value as number, 9)
    }
  })

  test('the default set differs from the golden one by boric acid alone', () => {
    const names = Object.keys(ORACLE.reactions) as (keyof typeof ORACLE.reactions)[]
    const changed = names.filter((id) => CONSTANT_SETS.default.reactions[id] !== ORACLE.reactions[id])
    expect(changed).toEqual(['boricAcid'])
    for (const row of rows.filter(({ input }) => input.borate_mg_per_L_as_B === 0)) {
      const { totals, equilibrium } = stateOf(row.input)
      expect(good(equilibrate(totals, CONSTANT_SETS.default))).toEqual(equilibrium)
    }
  })
})
