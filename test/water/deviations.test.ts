import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import tolerance from '../golden/water/tolerance.json'
import { deviations, deviationsDocument } from './deviations.ts'
import { TIER_A } from './golden.ts'

const file = join(import.meta.dirname, '../../src/water/DEVIATIONS.md')

describe('deviations from the golden tables (USGS PHREEQC 3.6.3)', () => {
  test('DEVIATIONS.md says what is so; `npm run deviations` writes it', () => {
    expect(readFileSync(file, 'utf8')).toBe(deviationsDocument())
  })

  test('all five tables are there, each column inside tier A', () => {
    const tables = deviations()
    expect(tables.map(({ columns }) => columns.length)).toEqual([47, 19, 5, 19, 20, 19])
    for (const { title, columns } of tables)
      for (const [column, { share }] of columns) expect(share, `${title}: ${column}`).toBeLessThan(1)
  })

  test('tier A as the tests use it is never wider than the file of tolerances', () => {
    const names = Object.entries(tolerance.speciation)
    expect(names.length).toBeGreaterThan(20)
    const NAMED: Readonly<Record<string, string>> = {
      'individual Ca/Mg/Na ion pairs': 'cahco3_umol_per_kgw',
      'cyanurate and chlorinated cyanurate species': 'h3cy_umol_per_kgw',
      'alk_borate / alk_cyanurate / alk_ocl': 'alk_borate_mg_per_L_as_CaCO3',
      ta_titrated_to_pH4p5_closed: 'ta_titrated_to_pH4p5_closed_mg_per_L_as_CaCO3',
    }
    for (const [key, { A }] of names) {
      for (const column of (NAMED[key] ?? key).split(', ')) {
        const row = TIER_A.find(([pattern]) => pattern.test(column))
        expect(row, column).toBeDefined()
        expect(row![1], column).toBeLessThanOrEqual(A.abs)
        expect(row![2], column).toBeLessThanOrEqual(A.rel)
      }
    }
  })
})
