import { describe, expect, test } from 'vitest'
import {
  atTemperature,
  concentrate,
  doseColumns,
  equilibrate,
  equilibrateOpen,
  mix,
  type Solution,
} from '../../src/water/index.ts'
import { type BlendRow, expectColumns, goldenRows, good, ORACLE, stateOf } from './golden.ts'

const rows = goldenRows('blending')

function blended({ kind, input }: BlendRow): Solution {
  const pool = stateOf(input.pool).totals
  if (kind === 'aeration') return good(equilibrateOpen(pool, input.log10_pCO2_atm!, ORACLE))
  const totals =
    kind === 'mix'
      ? mix(pool, stateOf(input.fill!).totals, input.fill_fraction!)
      : kind === 'evaporation'
        ? concentrate(pool, input.concentration_factor!)
        : atTemperature(pool, input.new_temperature_C!)
  return { totals, equilibrium: good(equilibrate(totals, ORACLE)) }
}

describe('blends, evaporation, air and heat against USGS PHREEQC 3.6.3 (phreeqc.dat)', () => {
  test('the table holds 24 rows of four kinds', () => {
    expect(rows.length).toBe(24)
    expect(new Set(rows.map((row) => row.kind))).toEqual(new Set(['mix', 'evaporation', 'aeration', 'temperature']))
  })

  test.each(rows)('$id ($kind) gives the table’s water', (row) => {
    const { totals, equilibrium } = blended(row)
    expectColumns(doseColumns(totals, equilibrium), row.output, row.id)
    expect(Math.abs(equilibrium.pH - row.output['pH']!)).toBeLessThan(0.0003)
  })
})
