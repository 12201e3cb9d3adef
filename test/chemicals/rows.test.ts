import { describe, expect, test } from 'vitest'
import { deltaPerGram, PRODUCTS, type Product, productById } from '../../src/chemicals/index.ts'
import { activePercentOf } from '../../src/chemicals/own-strength.ts'
import { formulaMassGPerMol, MOLAR_MASSES_G_PER_MOL } from '../../src/water/index.ts'
import { good } from '../water/golden.ts'

/** Ways of accounting hold reactions, not masses; so do reducers, counted with the chlorine that they use up. */
const isComposition = (row: Product) => !row.isAccounting && !row.groups.includes('reducer')
const composed = PRODUCTS.rows.filter(isComposition)
const of = (id: string) => good(productById(id)).product

/** Grams of a formula in 100 g, without crystal water. */
const massOf = ({ formula, count, gPer100g, gPerMol }: Product['contains'][number]) =>
  ((gPer100g * count) / gPerMol) * formulaMassGPerMol(formula)!

describe('each row of the product table against molar masses and the facts', () => {
  test('there are more than 25 that can be bought, and no two of one name', () => {
    expect(PRODUCTS.rows.filter((row) => !row.isAccounting).length).toBeGreaterThanOrEqual(25)
    const names = PRODUCTS.rows.flatMap((row) => [row.id, row.label, ...row.aliases.map(({ name }) => name)])
    expect(new Set(names).size).toBe(names.length)
  })

  test.each(composed)('$id does not hold more than 100 g in 100 g', (row) => {
    const chlorineGas = row.id === 'chlorine-gas'
    const mass = row.contains.reduce((sum, part) => sum + massOf(part), 0)
    // chlorine takes up a mol of water as it dissolves: 18 g for its 71
    expect(mass).toBeLessThanOrEqual(chlorineGas ? 100 * (1 + 18.0153 / 70.906) + 0.01 : 100.01)
    expect(mass).toBeGreaterThan(row.form === 'liquid' ? 10 : 40)
  })

  test.each(composed.filter((row) => row.active))('$id is no stronger than its substance can be', (row) => {
    expect(activePercentOf(row, row.active!)).toBeLessThanOrEqual(row.active!.mostPercent)
    expect(row.strength).toMatch(/\d/)
  })

  test.each(PRODUCTS.rows.filter((row) => row.contains.some((part) => part.gPer100g > 0)))(
    '$id: the molar mass each part is stated by is one that the formula can have',
    (row) => {
      for (const part of row.contains) {
        const own = formulaMassGPerMol(part.formula)!
        // the substance itself, the substance with whole waters of crystals, chlorine as Cl2, or what it reacts from
        const water = (part.gPerMol - own) / 18.0153
        const isHydrate = water > -0.001 && Math.abs(water - Math.round(water)) < 0.001
        const isChlorine = part.gPerMol === MOLAR_MASSES_G_PER_MOL.chlorineAsCl2
        const isReaction = row.groups.includes('reducer') || row.groups.includes('oxidiser') || row.isAccounting
        expect(isHydrate || isChlorine || isReaction, `${part.formula} by ${part.gPerMol}`).toBe(true)
      }
    },
  )

  test.each(
    PRODUCTS.rows.flatMap((row) => row.packages.map((pack) => ({ row, pack, name: `${row.id} ${pack.label}` }))),
  )('$name weighs what its label says', ({ row, pack }) => {
    const [, digits = '', unit = ''] = /^([\d.]+) (kg|lb|L|US gal)$/.exec(pack.label) ?? []
    const grams: Record<string, number> = {
      kg: 1000,
      lb: 453.59237,
      L: 1000 * row.densityGPerML,
      'US gal': 3785.411784 * row.densityGPerML,
    }
    expect(pack.massG).toBeCloseTo(Number(digits) * grams[unit]!, 6)
    expect(pack.system).toBe(unit === 'kg' || unit === 'L' ? 'metric' : 'us')
  })

  // bulk densities recalled in the trade's tables; none of them was looked up
  test.each([
    ['sodium-bicarbonate', 1.0, 1.2],
    ['calcium-chloride-flake', 0.85, 0.85],
    ['boric-acid', 0.8, 0.9],
    ['borax-10', 0.75, 0.85],
    ['cyanuric-acid', 0.8, 1.0],
  ] as const)('%s is as heavy as recalled, %d to %d g/mL', (id, low, high) => {
    expect(of(id).densityGPerML).toBeGreaterThanOrEqual(low)
    expect(of(id).densityGPerML).toBeLessThanOrEqual(high)
    const { bulkGPerML } = of(id)
    if (bulkGPerML) expect(bulkGPerML).toEqual([low, high])
    expect(of(id).isDensityRough).toBe(true)
  })

  test('hydrochloric acid: 1.16 kg/L and 10.0 mol/L at 31.45 %, 1.071 and 4.26 at 14.5 % (density table; Wojtowicz uses 1.16)', () => {
    const molPerL = (id: string) => -(deltaPerGram(of(id)).alkalinityEq ?? 0) * of(id).densityGPerML * 1000
    expect(molPerL('muriatic-acid-31')).toBeCloseTo(10.0, 1)
    expect(molPerL('muriatic-acid-14')).toBeCloseTo(4.26, 2)
  })

  test.each([
    ['cal-hypo-65', 65],
    ['cal-hypo-68', 68],
    ['cal-hypo-73', 73],
    ['trichlor-tablet', 90.6],
    ['dichlor', 54.8],
    ['dichlor-anhydrous', 60.0],
    ['lithium-hypochlorite', 35],
    ['liquid-chlorine-12', 10.7],
  ] as const)('%s holds %d %% available chlorine', (id, percent) => {
    expect(of(id).availableChlorine * 100).toBeCloseTo(percent, 1)
  })

  test('stabiliser that comes with chlorine: 0.607 of trichlor, 0.910 of both kinds of dichlor (molar masses)', () => {
    const ratio = (id: string) => {
      const { cyanurateMol = 0, chlorineMol = 0 } = deltaPerGram(of(id))
      return (cyanurateMol * MOLAR_MASSES_G_PER_MOL.cyanuricAcid) / (chlorineMol * MOLAR_MASSES_G_PER_MOL.chlorineAsCl2)
    }
    expect(ratio('trichlor-tablet')).toBeCloseTo(0.607, 3)
    expect(ratio('dichlor')).toBeCloseTo(0.91, 3)
    expect(ratio('dichlor-anhydrous')).toBeCloseTo(0.91, 3)
  })

  test('grams per gram of boron: 5.72, 8.82, 6.74 (molar masses)', () => {
    const perBoron = (id: string) => 1 / ((deltaPerGram(of(id)).boronMol ?? 0) * MOLAR_MASSES_G_PER_MOL.boron)
    expect(perBoron('boric-acid')).toBeCloseTo(5.72, 2)
    expect(perBoron('borax-10')).toBeCloseTo(8.82, 2)
    expect(perBoron('borax-5')).toBeCloseTo(6.74, 2)
  })
})
