import { describe, expect, test } from 'vitest'
import { logKAt } from '../../src/water/constants.ts'
import {
  addTotals,
  breakpointRatio,
  CONSTANT_SETS,
  DARK_LOSS_PER_DAY_AT_28C,
  doseColumns,
  equilibrate,
  evaporationMmPerDay,
  formulaDelta,
  INCIDENT_STABILISER_LIMIT_MG_PER_L,
  METALS,
  METHODS,
  type MethodError,
  MG_CACO3_PER_EQ,
  NEAR_UV_ATTENUATION_PER_M,
  NITROGEN_G_PER_BATHER_HOUR,
  ORGANISMS,
  PURE_WATER,
  QUIET_WATER_FACTOR,
  type ReactionId,
  RULES,
  scaleDelta,
  speciationColumns,
  stoichiometryDelta,
  superchlorination,
  withWahman,
} from '../../src/water/index.ts'
import { HOCL_PHOTOLYSIS_PER_S, OCL_PHOTOLYSIS_PER_S } from '../../src/water/sunlight.ts'
import { goldenRows, good, ORACLE, stateOf } from './golden.ts'
import { tableAfter } from './model-tables.ts'

describe('MODEL.md says what the code does', () => {
  test('each constant, at 0, 25 and 40 °C, with its reaction and source', () => {
    const rows = tableAfter('| set | id | reaction')
    const sets = { oracle: ORACLE, default: CONSTANT_SETS.default, wahman: CONSTANT_SETS.wahman }
    for (const [set = '', id = '', equation, ...rest] of rows) {
      const reaction = sets[set as keyof typeof sets].reactions[id as ReactionId]
      expect(equation).toBe(reaction.equation)
      expect(rest.slice(0, 3)).toEqual([0, 25, 40].map((celsius) => logKAt(reaction.logK, celsius + 273.15).toFixed(3)))
      expect(rest[3]).toBe(reaction.source)
    }
    const oracle = rows.filter(([set]) => set === 'oracle').map(([, id]) => id)
    expect(oracle.sort()).toEqual(Object.keys(ORACLE.reactions).sort())
    expect(rows.length).toBe(oracle.length + 4)
  })

  test('the borax buffer under both boric acids', () => {
    const [nist, oracle, manov] = tableAfter('| borax buffer').map(([, ...cells]) => cells.map(Number))
    const celsius = [0, 5, 10, 25, 40]
    celsius.forEach((temperatureC, i) => {
      const borax = { ...addTotals(PURE_WATER, scaleDelta(formulaDelta('Na2B4O7')!, 0.01)), temperatureC }
      expect(good(equilibrate(borax, ORACLE)).pH - nist![i]!).toBeCloseTo(oracle![i]!, 2)
      expect(good(equilibrate(borax, CONSTANT_SETS.default)).pH - nist![i]!).toBeCloseTo(manov![i]!, 2)
    })
  })

  test('with stabiliser the Wahman set finds 1.36 to 1.58 times less active chlorine', () => {
    const ratios = goldenRows('speciation')
      .filter(({ input }) => (input.cya_mg_per_L ?? 0) > 0 && (input.fc_mg_per_L_as_Cl2 ?? 0) > 0)
      .map(({ input }) => {
        const { totals, equilibrium } = stateOf(input)
        const columns = good(speciationColumns(totals, equilibrium, ORACLE))
        return equilibrium.activeChlorineMgPerL / columns['alt_W19_hocl_mg_per_L_as_Cl2']!
      })
    expect(Math.min(...ratios)).toBeGreaterThan(1.355)
    expect(Math.max(...ratios)).toBeLessThan(1.585)
    expect(withWahman(ORACLE)).toBe(withWahman(ORACLE))
  })

  test('the single numbers', () => {
    const still = { waterC: 26.667, airC: 26.667, relativeHumidity: 0.5, windMPerS: 0 }
    const { doses } = good(superchlorination({ freeMgPerL: 0, combinedMgPerL: 1, stabiliserMgPerL: 0 }))
    const values: Readonly<Record<string, number>> = {
      'mg/L as CaCO3 per eq/kg': MG_CACO3_PER_EQ,
      breakpoint: breakpointRatio,
      'HOCl photolysis at noon': HOCL_PHOTOLYSIS_PER_S,
      'OCl photolysis at noon': OCL_PHOTOLYSIS_PER_S,
      'near-UV attenuation': NEAR_UV_ATTENUATION_PER_M,
      'dark loss at 28 °C': DARK_LOSS_PER_DAY_AT_28C,
      'nitrogen per bather hour': NITROGEN_G_PER_BATHER_HOUR,
      'quiet outdoor water': QUIET_WATER_FACTOR,
      'stabiliser limit, faecal incident': INCIDENT_STABILISER_LIMIT_MG_PER_L,
      'superchlorination, theory': doses[0]!.lowMgPerL,
      'superchlorination, practice, high': doses[1]!.highMgPerL,
      'iron limit': METALS.get('iron')!.limitMgPerL,
      'manganese limit': METALS.get('manganese')!.limitMgPerL,
      'copper limit': METALS.get('copper')!.limitMgPerL,
      'Cryptosporidium, 99.9 %': ORGANISMS.get('cryptosporidium')!.ctMgMinPerL,
      'still 80 °F water, 80 °F air at 50 %': evaporationMmPerDay(still),
    }
    const rows = tableAfter('| number | value')
    expect(rows.map(([name]) => name).sort()).toEqual(Object.keys(values).sort())
    for (const [name = '', value] of rows) expect(Math.abs(values[name]! / Number(value) - 1), name).toBeLessThan(0.001)
  })

  test('each row of the rules', () => {
    const figure = (value: number | undefined) => (value === undefined ? '–' : String(value))
    expect(tableAfter('| rules | no stabiliser')).toEqual(
      RULES.rows.map((row) => [
        row.id,
        figure(row.floorWithoutStabiliserMgPerL),
        figure(row.floorWithStabiliserMgPerL),
        figure(row.ceilingMgPerL),
        row.pHLow === undefined ? '–' : `${row.pHLow}–${row.pHHigh}`,
        figure(row.combinedHighMgPerL),
        figure(row.stabiliserHighMgPerL),
        row.status,
      ]),
    )
  })

  test('the spread of each method', () => {
    const keys = [
      'pH',
      'ta_mg_per_L_as_CaCO3',
      'ch_mg_per_L_as_CaCO3',
      'th_mg_per_L_as_CaCO3',
      'cya_mg_per_L',
      'borate_mg_per_L_as_B',
      'fc_mg_per_L_as_Cl2',
      'salt_mg_per_L_as_NaCl',
    ] as const
    const spread = (error: MethodError | undefined) => {
      if (!error) return '–'
      const { absolute, relative } = error
      return relative === 0 ? `${absolute}` : `${absolute} + ${Math.round(relative * 100)} %`
    }
    expect(tableAfter('| method | pH')).toEqual(
      METHODS.rows.map(({ id, errors }) => [id, ...keys.map((key) => spread(errors[key]))]),
    )
  })

  test('the accuracy it claims is what the golden tables show', () => {
    const limits = new Map(
      tableAfter('| quantity | at most').map(([name = '', value = '']) => [name, Number.parseFloat(value)]),
    )
    const worst = new Map<string, number>([...limits.keys()].map((name) => [name, 0]))
    const note = (name: string, off: number) => worst.set(name, Math.max(worst.get(name)!, off))
    const compare = (mine: Readonly<Record<string, number | null>>, theirs: Readonly<Record<string, number>>) => {
      const absolute = (name: string, column: string) => {
        if (theirs[column] !== undefined) note(name, Math.abs(mine[column]! - theirs[column]))
      }
      const relative = (name: string, column: string) => {
        const reference = theirs[column]
        if (reference !== undefined && reference > 1e-9) note(name, Math.abs(mine[column]! / reference - 1))
      }
      absolute('pH after a dose, a blend, heat or air', 'pH')
      absolute('calcite SI', 'calcite_SI')
      absolute('log10 pCO2', 'log10_pCO2_atm')
      relative('active chlorine', 'hocl_mg_per_L_as_Cl2')
      relative('dissolved inorganic carbon', 'dic_mmol_per_kgw')
      relative('buffer capacity', 'buffer_capacity_mmol_eq_per_kgw_per_pH')
      relative('specific conductance', 'specific_conductance_uS_per_cm_at_T')
    }
    for (const row of goldenRows('speciation')) {
      const { totals, equilibrium } = stateOf(row.input)
      compare(good(speciationColumns(totals, equilibrium, ORACLE)), row.output)
    }
    for (const row of goldenRows('dose_reactions')) {
      const dose = scaleDelta(stoichiometryDelta(row.stoichiometry_mmol_per_kgw)!, 1e-3)
      const totals = addTotals(stateOf(row.start).totals, dose)
      compare(doseColumns(totals, good(equilibrate(totals, ORACLE))), row.after_closed)
    }
    for (const [name, off] of worst) {
      expect(off, name).toBeLessThanOrEqual(limits.get(name)!)
      // and not claimed looser than tenfold
      expect(off, name).toBeGreaterThan(limits.get(name)! / 10)
    }
  })
})
