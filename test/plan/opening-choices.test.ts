import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { deltaOf, productById, productsWith } from '../../src/chemicals/index.ts'
import { runCommandLine } from '../../src/cli/run.ts'
import { checkOpening } from '../../src/plan/check-input.ts'
import {
  deckCard,
  defaultTargets,
  isInside,
  type KnownReading,
  type OpeningPlan,
  openingPlan,
  type Targets,
  targetDoses,
} from '../../src/plan/index.ts'
import { swapRemarks } from '../../src/plan/opening-marks.ts'
import { CONSTANT_SETS, MG_CACO3_PER_EQ, type WaterReading } from '../../src/water/index.ts'
import { good } from '../water/golden.ts'
import { BALANCED, doses, FRESH, HOUR, input, NOW, plan } from './opening-cases.ts'

const MODEL = readFileSync(join(import.meta.dirname, '../../src/plan/MODEL.md'), 'utf8')
const used = (of: OpeningPlan) => new Set(doses(of).map((line) => line.productId))
const grams = (of: OpeningPlan, id: string) =>
  doses(of).reduce((sum, line) => sum + (line.productId === id ? line.amountG : 0), 0)

describe('ways to the same bands', () => {
  const borated = { regimeId: 'unstabilised' }

  test('least salt leaves the least sodium, chloride and sulfate behind, and still ends in every band', () => {
    const salt = (of: OpeningPlan) =>
      doses(of).reduce((sum, line) => {
        const { product } = good(productById(line.productId))
        const parts = product.contains.map((part) => part.formula).join(' ')
        return sum + (/Na|Cl|SO4/i.test(parts) ? line.amountG : 0)
      }, 0)
    const usual = plan(FRESH, borated)
    const least = plan(FRESH, { ...borated, objective: 'least-salt' })
    const dried = (of: OpeningPlan) => of.endWater!.reading.salt_mg_per_L_as_NaCl!
    expect(dried(least)).toBeLessThanOrEqual(dried(usual) + 1e-6)
    expect(salt(least)).toBeGreaterThan(0)
    for (const [key, band] of Object.entries(input(FRESH, borated).targets))
      expect(isInside(least.endWater!.reading[key as 'pH']!, band!), key).toBe(true)
  })

  test('cheapest follows the owner’s prices: borax with acid, or boric acid', () => {
    const priced = (boric: number, borax: number) => {
      const packs = (id: string, perG: number) =>
        good(productById(id)).product.packages.map((pack) => ({
          product: id,
          packageLabel: pack.label,
          price: perG * pack.massG,
        }))
      const productList = productsWith(
        [],
        [
          ...packs('boric-acid', boric),
          ...packs('borax-10', borax),
          ...['muriatic-acid-31', 'dry-acid', 'sodium-bicarbonate', 'soda-ash', 'liquid-chlorine-12'].flatMap((id) =>
            packs(id, 0.001),
          ),
          ...packs('calcium-chloride-flake', 0.001),
        ],
      )
      return plan(FRESH, { ...borated, objective: 'cheapest', productList })
    }
    const dearBoric = priced(1, 0.001)
    expect(used(dearBoric).has('borax-10')).toBe(true)
    expect(used(dearBoric).has('boric-acid')).toBe(false)
    expect(dearBoric.warnings.join(' ')).toContain('instead of Boric acid')
    expect(used(priced(0.001, 1)).has('boric-acid')).toBe(true)
  })

  test('what the owner chose is never swapped while it works', () => {
    const of = plan(FRESH, { ...borated, objective: 'least-salt', products: { borate: 'borax-10' } })
    expect(used(of).has('boric-acid')).toBe(false)
  })

  test('one soda does for pH and alkalinity where both are low; bicarbonate where pH is right', () => {
    const soft = { ...BALANCED, pH: 6.9, ta_mg_per_L_as_CaCO3: 62 }
    expect([...used(plan(soft))]).toEqual(['soda-ash'])
    expect([...used(plan({ ...BALANCED, ta_mg_per_L_as_CaCO3: 55 }))]).toEqual(['sodium-bicarbonate'])
  })

  test('high alkalinity: acid and air over days, which may be left out', () => {
    const of = plan({ ...BALANCED, pH: 7.7, ta_mg_per_L_as_CaCO3: 220 })
    const lowering = doses(of).filter((line) => line.title === 'Lower alkalinity')
    expect(lowering.length).toBeGreaterThan(1)
    expect(of.lines.filter((line) => line.kind === 'aerate').every((line) => line.isOptional)).toBe(true)
    expect(of.endWater!.reading.ta_mg_per_L_as_CaCO3).toBeLessThanOrEqual(120 + 1e-6)
  })
})

