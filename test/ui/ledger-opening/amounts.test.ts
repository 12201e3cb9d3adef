import { describe, expect, test } from 'vitest'
import type { StepLine } from '../../../src/plan/index.ts'
import {
  amountFromG,
  formatAmount,
  formatParts,
  gFromAmount,
  measureOf,
  piecesWords,
  productsFor,
  saidG,
  splitStrength,
} from '../../../src/ui/ledger/opening/amounts.ts'
import { howWords, intervalWords, packageWords } from '../../../src/ui/ledger/opening/dose-words.ts'
import { parseQuantity } from '../../../src/units/index.ts'
import { openingFixture } from '../../support/opening-fixture.ts'

/** Numbers stand before their unit with a space that doesn’t break. */
const plain = (text: string | undefined) => text?.replaceAll('\u00a0', ' ')

describe('parts of an amount', () => {
  const flOzG = gFromAmount('muriatic-acid-31', 29.5735295625e-6)
  const poundG = gFromAmount('calcium-chloride-flake', 0.45359237)
  test('make the whole that stands above them', () => {
    const parts = (id: string, wholeG: number, n: number, units: 'metric' | 'us') =>
      formatParts(id, Array(n).fill(wholeG / n), units).map(plain)
    expect(parts('muriatic-acid-31', 20.68 * flOzG, 2, 'us')).toEqual(['10 fl oz (US)', '11 fl oz (US)'])
    expect(parts('calcium-chloride-flake', 7.1875 * poundG, 2, 'us')).toEqual(['3 lb 9 oz wt', '3 lb 10 oz wt'])
    for (const units of ['metric', 'us'] as const)
      for (const wholeG of [333.3, 1234.5, 5432.1, 20_001])
        for (const n of [2, 3, 7]) {
          const each = formatParts('calcium-chloride-flake', Array(n).fill(wholeG / n), units)
          const sum = each.reduce((kg, text) => kg + saidKg(text, units), 0)
          expect(sum).toBeCloseTo(saidKg(formatAmount('calcium-chloride-flake', wholeG, units), units), 9)
        }
  })

  test('what is weighed by a line is what the line says', () => {
    expect(saidG('muriatic-acid-31', 20.68 * flOzG, 'us') / flOzG).toBeCloseTo(21, 9)
  })

  function saidKg(text: string, units: 'metric' | 'us'): number {
    const read = parseQuantity('mass', text, units)
    if (!read.ok) throw new Error(read.problem.what)
    return read.value
  }
})

describe('amounts inside a sentence', () => {
  test('are told in the owner’s units', () => {
    const line = {
      ...(openingFixture.lines[0] as StepLine),
      how: 'About 880 g of it for each mg/L.',
      amounts: [{ text: '880 g', productId: 'liquid-chlorine-12', amountG: 880 }],
    }
    const told = (units: 'metric' | 'us') => plain(howWords(line, (id, g) => formatAmount(id, g, units)))
    expect(told('metric')).toMatch(/^About \d+ mL of it for each mg\/L$/)
    expect(told('us')).not.toMatch(/\d m?[Lg] of it/)
  })
})

describe('amounts that a person can weigh or pour', () => {
  test('acid of 31.45 % weighs 1.16 kg a litre (density table in its row) and is poured', () => {
    expect(measureOf('muriatic-acid-31')).toBe('liquid')
    expect(amountFromG('muriatic-acid-31', 1160)).toBeCloseTo(0.001, 12)
    expect(gFromAmount('muriatic-acid-31', 0.001)).toBeCloseTo(1160, 9)
  })

  test('solids are weighed, tablets too', () => {
    expect(measureOf('sodium-bicarbonate')).toBe('mass')
    expect(measureOf('trichlor-tablet')).toBe('mass')
    expect(amountFromG('sodium-bicarbonate', 2500)).toBe(2.5)
  })

  test('no amount is ever in bare ounces', () => {
    for (const id of ['muriatic-acid-31', 'sodium-bicarbonate', 'liquid-chlorine-12'])
      for (const g of [80, 300, 1400, 9000, 70_000])
        for (const system of ['us', 'imperial'] as const) {
          const text = plain(formatAmount(id, g, system)) ?? ''
          expect(text.replace(/fl oz \((US|imp)\)|oz wt|lb \d+ oz/g, ''), text).not.toContain('oz')
        }
  })

  test('liquid chlorine in metric is in millilitres or litres', () => {
    expect(plain(formatAmount('liquid-chlorine-12', 600, 'metric'))).toMatch(/\d+ mL$/)
    expect(plain(formatAmount('liquid-chlorine-12', 6000, 'metric'))).toMatch(/ L$/)
  })

  test('tablets are counted', () => {
    expect(plain(piecesWords('trichlor-tablet', 200, 'metric'))).toMatch(/^1(\.0)? tablet of 200 g$/)
    expect(plain(piecesWords('trichlor-tablet', 500, 'metric'))).toBe('2.5 tablets of 200 g')
    expect(piecesWords('salt', 500, 'metric')).toBeUndefined()
  })

  test('a name and its strength are told apart', () => {
    expect(splitStrength('Muriatic acid 31.45 %')).toEqual({ name: 'Muriatic acid', strength: '31.45 %' })
    expect(splitStrength('Calcium chloride flake 77–80 %')).toEqual({
      name: 'Calcium chloride flake',
      strength: '77–80 %',
    })
    expect(splitStrength('Boric acid')).toEqual({ name: 'Boric acid', strength: undefined })
  })

  test('bookkeeping rows are never offered as a product', () => {
    for (const use of ['acid', 'chlorine', 'reducer'] as const)
      expect(productsFor(use).filter((product) => product.isAccounting)).toEqual([])
    expect(productsFor('chlorine').map((product) => product.id)).not.toContain('chlorine-used')
  })
})

describe('what stands beside an amount', () => {
  test('the interval is left out where the volume is so sure that both ends read the same', () => {
    expect(intervalWords('3 lb', '3 lb')).toBeUndefined()
    expect(intervalWords('3 lb', '4 lb')).toContain('3 to 4 lb')
    expect(intervalWords('3 lb 15 oz wt', '4 lb 2 oz wt')).toContain('3 lb 15 oz wt to 4 lb 2 oz wt')
  })

  test('packages: whole ones are said to be exact, others leave a rest', () => {
    const format = (g: number) => `${g} g`
    const base = { label: '25 kg', count: 1, isWhole: true, leftoverG: 0 }
    expect(packageWords({ packages: base, amountG: 25_000 }, format)).toContain('Exactly one package of 25 kg')
    expect(
      packageWords({ packages: { ...base, count: 2, isWhole: false, leftoverG: 300 }, amountG: 49_700 }, format),
    ).toBe('From 2 packages of 25 kg; 300 g left over')
    expect(packageWords({ packages: undefined, amountG: 1 }, format)).toBeUndefined()
    // named as it is labelled, and told besides in the owner's units
    const gallon = { label: '1 US gal', count: 1, isWhole: false, leftoverG: 0 }
    const liquid = (units: 'metric' | 'us') => (g: number) => formatAmount('liquid-chlorine-12', g, units)
    const amountG = gFromAmount('liquid-chlorine-12', 3.785411784e-3)
    expect(plain(packageWords({ packages: gallon, amountG }, liquid('metric')))).toBe(
      'From one package of 1 US gal (3.79 L)',
    )
    expect(plain(packageWords({ packages: gallon, amountG }, liquid('us')))).toBe('From one package of 1 US gal')
  })
})
