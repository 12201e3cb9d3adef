import { describe, expect, test } from 'vitest'
import { type ExactTarget, targetDoses } from '../../src/plan/index.ts'
import type { WaterReading } from '../../src/water/index.ts'
import { doseColumns } from '../../src/water/index.ts'
import { expectColumns, goldenRows, good, ORACLE } from '../water/golden.ts'

/** Golden inverse and first-fill tables: doses found by bisection on USGS PHREEQC 3.6.3, phreeqc.dat. */
interface Inverse {
  readonly id: string
  readonly description: string
  readonly start: WaterReading
  readonly target: ExactTarget
  readonly dose: Readonly<Record<string, number>>
  readonly suggested_relative_tolerance_of_dose: Readonly<Record<string, number>>
}

const ACID = 'muriatic acid 31.45 % w/w HCl'
const PRODUCT_OF: Readonly<Record<string, readonly [name: string, gPerUnit: number]>> = {
  muriatic_acid_31p45_g_per_m3: [ACID, 1],
  muriatic_acid_31p45_mL_per_m3: [ACID, 1.16],
  acid_meq_per_kgw: [ACID, 1000 / 8.625678],
  HCl_mmol_per_kgw: [ACID, 1000 / 8.625678],
  sodium_bisulfate_93p2_g_per_m3: ['sodium bisulfate 93.2 % w/w NaHSO4', 1],
  sodium_bicarbonate_g_per_m3: ['sodium bicarbonate 100 %', 1],
  NaHCO3_mmol_per_kgw: ['sodium bicarbonate 100 %', 84.0066],
  soda_ash_g_per_m3: ['soda ash anhydrous 100 %', 1],
  Na2CO3_mmol_per_kgw: ['soda ash anhydrous 100 %', 105.9884],
  co2_g_per_m3: ['carbon dioxide 100 %', 1],
  borax_decahydrate_g_per_m3: ['borax decahydrate 100 %', 1],
}
/** Offered besides, to show that what isn't needed isn't dosed. */
const IDLE = ['cyanuric acid 100 %', 'calcium chloride dihydrate 78.5 % w/w CaCl2']

describe('doses for a target, against bisection on PHREEQC 3.6.3 (phreeqc.dat)', () => {
  const rows = goldenRows('inverse') as unknown as readonly Inverse[]

  test.each(rows)('$id: $description', (row) => {
    const names = [...new Set(Object.keys(row.dose).map((key) => PRODUCT_OF[key]![0]))]
    const answer = good(targetDoses(row.start, row.target, [...names, ...IDLE], ORACLE))
    const amounts = new Map(answer.doses.map((dose) => [dose.product, dose.gPerM3!]))
    expect([...amounts.keys()].toSorted()).toEqual(names.toSorted())
    for (const [key, reference] of Object.entries(row.dose)) {
      const [name, gPerUnit] = PRODUCT_OF[key]!
      const off = Math.abs(amounts.get(name)! - reference * gPerUnit) / (reference * gPerUnit)
      expect(off, key).toBeLessThan(0.01)
      expect(off, key).toBeLessThanOrEqual(row.suggested_relative_tolerance_of_dose[key] ?? 0.01)
    }
    for (const [key, value] of Object.entries(row.target))
      expect(answer.after.reading[key as keyof WaterReading]).toBeCloseTo(value!, 6)
  })

  interface Fill {
    readonly id: string
    readonly description: string
    readonly note: string
    readonly start: WaterReading
    readonly target: Readonly<Record<'pH' | 'ta' | 'ch' | 'cya' | 'b' | 'fc' | 'salt', number>>
    readonly doses_g_per_m3: Readonly<Record<string, number>>
    readonly doses_mL_per_m3: Readonly<Record<string, number>>
    readonly after_closed: Readonly<Record<string, number>>
  }
  const fills = goldenRows('first_fill') as unknown as readonly Fill[]

  test.each(fills)('$id: $description, from the same products', (row) => {
    const closed = !row.note.includes('aeration')
    const names = [...Object.keys(row.doses_g_per_m3), ...Object.keys(row.doses_mL_per_m3)]
    // rows of high alkalinity reach alkalinity with acid alone and pH by aeration, which is no product; a start above
    // its calcium or borate target stays there
    const { target } = row
    const wanted: ExactTarget = {
      ta_mg_per_L_as_CaCO3: target.ta,
      cya_mg_per_L: target.cya,
      fc_mg_per_L_as_Cl2: target.fc,
      ...(closed ? { pH: target.pH } : {}),
      ...((row.start.ch_mg_per_L_as_CaCO3 ?? 0) < target.ch ? { ch_mg_per_L_as_CaCO3: target.ch } : {}),
      ...((row.start.borate_mg_per_L_as_B ?? 0) < target.b ? { borate_mg_per_L_as_B: target.b } : {}),
    }
    const salt = row.doses_g_per_m3['sodium chloride 100 %']
    // the table counts salt before the acid that brings chloride too: give it as it is
    const answer = good(targetDoses(row.start, wanted, names, ORACLE))
    const amounts = new Map(answer.doses.map((dose) => [dose.product, dose.mLPerM3 ?? dose.gPerM3 ?? 0]))
    for (const [name, reference] of Object.entries({ ...row.doses_g_per_m3, ...row.doses_mL_per_m3 })) {
      if (name === 'sodium chloride 100 %') continue
      const off = Math.abs((amounts.get(name) ?? 0) - reference) / reference
      expect(off, name).toBeLessThan(0.01)
    }
    if (salt === undefined)
      expectColumns(doseColumns(answer.after.totals, answer.after.equilibrium), row.after_closed, row.id)
  })
})

describe('targets that cannot be reached are Problems', () => {
  const start: WaterReading = {
    pH: 7.5,
    ta_mg_per_L_as_CaCO3: 90,
    ch_mg_per_L_as_CaCO3: 250,
    cya_mg_per_L: 80,
    salt_mg_per_L_as_NaCl: 500,
  }

  test('less stabiliser cannot be dosed, and the Problem names it', () => {
    const answer = targetDoses(start, { cya_mg_per_L: 30, pH: 7.5 }, ['cyanuric-acid', 'muriatic-acid-31'], ORACLE)
    expect(answer.ok).toBe(false)
    if (!answer.ok) {
      expect(answer.problem.code).toBe('target-unreachable')
      expect(answer.problem.what).toContain('stabiliser')
      expect(answer.problem.what).not.toContain('pH')
    }
  })

  test('lower alkalinity at the same pH needs air, not a product', () => {
    const answer = targetDoses(
      start,
      { pH: 7.5, ta_mg_per_L_as_CaCO3: 60 },
      ['muriatic-acid-31', 'soda-ash', 'sodium-bicarbonate'],
      ORACLE,
    )
    expect(answer.ok).toBe(false)
    if (!answer.ok) expect(answer.problem.hint).toContain('aerate')
  })

  test('an unknown product and a target below zero say where they are', () => {
    const unknown = targetDoses(start, { pH: 7.4 }, ['soda-ash', 'elixir'], ORACLE)
    expect(!unknown.ok && unknown.problem.path).toBe('products[1]')
    const below = targetDoses(start, { cya_mg_per_L: -1 }, ['cyanuric-acid'], ORACLE)
    expect(!below.ok && below.problem.path).toBe('target.cya_mg_per_L')
  })

  test('a target that is already met needs no dose', () => {
    const answer = good(
      targetDoses(start, { cya_mg_per_L: 80, ta_mg_per_L_as_CaCO3: 90 }, ['cyanuric-acid', 'soda-ash'], ORACLE),
    )
    expect(answer.doses).toEqual([])
  })
})