describe('purchases', () => {
  const productList = productsWith(
    [],
    good(productById('calcium-chloride-flake')).product.packages.map((pack) => ({
      product: 'calcium-chloride-flake',
      packageLabel: pack.label,
      price: pack.massG / 500,
    })),
  )
  test('a sum only where every price is known, else how many are not', () => {
    const all = plan(FRESH, { productList })
    expect(all.purchaseSum.cost).toBeUndefined()
    expect(all.purchaseSum.pricesUnknown).toBe(all.purchases.length - 1)
    const one = plan({ ...BALANCED, ch_mg_per_L_as_CaCO3: 120 }, { productList })
    const [item] = one.purchases
    expect(one.purchases).toHaveLength(1)
    expect(one.purchaseSum).toEqual({ pricesUnknown: 0, cost: item!.cost })
    expect(item!.leftoverG).toBeCloseTo(item!.cost! * 500 - item!.needG, 6)
  })

  test('old liquid: what is not in stock is bought, so it is counted and bought at the label’s strength', () => {
    const old = (ageDays?: number) =>
      productsWith([
        {
          id: 'can',
          label: 'Can',
          like: 'liquid-chlorine-12',
          strength: 12.5,
          basis: 'trade-percent',
          ageDays,
          storedC: 30,
        },
      ])
    const low = { ...BALANCED, fc_mg_per_L_as_Cl2: 0 }
    const products = { openingChlorine: 'can' }
    const fresh = plan(low, { products, productList: old() })
    const none = plan(low, { products, productList: old(365) })
    expect(grams(none, 'can')).toBeCloseTo(grams(fresh, 'can'), 6)
    expect(none.purchases).toEqual(fresh.purchases)
    expect(none.warnings.join(' ')).toContain('as the label has it')

    const { ageing } = good(productById('can', old(365))).product
    const ratio = ageing!.labelPercent / ageing!.percent
    expect(ratio).toBeGreaterThan(4)
    const stockG = { can: 1000 }
    const some = plan(low, { products, productList: old(365), stockG })
    expect(grams(some, 'can') / grams(fresh, 'can')).toBeCloseTo(ratio, 6)
    const [item] = some.purchases
    expect(item!.missingFreshG).toBeCloseTo((grams(some, 'can') - 1000) / ratio, 6)
    expect(item!.count).toBe(1)
    const line = doses(some).find(({ productId }) => productId === 'can')!
    expect(line.cautions[0]).toContain('Only 1000 g of this amount is in stock')
    expect(line.cautions[0]).toContain('of a freshly bought one')
    expect(line.packages).toBeUndefined()
    const enough = plan(low, { products, productList: old(365), stockG: { can: 20_000 } })
    expect(enough.purchases[0]!.count).toBe(0)
    expect(enough.purchases[0]!.leftoverG).toBeCloseTo(20_000 - grams(enough, 'can'), 6)
    expect(doses(enough)[0]!.cautions[0]).toContain('The same from a freshly bought one would be')
  })

  test('cheapest without any price changes nothing, and one price of a size is what is bought', () => {
    const hard = { ...BALANCED, ch_mg_per_L_as_CaCO3: 120 }
    const usual = plan(hard)
    const unpriced = plan(hard, { objective: 'cheapest' })
    expect(unpriced.purchases).toEqual(usual.purchases)
    expect([...used(unpriced)]).toEqual(['calcium-chloride-flake'])
    const flake = good(productById('calcium-chloride-flake')).product
    const pack = flake.packages.find(({ massG }) => massG === 10_000)!
    const priced = productsWith([], [{ product: flake.id, packageLabel: pack.label, price: 20 }])
    for (const objective of ['cheapest', 'fewest-products'] as const) {
      const of = plan(hard, { objective, productList: priced })
      const count = Math.ceil(of.purchases[0]!.needG / 10_000)
      expect(of.purchases[0]).toMatchObject({ productId: flake.id, packageLabel: pack.label, count, cost: 20 * count })
      expect(of.purchaseSum).toEqual({ pricesUnknown: 0, cost: 20 * count })
    }
  })

  test('cheapest is by the packages that have to be bought, not by the gram', () => {
    // 64 mg/L more takes 5.5 kg of flake, so 10 kg bought, but 4.5 kg without water, so 5 kg
    const targets = defaultTargets('plaster', 'stabilised', {
      ch_mg_per_L_as_CaCO3: { low: 230, aim: 264, high: 400 },
    })
    const soft = { ...BALANCED, ch_mg_per_L_as_CaCO3: 200 }
    const priced = (id: string, perKg: number) =>
      good(productById(id)).product.packages.map(({ label, massG }) => ({
        product: id,
        packageLabel: label,
        price: (perKg * massG) / 1000,
      }))
    const prices = [...priced('calcium-chloride-flake', 1), ...priced('calcium-chloride-anhydrous', 1.8)]
    const of = plan(soft, { objective: 'cheapest', targets, productList: productsWith([], prices) })
    expect(of.purchaseSum).toEqual({ pricesUnknown: 0, cost: 9 })
    expect([...used(of)]).toEqual(['calcium-chloride-anhydrous'])
    expect(of.warnings.join(' ')).toContain('by your prices what has to be bought costs less')
  })

  test('a swap says which reason it has', () => {
    const usual = good(checkOpening(input(FRESH)))
    const products = { ...usual, base: good(productById('borax-10')).product }
    const lines = doses(plan({ ...BALANCED, pH: 7, ta_mg_per_L_as_CaCO3: 57 }))
    const words = (swappedFor: 'reach' | 'objective') =>
      swapRemarks(usual, { products, swappedFor }, lines, input(FRESH, { objective: 'least-salt' }))
    expect(words('reach')).toEqual([expect.stringContaining('cannot all be reached')])
    expect(words('objective')).toEqual([expect.stringContaining('less salt stays in the water')])
    const soft = { ...BALANCED, pH: 7, ta_mg_per_L_as_CaCO3: 57, ch_mg_per_L_as_CaCO3: 47, fc_mg_per_L_as_Cl2: 1 }
    const start = { ...soft, cya_mg_per_L: 0, borate_mg_per_L_as_B: 27, salt_mg_per_L_as_NaCl: 1000, temperature_C: 24 }
    // borax only where borate is asked for: else it would move what has no target
    const usualTargets = defaultTargets('vinyl', 'stabilised', {})
    const borate = { low: 0, aim: 30, high: 60, source: 'own', isOwn: true }
    const least = (targets: Targets) => plan(start, { objective: 'least-salt', surface: 'vinyl', targets })
    expect(least({ ...usualTargets, borate_mg_per_L_as_B: borate }).warnings).toContain(words('objective')[0])
    expect(least(usualTargets).warnings).not.toContain(words('objective')[0])
  })

  test('an own product is dosed by its own strength', () => {
    const own = productsWith([
      { id: 'weak-acid', label: 'Weak acid', like: 'muriatic-acid-31', strength: 15.725, basis: 'percent-by-mass' },
    ])
    const high = { ...BALANCED, pH: 8.1 }
    const strong = plan(high)
    const weak = plan(high, { productList: own, products: { acid: 'weak-acid' } })
    expect(grams(weak, 'weak-acid') / grams(strong, 'muriatic-acid-31')).toBeCloseTo(2, 2)
  })
})

