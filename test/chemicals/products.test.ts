import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import {
  CAUTIONS,
  deltaOf,
  deltaPerGram,
  doseDelta,
  INCOMPATIBLE,
  keepApart,
  mustNotMeet,
  PRODUCTS,
  productById,
} from '../../src/chemicals/index.ts'
import {
  addTotals,
  doseColumns,
  equilibrate,
  equilibrateOpen,
  MOLAR_MASSES_G_PER_MOL,
  openColumns,
  PURE_WATER,
  stoichiometryDelta,
  strongIonChargeEq,
  TOTAL_KEYS,
} from '../../src/water/index.ts'
import { expectColumns, goldenRows, good, ORACLE, stateOf } from '../water/golden.ts'

const golden = JSON.parse(readFileSync(join(import.meta.dirname, '../golden/water/products.json'), 'utf8')) as {
  readonly products: Readonly<Record<string, { readonly stoichiometry_mmol_per_g: Readonly<Record<string, number>> }>>
}
const names = Object.keys(golden.products)

describe('the product table', () => {
  test.each(PRODUCTS.rows)(
    '$id is complete: strength, density, groups, cautions and a source for its numbers',
    (row) => {
      expect(row.strength).not.toBe('')
      expect(row.densityGPerML).toBeGreaterThan(0)
      expect(row.groups.length).toBeGreaterThan(0)
      expect(row.sources.length).toBeGreaterThan(0)
      for (const id of row.cautions) expect(CAUTIONS.get(id), id).toBeDefined()
      if (!row.isAccounting) {
        expect(row.cautions.length).toBeGreaterThan(0)
        expect(row.how.length).toBeGreaterThan(10)
      }
      for (const pack of row.packages) expect(pack.massG).toBeGreaterThan(0)
    },
  )

  test.each(PRODUCTS.rows)('$id keeps electric neutrality: alkalinity is the charge of its strong ions', (row) => {
    const after = addTotals(PURE_WATER, deltaPerGram(row))
    // chlorine and cyanurate of the chlorinated stabilisers are weak acids at their zero level
    expect(Math.abs(strongIonChargeEq(after) - after.alkalinityEq)).toBeLessThan(1e-15)
  })

  test.each(PRODUCTS.rows.filter((row) => row.uses.includes('chlorine')))(
    '$id brings the available chlorine its strength says',
    (row) => {
      const brought = (deltaPerGram(row).chlorineMol ?? 0) * MOLAR_MASSES_G_PER_MOL.chlorineAsCl2
      expect(brought).toBeCloseTo(row.availableChlorine, 9)
    },
  )

  test('no product is named without the strength of an acid', () => {
    for (const row of PRODUCTS.rows.filter((each) => each.groups.includes('acid') && each.uses.includes('acid')))
      expect(row.label).toMatch(/\d+(\.\d+)? %/)
  })

  test('an unknown product is a Problem with the known ids in its hint', () => {
    const answer = productById('elixir')
    expect(answer.ok).toBe(false)
    if (!answer.ok) expect(answer.problem.hint).toContain('soda-ash')
  })

  test('a dose without an amount, with two, or below zero is a Problem', () => {
    expect(doseDelta('soda-ash', {}).ok).toBe(false)
    expect(doseDelta('soda-ash', { gPerM3: 1, mLPerM3: 1 }).ok).toBe(false)
    expect(doseDelta('soda-ash', { gPerM3: -1 }).ok).toBe(false)
    expect(doseDelta('soda-ash', { mLPerM3: 5 }).ok).toBe(false)
  })

  test('doses add: a + b is a, then b', () => {
    for (const row of PRODUCTS.rows) {
      const twice = addTotals(addTotals(PURE_WATER, deltaOf(row, 30)), deltaOf(row, 12))
      const once = addTotals(PURE_WATER, deltaOf(row, 42))
      for (const key of TOTAL_KEYS) expect(twice[key] ?? 0).toBeCloseTo(once[key] ?? 0, 15)
    }
  })
})

describe('the names of the golden product table (PHREEQC runs)', () => {
  test.each(names)('%s changes exactly what the table says', (name) => {
    const found = good(productById(name))
    expect(found.basis).toBe(name.includes('per mL') ? 'mL' : 'g')
    const ours = good(doseDelta(name, found.basis === 'mL' ? { mLPerM3: 1 } : { gPerM3: 1 }))
    const theirs = stoichiometryDelta(golden.products[name]!.stoichiometry_mmol_per_g)!
    for (const key of TOTAL_KEYS) {
      // mmol per gram → mol per kg of water for 1 g/m³; the table prints seven digits
      const expected = (theirs[key] ?? 0) * 1e-6
      expect(Math.abs((ours[key] ?? 0) - expected), key).toBeLessThanOrEqual(5e-7 * Math.abs(expected) + 1e-16)
    }
  })

  test.each(goldenRows('dose_reactions'))('$id: $product by name gives the table’s water, closed and open', (row) => {
    const given = row as unknown as { amount_g_per_m3?: number; amount_mL_per_m3?: number }
    const amount =
      given.amount_mL_per_m3 === undefined ? { gPerM3: given.amount_g_per_m3 } : { mLPerM3: given.amount_mL_per_m3 }
    const after = addTotals(stateOf(row.start).totals, good(doseDelta(row.product, amount)))
    expectColumns(doseColumns(after, good(equilibrate(after, ORACLE))), row.after_closed, row.id)
    const open = good(equilibrateOpen(after, -3.38, ORACLE))
    expectColumns(openColumns(open.totals, open.equilibrium), row.after_open_log10_pCO2_minus3p38, row.id)
  })
})

describe('what must never meet', () => {
  test('the table reads alike from both sides, each pair once, with a reason and a source', () => {
    const seen = new Set<string>()
    for (const { a, b, reason, source } of INCOMPATIBLE) {
      const key = [a, b].toSorted().join('|')
      expect(seen.has(key), key).toBe(false)
      seen.add(key)
      expect(mustNotMeet(a, b)).toBe(mustNotMeet(b, a))
      expect(reason).not.toBe('')
      expect(source).not.toBe('')
    }
  })

  test('acid and hypochlorite, and calcium hypochlorite and trichlor, are a danger (CDC MMWR 66(19); EPA 550-F-01-003)', () => {
    const of = (id: string) => good(productById(id)).product
    expect(keepApart(of('muriatic-acid-31'), of('liquid-chlorine-12'))?.kind).toBe('danger')
    expect(keepApart(of('cal-hypo-65'), of('trichlor-tablet'))?.source).toContain('550-F-01-003')
    expect(keepApart(of('dry-acid'), of('trichlor-tablet'))?.kind).toBe('danger')
    expect(keepApart(of('soda-ash'), of('calcium-chloride-flake'))?.kind).toBe('clouds')
    expect(keepApart(of('boric-acid'), of('cal-hypo-65'))).toBeUndefined()
  })
})
