import { describe, expect, test } from 'vitest'
import { deltaPerGram, ownProduct, type Product, productById } from '../../src/chemicals/index.ts'
import { MOLAR_MASSES_G_PER_MOL as MASS, MG_CACO3_PER_EQ, type TotalKey } from '../../src/water/index.ts'
import { good } from '../water/golden.ts'

/** Amounts for 10,000 US gallons. Stoichiometry by molar masses unless a source is named beside the row. */
const VOLUME_M3 = 37.854118
const LB_G = 453.59237
const OZ_G = LB_G / 16
const FL_OZ_ML = 29.5735295625

const MG_PER_MOL: { readonly [K in TotalKey]?: number } = {
  alkalinityEq: MG_CACO3_PER_EQ,
  calciumMol: 1000 * MASS.calciumCarbonate,
  cyanurateMol: 1000 * MASS.cyanuricAcid,
  chlorineMol: 1000 * MASS.chlorineAsCl2,
  boronMol: 1000 * MASS.boron,
}

const found = (id: string) => good(productById(id)).product
/** mg/L that a gram of a product by its label brings to a cubic metre. */
const effectOf = (product: Product, key: TotalKey) => ((deltaPerGram(product)[key] ?? 0) * MG_PER_MOL[key]!) / 1000
const atStrength = (like: string, strength: number) =>
  good(ownProduct({ id: 'own', label: 'Own', like, strength, basis: 'percent-by-mass' }))
/** mg/L that a gram of product brings to a cubic metre, by reading. */
const effect = (id: string, key: TotalKey) => ((deltaPerGram(found(id))[key] ?? 0) * MG_PER_MOL[key]!) / 1000
/** Grams for a change of a reading in 10,000 US gallons. */
const grams = (id: string, key: TotalKey, mgPerL: number) => (mgPerL / effect(id, key)) * VOLUME_M3
const flOz = (id: string, amountG: number) => amountG / found(id).densityGPerML / FL_OZ_ML

/** Within half a unit of the last digit that the handbook row prints. */
const digits = (value: number, printed: number, places: number) =>
  expect(Math.abs(value - printed)).toBeLessThanOrEqual(0.5 * 10 ** -places * 1.0001)