describe('words that say the true reason', () => {
  const problem = (pH: { low: number; aim: number; high: number }) => {
    const answer = openingPlan(input(FRESH, { targets: { pH: { ...pH, source: '', isOwn: true } } }))
    if (answer.ok) throw new Error('such a band is a Problem')
    return answer.problem
  }
  test.each([
    [{ low: 5, aim: 5, high: 5 }, 'band-out-of-range', 'between 6.5 and 8.5'],
    [{ low: 9.5, aim: 10, high: 12 }, 'band-out-of-range', 'from 9.5 to 12'],
    [{ low: -1, aim: 7, high: 8 }, 'band-not-numbers', 'below zero'],
    [{ low: 7, aim: Number.NaN, high: 8 }, 'band-not-numbers', 'no number'],
    [{ low: 7.8, aim: 7.5, high: 7.2 }, 'band-upside-down', 'does not run low, aim, high'],
  ])('a pH band %j is a Problem %s', (band, code, words) => {
    expect(problem(band)).toMatchObject({ code, path: 'targets.pH', what: expect.stringContaining(words) })
    expect(problem(band).what).toContain('band of pH')
  })

  test('a borate dose says what a child and a dog take in from the water it leaves; no other dose does', () => {
    const of = plan(FRESH, { regimeId: 'unstabilised' })
    const withWords = doses(of).filter((line) => line.cautions.some((text) => text.includes('mg of boron')))
    expect(withWords.map((line) => line.productId)).toEqual(['boric-acid'])
    // 45 mg/L × 48 mL = 2.16 mg of 15 kg × 0.2 mg/kg = 3 mg; 45 mg/L × 500 mL / 10 kg = 2.25 mg/kg (EPA reference dose, seen)
    expect(withWords[0]!.after.reading.borate_mg_per_L_as_B).toBeCloseTo(45, 6)
    expect(withWords[0]!.cautions.at(-1)).toMatch(/45 mg\/L.* 2\.2 mg of boron, 72 %.* 2\.3 mg per kg.*pregnant/)
  })
})

