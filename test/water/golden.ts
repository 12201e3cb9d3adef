import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect } from 'vitest'
import type { Result } from '../../src/base/index.ts'
import {
  CONSTANT_SETS,
  type Equilibrium,
  equilibrate,
  type Totals,
  totalsOf,
  type WaterReading,
} from '../../src/water/index.ts'

/** Golden tables: USGS PHREEQC 3.6.3, phreeqc.dat with chlorine and cyanurate added; see each file's provenance. */
const FOLDER = join(import.meta.dirname, '../golden/water')

type Numbers = Readonly<Record<string, number>>

export interface SpeciationRow {
  readonly id: string
  readonly name: string
  readonly input: WaterReading
  readonly totals: Numbers
  readonly output: Numbers
}

export interface DoseRow {
  readonly id: string
  readonly product: string
  readonly stoichiometry_mmol_per_kgw: Numbers
  readonly start: WaterReading
  readonly start_output: Numbers
  readonly after_closed: Numbers
  readonly after_open_log10_pCO2_minus3p38: Numbers
}

export interface BlendRow {
  readonly id: string
  readonly kind: 'mix' | 'evaporation' | 'aeration' | 'temperature'
  readonly input: {
    readonly pool: WaterReading
    readonly fill?: WaterReading
    readonly fill_fraction?: number
    readonly concentration_factor?: number
    readonly log10_pCO2_atm?: number
    readonly new_temperature_C?: number
  }
  readonly output: Numbers
}

export interface InverseRow {
  readonly id: string
  readonly description: string
  readonly start: WaterReading
  readonly dose: Numbers
  readonly after_closed: Numbers
}

export interface FillRow {
  readonly id: string
  readonly start: WaterReading
  readonly doses_g_per_m3: Numbers
  readonly doses_mL_per_m3: Numbers
  readonly after_closed: Numbers
  readonly after_aeration_to_target_pH?: Numbers
}

interface Tables {
  readonly speciation: SpeciationRow
  readonly dose_reactions: DoseRow
  readonly blending: BlendRow
  readonly inverse: InverseRow
  readonly first_fill: FillRow
}

export function goldenRows<Name extends keyof Tables>(name: Name): readonly Tables[Name][] {
  const file = JSON.parse(readFileSync(join(FOLDER, `${name}.json`), 'utf8'))
  expect(file.provenance).toContain('PHREEQC')
  return file.rows
}

/** Millimoles per kilogram of water from 1 g/m³ (1 mL/m³ for liquid hypochlorite) of a product in the tables. */
export function goldenStoichiometry(product: string): Numbers {
  const file = JSON.parse(readFileSync(join(FOLDER, 'products.json'), 'utf8'))
  const found = file.products[product]
  if (!found) throw new Error(`no product ${product} in the golden table`)
  return Object.fromEntries(
    Object.entries(found.stoichiometry_mmol_per_g as Numbers).map(([formula, mmolPerG]) => [formula, mmolPerG / 1000]),
  )
}

/** The value of a good result; a Problem fails the test with its words. */
export function good<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.problem.code}: ${result.problem.what}`)
  return result.value
}

export const ORACLE = CONSTANT_SETS.oracle

export function stateOf(reading: WaterReading, constants = ORACLE): { totals: Totals; equilibrium: Equilibrium } {
  const totals = good(totalsOf(reading, constants))
  return { totals, equilibrium: good(equilibrate(totals, constants)) }
}

/** Tier A tolerances (same constants), by column: abs + rel × |reference|. */
export const TIER_A: readonly (readonly [column: RegExp, abs: number, rel: number])[] = [
  [/^(alt_W19_)?dic_/, 0.002, 0.005],
  [/^co2aq_/, 0.0005, 0.02],
  [/^hco3_total_/, 0.002, 0.006],
  [/^hco3_free_/, 0.002, 0.008],
  [/^co3_free_/, 0.05, 0.045],
  [/^co3_total_/, 0.05, 0.035],
  [/^(ca|mg)_free_/, 0.002, 0.02],
  [/^(cahco3|caco3aq|mghco3|mgco3aq|nahco3aq|caso4aq|mgso4aq|naso4)_/, 0.2, 0.07],
  [/^boh3_/, 0.001, 0.002],
  [/^boh4_/, 0.0002, 0.01],
  [/cy2?_umol/, 0.001, 0.005],
  [/^(alt_W19_)?(hocl|ocl)_/, 0.0002, 0.005],
  [/^chlorinated_cyanurates_/, 0.001, 0.001],
  [/^alk_carbonate_/, 0.1, 0.002],
  [/^alk_(borate|cyanurate|ocl)_/, 0.05, 0.005],
  [/^ionic_strength_/, 5e-5, 0.005],
  [/calcite_SI$/, 0.03, 0],
  [/^log10_pCO2_/, 0.007, 0],
  [/^specific_conductance_/, 10, 0.05],
  [/^buffer_capacity_/, 0.002, 0.025],
  [/^ta_titrated_/, 0.15, 0],
  [/^log10_gamma_HCO3$/, 0.006, 0],
  [/^log10_gamma_(CO3|Ca)$/, 0.025, 0],
  [/^pH$/, 0.01, 0],
  [/^(ta|ch|mg_hardness|cya|borate|fc|chloride|sulfate|sodium|magnesium|potassium)_mg_per_L/, 0.02, 1e-4],
]

/** How far a column is out, in units of its tier A tolerance (1 is the limit). */
export function shareOfTolerance(column: string, value: number, reference: number): number {
  const row = TIER_A.find(([pattern]) => pattern.test(column))
  if (!row) throw new Error(`no tolerance for ${column}`)
  return Math.abs(value - reference) / (row[1] + row[2] * Math.abs(reference))
}

/** Every column of the reference must be there and inside `share` of tier A. */
export function expectColumns(
  columns: Readonly<Record<string, number | null>>,
  reference: Numbers,
  id: string,
  share = 1,
): void {
  const wrong: string[] = []
  for (const [column, expected] of Object.entries(reference)) {
    const value = columns[column]
    if (typeof value !== 'number') wrong.push(`${column} is ${String(value)}`)
    else if (!(shareOfTolerance(column, value, expected) <= share)) wrong.push(`${column} ${value} against ${expected}`)
  }
  expect(wrong, id).toEqual([])
  expect(Object.keys(columns).length, `${id}: columns`).toBe(Object.keys(reference).length)
}