describe('handbook doses for 10,000 US gallons come out of the product table', () => {
  test('sodium bicarbonate: 1.401 lb per 10 mg/L of alkalinity (635.4 g; handbooks print 1.4 to 1.5)', () => {
    const g = grams('sodium-bicarbonate', 'alkalinityEq', 10)
    digits(g, 635.4, 1)
    digits(g / LB_G, 1.401, 3)
  })

  test('soda ash: 0.884 lb per 10 mg/L of alkalinity', () => {
    digits(grams('soda-ash', 'alkalinityEq', 10) / LB_G, 0.884, 3)
  })

  test('muriatic acid 31.45 %: 25.56 fl oz takes 10 mg/L (0.391 each; Wojtowicz, JSPSI 5(1), d 1.16)', () => {
    const amount = flOz('muriatic-acid-31', grams('muriatic-acid-31', 'alkalinityEq', -10))
    digits(amount, 25.56, 2)
    digits(10 / amount, 0.391, 3)
  })

  test('muriatic acid 14.5 %: 60.1 fl oz takes 10 mg/L', () => {
    digits(flOz('muriatic-acid-14', grams('muriatic-acid-14', 'alkalinityEq', -10)), 60.1, 1)
  })

  test('sodium bisulfate: 2.00 lb pure; an operator course worksheet’s 63 lb for 60,000 gal, 150 to 100 mg/L, is 95 % pure', () => {
    digits((grams('dry-acid', 'alkalinityEq', -10) * 0.932) / LB_G, 2.0, 2)
    const worksheetLb = (grams('dry-acid-95', 'alkalinityEq', -50) * 6) / LB_G
    // the worksheet rounds 2.108 lb per 10 mg/L to 2.1
    expect(Math.abs(worksheetLb - 63)).toBeLessThan(0.3)
  })

  test('calcium chloride: per 10 mg/L 0.925 lb pure, 1.202 lb at 77 %', () => {
    const pureG = grams('calcium-chloride-flake', 'calciumMol', 10) * 0.785
    digits(pureG / LB_G, 0.925, 3)
    digits(pureG / 0.77 / LB_G, 1.202, 3)
    digits((grams('calcium-chloride-anhydrous', 'calciumMol', 10) * 0.955) / LB_G, 0.925, 3)
  })

  test('an operator course worksheet by an own product at 95 %: 2.1 lb × 5 × 6 = 63 lb of bisulfate for 60,000 gal, 150 to 100 mg/L', () => {
    const product = atStrength('dry-acid', 95)
    const per10 = (-10 / effectOf(product, 'alkalinityEq')) * VOLUME_M3
    digits(per10 / LB_G, 2.1, 1)
    expect(2.1 * 5 * 6).toBeCloseTo(63, 9)
    expect(Math.abs((per10 * 5 * 6) / LB_G - 63)).toBeLessThan(0.3)
    // pure bisulfate is 2.00 lb
    digits((-10 / effectOf(atStrength('dry-acid', 100), 'alkalinityEq')) * (VOLUME_M3 / LB_G), 2.0, 2)
  })

  test('calcium chloride by its label: per 10 mg/L 0.984 lb at 94 %, 1.202 at 77 %, 1.226 as the dihydrate', () => {
    const pounds = (product: Product) => (10 / effectOf(product, 'calciumMol')) * (VOLUME_M3 / LB_G)
    digits(pounds(atStrength('calcium-chloride-anhydrous', 94)), 0.984, 3)
    digits(pounds(atStrength('calcium-chloride-flake', 77)), 1.202, 3)
    // the pure dihydrate is 110.984 / 147.015 calcium chloride
    digits(pounds(atStrength('calcium-chloride-flake', (100 * 110.984) / 147.015)), 1.226, 3)
    // “1.2 lb of 77 %” of the handbooks
    digits(pounds(atStrength('calcium-chloride-flake', 77)), 1.2, 1)
  })

  test('rounded rules of the trade are a little low: 13 oz of stabiliser by 2.6 %, 10 fl oz of 12.5 % by 2.4 %', () => {
    const stabiliserOz = grams('cyanuric-acid', 'cyanurateMol', 10) / OZ_G
    digits((1 - 13 / stabiliserOz) * 100, 2.6, 1)
    const chlorineFlOz = flOz('liquid-chlorine-12', grams('liquid-chlorine-12', 'chlorineMol', 1))
    // 2.36 of the exact amount; 2.4 of the rule
    digits((chlorineFlOz / 10 - 1) * 100, 2.4, 1)
    digits(chlorineFlOz * FL_OZ_ML, 303, 0)
  })

  test('soda ash 400.9 g and 14.1 oz; borates 23.9, 36.8 and 28.1 lb; stabiliser 0.835 lb', () => {
    digits(grams('soda-ash', 'alkalinityEq', 10), 400.9, 1)
    digits(grams('soda-ash', 'alkalinityEq', 10) / OZ_G, 14.1, 1)
    digits(grams('boric-acid', 'boronMol', 50) / LB_G, 23.9, 1)
    digits(grams('borax-10', 'boronMol', 50) / LB_G, 36.8, 1)
    digits(grams('borax-5', 'boronMol', 50) / LB_G, 28.1, 1)
    // 0.8345: printed 0.835, half a digit up
    expect(Math.abs(grams('cyanuric-acid', 'cyanurateMol', 10) / LB_G - 0.835)).toBeLessThan(0.001)
  })

  test('a season of pure calcium hypochlorite, 3 mg/L a day for 100 days, brings 212 mg/L of hardness', () => {
    const pure = atStrength('cal-hypo-68', 100)
    digits((300 * effectOf(pure, 'calciumMol')) / effectOf(pure, 'chlorineMol'), 212, 0)
  })

  test('cyanuric acid: 13.35 oz (378.5 g) per 10 mg/L', () => {
    const g = grams('cyanuric-acid', 'cyanurateMol', 10)
    digits(g, 378.5, 1)
    digits(g / OZ_G, 13.35, 2)
  })

  test('liquid chlorine: 10.24 fl oz of 12.5 % and 12.8 fl oz of 10 % per 1 mg/L', () => {
    digits(flOz('liquid-chlorine-12', grams('liquid-chlorine-12', 'chlorineMol', 1)), 10.24, 2)
    digits(flOz('liquid-chlorine-10', grams('liquid-chlorine-10', 'chlorineMol', 1)), 12.8, 1)
  })

  test('calcium hypochlorite: 2.05, 1.96 and 1.83 oz of 65, 68 and 73 % per 1 mg/L, with 0.706 mg/L of hardness', () => {
    digits(grams('cal-hypo-65', 'chlorineMol', 1) / OZ_G, 2.05, 2)
    digits(grams('cal-hypo-68', 'chlorineMol', 1) / OZ_G, 1.96, 2)
    digits(grams('cal-hypo-73', 'chlorineMol', 1) / OZ_G, 1.83, 2)
    // pure Ca(OCl)2; the product's lime and chalk bring a little more
    const hardness = effect('cal-hypo-68', 'calciumMol') / effect('cal-hypo-68', 'chlorineMol')
    expect(hardness).toBeGreaterThan(0.706)
    expect(hardness).toBeLessThan(0.706 * 1.15)
  })

  test('trichlor: 1.48 oz at 90 % per 1 mg/L, with 0.607 mg/L of stabiliser', () => {
    const g = grams('trichlor-tablet', 'chlorineMol', 1)
    digits((g * found('trichlor-tablet').availableChlorine) / 0.9 / OZ_G, 1.48, 2)
    digits(effect('trichlor-tablet', 'cyanurateMol') / effect('trichlor-tablet', 'chlorineMol'), 0.607, 3)
  })

  test('dichlor dihydrate: 2.41 oz at 55.5 % per 1 mg/L, with 0.910 mg/L of stabiliser', () => {
    const g = grams('dichlor', 'chlorineMol', 1)
    digits((g * found('dichlor').availableChlorine) / 0.555 / OZ_G, 2.41, 2)
    digits(effect('dichlor', 'cyanurateMol') / effect('dichlor', 'chlorineMol'), 0.91, 3)
  })

  test('50 mg/L of boron: boric acid 10.83 kg, borax 16.69 kg (10 water) or 12.75 kg (5 water)', () => {
    digits(grams('boric-acid', 'boronMol', 50) / 1000, 10.83, 2)
    digits(grams('borax-10', 'boronMol', 50) / 1000, 16.69, 2)
    digits(grams('borax-5', 'boronMol', 50) / 1000, 12.75, 2)
  })

  test('borax for 50 mg/L of boron brings 115.7 mg/L of alkalinity, 296 fl oz of 31.45 % acid', () => {
    const g = grams('borax-10', 'boronMol', 50)
    const alkalinity = (g / VOLUME_M3) * effect('borax-10', 'alkalinityEq')
    digits(alkalinity, 115.7, 1)
    digits(flOz('muriatic-acid-31', grams('muriatic-acid-31', 'alkalinityEq', -alkalinity)), 296, 0)
  })
})

describe('facts of the trade (common practice, no source) for 23,000 US gallons', () => {
  const scale = 2.3

  test('about 55 lb of boric acid brings it to 50 mg/L as boron', () => {
    const pounds = (grams('boric-acid', 'boronMol', 50) * scale) / LB_G
    digits(pounds, 54.9, 1)
    expect(Math.abs(pounds - 55)).toBeLessThan(1)
  })

  test('a quarter gallon of 12.5 % liquid chlorine is a little over 1 mg/L', () => {
    const mL = 3785.411784 / 4
    const rise =
      ((mL * found('liquid-chlorine-12').densityGPerML) / (VOLUME_M3 * scale)) *
      effect('liquid-chlorine-12', 'chlorineMol')
    expect(rise).toBeGreaterThan(1)
    expect(rise).toBeLessThan(1.5)
    digits(rise, 1.36, 2)
  })

  test('a stabiliser bag of a few kilograms makes 30 to 40 mg/L', () => {
    const kilograms = (mgPerL: number) => (grams('cyanuric-acid', 'cyanurateMol', mgPerL) * scale) / 1000
    digits(kilograms(30), 2.61, 2)
    digits(kilograms(40), 3.48, 2)
  })
})