describe('lines that dose nothing', () => {
  test('are ticked by their key, as long as no newer readings came', () => {
    const key = 'measure'
    const state = (atMs: number) =>
      plan(FRESH, { doneKeys: [{ key, atMs }] }).lines.find((line) => line.key === key)!.state
    expect(state(NOW)).toBe('done')
    expect(state(NOW - 2 * HOUR)).toBe('later')
    const circulated = plan(FRESH, { doneKeys: [{ key: 'circulate', atMs: NOW - 2 * HOUR }] })
    expect(circulated.lines.find((line) => line.key === 'circulate')!.state).toBe('done')
  })

  test('the line about unread metals keeps its place as doses are ticked, so no other line gets a new number', () => {
    const open = plan(FRESH)
    const first = doses(open)[0]!
    const given = { line: first.key, product: first.productId, amountG: first.amountG, atMs: NOW }
    const ticked = plan(FRESH, { given: [given], nowMs: NOW + HOUR })
    const place = (of: OpeningPlan, key: string) => of.lines.findIndex((line) => line.key === key)
    expect(place(ticked, 'metals')).toBe(place(open, 'metals'))
    expect(place(ticked, first.key)).toBe(place(open, first.key))
    // nobody tested for them: a dose does not tick that off
    expect(ticked.lines.find(({ key }) => key === 'metals')!.state).toBe('next')
  })

  test('metals above their limits stand before every dose until they are ticked', () => {
    const metals = { iron_mg_per_L: 0.6, copper_mg_per_L: 0.05 }
    const open = plan(FRESH, { metals, helpers: ['mineral-cartridge'] })
    const line = open.lines.find((each) => each.kind === 'metals')!
    expect(line.why).toContain('Iron 0.6 mg/L, above 0.2')
    expect(line.how).toContain('sequestrant')
    expect(line.cautions.join(' ')).toContain('cartridge stays out')
    expect(doses(open).every((dose) => dose.state === 'later')).toBe(true)
    const ticked = plan(FRESH, { metals, doneKeys: [{ key: 'metals', atMs: NOW }] })
    expect(doses(ticked)[0]!.state).toBe('next')
    const clear = plan(FRESH, { metals: { iron_mg_per_L: 0.02, copper_mg_per_L: 0.02 } })
    expect(clear.lines.some((each) => each.kind === 'metals')).toBe(false)
  })

  test('a plan of days asks for chlorine each evening, with the dose for each mg/L and the range of the loss', () => {
    const line = plan(FRESH).lines.find((each) => each.key === 'keep-chlorine')!
    expect(line.how).toContain('bring it back to 3 mg/L')
    // 60 m³ at 12 % by mass: 0.107 mg/L for each g/m³
    expect(line.how).toContain('560 g')
    expect(line.why).toMatch(/between .* in open summer sun and 2\.\d mg\/L in the dark/)
    expect(plan(BALANCED).lines.some((each) => each.key === 'keep-chlorine')).toBe(false)
  })

  test('stabiliser hangs in a sock for days instead of being poured', () => {
    const line = doses(plan(FRESH)).find((dose) => dose.purpose === 'stabiliser')!
    expect(line.pours).toHaveLength(1)
    expect(line.how).toContain('sock')
    expect(line.waitHours).toBeGreaterThanOrEqual(24)
  })
})

describe('what is said of the end and of the targets', () => {
  test('a slightly negative calcite SI is remarked on over plaster, not over vinyl', () => {
    const soft = { ...BALANCED, ch_mg_per_L_as_CaCO3: 210, temperature_C: 20 }
    const said = (surface: 'plaster' | 'vinyl') =>
      plan(soft, { surface, targets: defaultTargets(surface, 'stabilised', {}) }).warnings.join(' ')
    expect(said('plaster')).toMatch(/calcite SI −0\.\d\d\b.*plaster/)
    expect(said('vinyl')).not.toContain('calcite SI')
  })

  test('a target outside a code or a maker’s range warns with the reason, and is kept', () => {
    const targets = defaultTargets('plaster', 'unstabilised', {
      pH: { low: 6.8, aim: 7.2, high: 7.6 },
      borate_mg_per_L_as_B: { low: 60, aim: 70, high: 80 },
      ch_mg_per_L_as_CaCO3: { low: 100, aim: 120, high: 150 },
    })
    const of = plan(BALANCED, { targets, regimeId: 'unstabilised' })
    const at = (key: string) => of.targetWarnings.find((problem) => problem.path === `targets.${key}`)
    expect(at('pH')).toMatchObject({ code: 'target-outside-code', what: expect.stringContaining('below 7') })
    expect(at('borate_mg_per_L_as_B')).toMatchObject({ code: 'target-outside-makers-range' })
    expect(at('ch_mg_per_L_as_CaCO3')!.hint).toContain('maker')
    for (const problem of of.targetWarnings) expect(problem.why).not.toBe('')
    expect(of.endWater!.reading.pH).toBeLessThanOrEqual(7.6)
    expect(plan(BALANCED).targetWarnings).toEqual([])
  })
})

describe('the ceiling of the rules', () => {
  const low = { ...BALANCED, fc_mg_per_L_as_Cl2: 0.5 }
  const endOf = (of: OpeningPlan) => of.endWater!.reading.fc_mg_per_L_as_Cl2

  test('lowers the band, so that no dose goes above what lets people bathe; the deck card goes by it too', () => {
    expect(endOf(plan(low))).toBeCloseTo(3, 6)
    expect(endOf(plan(low, { chlorineCeilingMgPerL: 2.5 }))).toBeCloseTo(2.5, 6)
    const row = good(deckCard(input(low, { chlorineCeilingMgPerL: 2.5 }))).rows.find(
      ({ reading }) => reading === 'fc_mg_per_L_as_Cl2',
    )
    expect(row!.band).toMatchObject({ low: 2, aim: 2.5, high: 2.5 })
  })

  test('leaves an own band as it is, with a warning', () => {
    const targets = defaultTargets('plaster', 'stabilised', { fc_mg_per_L_as_Cl2: { low: 3, aim: 5, high: 6 } })
    const of = plan(low, { targets })
    expect(endOf(of)).toBeCloseTo(5, 6)
    expect(of.targetWarnings.map(({ code }) => code)).toEqual(['target-outside-code'])
  })

  test('below the floor leaves nothing to dose toward: one problem names the clash', () => {
    const of = plan(low, { chlorineFloorMgPerL: 5 })
    expect(doses(of).filter(({ purpose }) => purpose === 'openingChlorine')).toEqual([])
    expect(of.lines.map(({ key }) => key)).not.toContain('keep-chlorine')
    expect(of.targetWarnings.map(({ code }) => code)).toEqual(['floor-above-ceiling'])
    expect(of.targetWarnings[0]!.what).toContain('5 mg/L, is above the most, 4 mg/L')
    expect(of.targetWarnings[0]!.hint).toContain('Check your own floor and ceiling')
    expect(of.bathing.cleared).toBe(false)
    const card = good(deckCard(input(low, { chlorineFloorMgPerL: 5 })))
    expect(card.rows.map(({ reading }) => reading)).not.toContain('fc_mg_per_L_as_Cl2')
    expect(card.cautions[0]).toContain('5 mg/L, is above the most, 4 mg/L')
  })
})

describe('deviations', () => {
  test('a measured reading after a line plans anew from there, with the keys of what is left unchanged', () => {
    const before = plan(FRESH)
    const calcium = doses(before).find((line) => line.purpose === 'calcium')!
    const given = doses(before)
      .slice(0, doses(before).indexOf(calcium) + 1)
      .map((line, at) => ({ line: line.key, product: line.productId, amountG: line.amountG, atMs: NOW + at * HOUR }))
    const expected = calcium.after.reading as KnownReading
    const measured: KnownReading = { ...expected, ch_mg_per_L_as_CaCO3: 190 }
    const after = plan(measured, { given, measuredAtMs: NOW + 30 * HOUR, nowMs: NOW + 31 * HOUR })
    const again = doses(after).find((line) => line.purpose === 'calcium')!
    expect(again.state).not.toBe('done')
    expect(again.key).toBe('calcium')
    expect(again.after.reading.ch_mg_per_L_as_CaCO3).toBeCloseTo(275, 6)
    expect(grams(after, 'calcium-chloride-flake')).toBeLessThan(grams(before, 'calcium-chloride-flake'))
  })

  test('a line that usually comes before what was ticked says why it is where it is', () => {
    const calcium = doses(plan(FRESH)).find((line) => line.purpose === 'calcium')!
    const given = [{ line: 'calcium', product: calcium.productId, amountG: calcium.amountG, atMs: NOW }]
    const rest = doses(plan(FRESH, { given })).filter((line) => line.state !== 'done')
    const early = rest.find((line) => line.purpose === 'alkalinity')!
    expect(early.exception).toContain('given already')
  })
})

/** Published worked figures, each with where it is from. */
describe('worksheets', () => {
  const L_PER_US_GAL = 3.785411784
  const G_PER_LB = 453.59237

  test('operator course worksheet, 60,000 gal from 150 to 100 mg/L: 2.1 × 5 × 6 = 63 lb of dry acid (seen)', () => {
    const { product } = good(productById('dry-acid-95'))
    const volumeM3 = (60_000 * L_PER_US_GAL) / 1000
    const perGram = Math.abs(deltaOf(product, 1).alkalinityEq ?? 0) * MG_CACO3_PER_EQ
    const lb = ((50 / perGram) * volumeM3) / G_PER_LB
    expect(lb).toBeGreaterThan(0.99 * 63)
    expect(lb).toBeLessThan(1.01 * 63)
    expect(MODEL).toContain(`dry acid 95 % [lb] | 63 | ${lb.toFixed(1)} |`)
  })

  test('acid regression for 31.45 % acid to pH 7.2, fl oz for 10,000 gal (Wojtowicz, JSPSI 5(1):39–56, seen second-hand)', () => {
    const FL_OZ_ML = 29.5735295625
    const { product } = good(productById('muriatic-acid-31'))
    const volumeM3 = (10_000 * L_PER_US_GAL) / 1000
    const regression = (pH: number, ta: number, cya: number) => -237.34 + 29.894 * pH + 0.244 * ta + 0.1276 * cya
    for (const [ta, cya] of [
      [100, 50],
      [80, 30],
      [120, 60],
    ] as const) {
      const from: WaterReading = {
        ...BALANCED,
        pH: 8,
        ta_mg_per_L_as_CaCO3: ta,
        cya_mg_per_L: cya,
        fc_mg_per_L_as_Cl2: 0,
      }
      const made = good(targetDoses(from, { pH: 7.2 }, ['muriatic-acid-31'], CONSTANT_SETS.default))
      const flOz = (made.doses[0]!.gPerM3! * volumeM3) / product.densityGPerML / FL_OZ_ML
      // a linear fit: 12 % is what it agrees to between pH 7.8 and 8.2, and below that it breaks down
      expect(Math.abs(flOz / regression(8, ta, cya) - 1), `TA ${ta} CYA ${cya}: ${flOz}`).toBeLessThan(0.12)
      if (ta === 100) expect(MODEL).toContain(`31.45 % acid [fl oz] | 32.6 | ${flOz.toFixed(1)} |`)
    }
  })
})

describe('the command line’s dose agrees with the plan', () => {
  test('every line of a plan, given one after the other', () => {
    let checks = 0
    for (const regimeId of ['stabilised', 'unstabilised', 'salt'])
      for (const start of [FRESH, { ...FRESH, pH: 6.8, ta_mg_per_L_as_CaCO3: 30 }, { ...FRESH, pH: 8.3 }]) {
        const add: { product: string; gPerM3: number }[] = []
        for (const line of plan(start, { regimeId }).lines) {
          if (line.kind === 'aerate') break
          if (line.kind !== 'dose') continue
          add.push({ product: line.productId, gPerM3: line.amountG / 60 })
          const { stdout, exitCode } = runCommandLine(['dose', '-'], {
            readInput: () => JSON.stringify({ start, add }),
            nowMs: NOW,
          })
          expect(exitCode).toBe(0)
          const answer = JSON.parse(stdout) as { readonly after_closed: { readonly pH: number } }
          expect(answer.after_closed.pH).toBeCloseTo(line.after.reading.pH, 6)
          checks++
        }
      }
    expect(checks).toBeGreaterThan(25)
  })
})
