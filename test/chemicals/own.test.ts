import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  basesOf,
  deltaPerGram,
  doseDelta,
  LIKE_IDS,
  type OwnProduct,
  ownProduct,
  PRODUCTS,
  productById,
  productsWith,
} from '../../src/chemicals/index.ts'
import { activePercentOf } from '../../src/chemicals/own-strength.ts'
import { addTotals, MOLAR_MASSES_G_PER_MOL, PURE_WATER, strongIonChargeEq, TOTAL_KEYS } from '../../src/water/index.ts'
import { good } from '../water/golden.ts'

const own = (given: Partial<OwnProduct> & Pick<OwnProduct, 'like' | 'strength' | 'basis'>): OwnProduct => ({
  id: 'mine',
  label: 'Mine',
  ...given,
})
const problemOf = (given: OwnProduct) => {
  const answer = ownProduct(given)
  if (answer.ok) throw new Error(`${given.like} at ${given.strength} was taken`)
  return answer.problem
}
const chlorineOf = (given: OwnProduct) => good(ownProduct(given)).availableChlorine

describe('a product from its label', () => {
  test.each(LIKE_IDS.map((id) => PRODUCTS.get(id)!))(
    'at the strength of $id it does to the water exactly what $id does',
    (like) => {
      const strength = activePercentOf(like, like.active!)
      const same = good(
        ownProduct(own({ like: like.id, strength, basis: 'percent-by-mass', densityKgPerL: like.densityGPerML })),
      )
      for (const key of TOTAL_KEYS)
        expect(deltaPerGram(same)[key] ?? 0, key).toBeCloseTo(deltaPerGram(like)[key] ?? 0, 12)
      expect(same.availableChlorine).toBeCloseTo(like.availableChlorine, 12)
      expect(same.cautions).toEqual(like.cautions)
      expect(same.groups).toEqual(like.groups)
    },
  )

  test.each(
    LIKE_IDS.flatMap((id) => {
      const like = PRODUCTS.get(id)!
      return basesOf(like).map((basis) => ({ id, basis }))
    }),
  )('$id by $basis keeps neutrality, mass and its available chlorine at every strength', ({ id, basis }) => {
    for (const strength of [1, 5, 9, 12.5, 30, 48, 65, 90, 99]) {
      const made = ownProduct(own({ like: id, strength, basis }))
      if (!made.ok) {
        expect(made.problem.code).toBe('own-product-too-strong')
        continue
      }
      const after = addTotals(PURE_WATER, deltaPerGram(made.value))
      expect(Math.abs(strongIonChargeEq(after) - after.alkalinityEq)).toBeLessThan(1e-15)
      const brought = (deltaPerGram(made.value).chlorineMol ?? 0) * MOLAR_MASSES_G_PER_MOL.chlorineAsCl2
      if (made.value.uses.includes('chlorine')) expect(brought).toBeCloseTo(made.value.availableChlorine, 9)
      expect(activePercentOf(made.value, made.value.active!)).toBeLessThanOrEqual(100 + 1e-9)
      const isRounded = made.value.sources.some(({ what }) => what.includes('rounds up'))
      if (isRounded) expect(strength - brought * 100).toBeLessThan(1)
      else if (basis === 'available-chlorine') expect(brought * 100).toBeCloseTo(strength, 6)
      if (basis === 'trade-percent') expect(brought * made.value.densityGPerML * 100).toBeCloseTo(strength, 6)
    }
  })

  test('12.5 trade % at 1.168 kg/L is 10.7 % available chlorine and 11.2 % hypochlorite (definitions, White’s handbook, from memory)', () => {
    const made = good(
      ownProduct(own({ like: 'liquid-chlorine-10', strength: 12.5, basis: 'trade-percent', densityKgPerL: 1.168 })),
    )
    expect(made.availableChlorine * 100).toBeCloseTo(10.7, 1)
    expect(activePercentOf(made, made.active!)).toBeCloseTo(11.2, 1)
  })

  test('the three bases of liquid chlorine agree with one another, with or without a density', () => {
    for (const densityKgPerL of [undefined, 1.1]) {
      const trade = good(
        ownProduct(own({ like: 'liquid-chlorine-12', strength: 8, basis: 'trade-percent', densityKgPerL })),
      )
      const mass = trade.availableChlorine * 100
      const byMass = own({ like: 'liquid-chlorine-12', strength: mass, basis: 'available-chlorine', densityKgPerL })
      expect(chlorineOf(byMass) * good(ownProduct(byMass)).densityGPerML).toBeCloseTo(0.08, 9)
      const hypochlorite = activePercentOf(trade, trade.active!)
      const byActive = own({
        like: 'liquid-chlorine-12',
        strength: hypochlorite,
        basis: 'percent-by-mass',
        densityKgPerL,
      })
      expect(chlorineOf(byActive)).toBeCloseTo(trade.availableChlorine, 9)
      expect(hypochlorite / mass).toBeCloseTo(1.05, 3)
    }
  })

  test('acid density comes from the handbook table: 1.156 at 31.45 %, 1.071 at 14.5 %, 1.048, 1.098, 1.149 at the rows', () => {
    const density = (strength: number) =>
      good(ownProduct(own({ like: 'muriatic-acid-31', strength, basis: 'percent-by-mass' }))).densityGPerML
    expect(density(31.45)).toBeCloseTo(1.156, 3)
    expect(density(14.5)).toBeCloseTo(1.071, 2)
    expect(density(10)).toBe(1.048)
    expect(density(20)).toBe(1.098)
    expect(density(30)).toBe(1.149)
    // 30 % is 9.45 mol/L in the same table
    const acid = good(ownProduct(own({ like: 'muriatic-acid-31', strength: 30, basis: 'percent-by-mass' })))
    expect(-(deltaPerGram(acid).alkalinityEq ?? 0) * acid.densityGPerML * 1000).toBeCloseTo(9.45, 2)
  })

  test('theoretical available chlorine is the most a label may say: 99.2, 91.5, 55.4, 121.4 % (molar masses)', () => {
    const mostOf = (like: string) => chlorineOf(own({ like, strength: 100, basis: 'percent-by-mass' })) * 100
    expect(mostOf('cal-hypo-65')).toBeCloseTo(99.2, 1)
    expect(mostOf('trichlor-tablet')).toBeCloseTo(91.5, 1)
    expect(mostOf('dichlor')).toBeCloseTo(55.4, 1)
    expect(mostOf('lithium-hypochlorite')).toBeCloseTo(121.4, 1)
  })

  test('dichlor sold as 56 % is counted as pure; 62 % is told to be the kind without water', () => {
    const made = good(ownProduct(own({ like: 'dichlor', strength: 56, basis: 'available-chlorine' })))
    expect(made.availableChlorine).toBeCloseTo(0.554, 3)
    expect(made.sources.some(({ what }) => what.includes('rounds up'))).toBe(true)
    expect(problemOf(own({ like: 'dichlor', strength: 62, basis: 'available-chlorine' })).why).toContain(
      'without water',
    )
  })

  test.each([
    ['trichlor-tablet', 95, 'available-chlorine'],
    ['sodium-bicarbonate', 101, 'percent-by-mass'],
    ['muriatic-acid-31', 60, 'percent-by-mass'],
    ['liquid-chlorine-12', 25, 'trade-percent'],
    ['calcium-chloride-flake', 100, 'percent-by-mass'],
  ] as const)('%s at %d by %s is more than there can be', (like, strength, basis) => {
    const problem = problemOf(own({ like, strength, basis }))
    expect(problem.code).toBe('own-product-too-strong')
    expect(problem.path).toBe('strength')
  })

  test('a basis that means nothing for the substance, an unknown or unsuitable like, and nonsense numbers are Problems', () => {
    expect(problemOf(own({ like: 'soda-ash', strength: 90, basis: 'available-chlorine' })).code).toBe(
      'own-product-basis',
    )
    expect(problemOf(own({ like: 'cal-hypo-65', strength: 12, basis: 'trade-percent' })).code).toBe('own-product-basis')
    expect(problemOf(own({ like: 'elixir', strength: 12, basis: 'percent-by-mass' })).code).toBe('own-product-like')
    expect(problemOf(own({ like: 'chlorine-used', strength: 12, basis: 'percent-by-mass' })).code).toBe(
      'own-product-no-strength',
    )
    for (const strength of [0, -3, Number.NaN, Number.POSITIVE_INFINITY])
      expect(problemOf(own({ like: 'salt', strength, basis: 'percent-by-mass' })).code).toBe('own-product-strength')
    for (const densityKgPerL of [0, -1, Number.NaN, 11])
      expect(problemOf(own({ like: 'salt', strength: 99, basis: 'percent-by-mass', densityKgPerL })).path).toBe(
        'densityKgPerL',
      )
    const packages = [{ label: 'jug', massG: 0 }]
    expect(problemOf(own({ like: 'salt', strength: 99, basis: 'percent-by-mass', packages })).path).toBe('packages[0]')
  })

  test('packages are the owner’s with their prices; a liquid without any keeps the generic litres at its own density', () => {
    const jug = { label: 'jug', massG: 4000, price: 6.5 }
    const made = good(ownProduct(own({ like: 'salt', strength: 99, basis: 'percent-by-mass', packages: [jug] })))
    expect(made.packages).toEqual([{ ...jug, system: 'metric' }])
    const thin = good(ownProduct(own({ like: 'liquid-chlorine-12', strength: 5, basis: 'trade-percent' })))
    const litre = thin.packages.find(({ label }) => label === '10 L')
    expect(litre?.massG).toBeCloseTo(10_000 * thin.densityGPerML, 6)
  })

  test('liquid chlorine that stood loses strength, keeps its sodium and stays neutral', () => {
    const label = own({ like: 'liquid-chlorine-12', strength: 12.5, basis: 'trade-percent', densityKgPerL: 1.168 })
    const fresh = good(ownProduct(label))
    const old = good(ownProduct({ ...label, ageDays: 90, storedC: 25 }))
    expect(old.ageing!.labelPercent).toBe(12.5)
    expect(old.ageing!.percent).toBeLessThan(12.5)
    expect(old.ageing!.low).toBeLessThan(old.ageing!.percent)
    expect(old.availableChlorine / fresh.availableChlorine).toBeCloseTo(old.ageing!.percent / 12.5, 12)
    expect(deltaPerGram(old).sodiumMol).toBeCloseTo(deltaPerGram(fresh).sodiumMol!, 15)
    const after = addTotals(PURE_WATER, deltaPerGram(old))
    expect(Math.abs(strongIonChargeEq(after) - after.alkalinityEq)).toBeLessThan(1e-15)
    expect(problemOf({ ...label, ageDays: -1 }).path).toBe('ageDays')
    expect(problemOf({ ...label, ageDays: 3, storedC: 90 }).path).toBe('storedC')
  })
})

describe('a list with own products', () => {
  const acid = own({
    id: 'acid-20',
    label: 'Acid 20 %',
    like: 'muriatic-acid-31',
    strength: 20,
    basis: 'percent-by-mass',
  })

  test('finds own and generic ones; a dose by the own one counts its strength', () => {
    const list = productsWith([acid])
    expect(list.problems).toEqual([])
    expect(good(productById('acid-20', list)).product.likeId).toBe('muriatic-acid-31')
    expect(good(productById('soda-ash', list)).product.id).toBe('soda-ash')
    expect(productById('acid-20').ok).toBe(false)
    const ours = good(doseDelta('acid-20', { mLPerM3: 10 }, list)).alkalinityEq!
    const theirs = good(doseDelta('muriatic-acid-31', { gPerM3: 10 })).alkalinityEq!
    expect(ours / theirs).toBeCloseTo((20 / 31.45) * 1.098, 9)
  })

  test('a bad one stays out, with its path, and asking for it gives its own Problem; the others stay', () => {
    const list = productsWith([{ ...acid, id: 'bad', strength: 80 }, acid])
    expect(list.problems.map(({ path }) => path)).toEqual(['ownProducts[0].strength'])
    const asked = productById('bad', list)
    expect(asked.ok ? '' : asked.problem.code).toBe('own-product-too-strong')
    expect(productById('acid-20', list).ok).toBe(true)
  })

  test('an id that is taken is a Problem, and the first holder keeps it', () => {
    const list = productsWith([{ ...acid, id: 'soda-ash' }, acid, { ...acid, strength: 10 }])
    expect(list.problems.map(({ code, path }) => [code, path])).toEqual([
      ['own-product-id-taken', 'ownProducts[0].id'],
      ['own-product-id-taken', 'ownProducts[2].id'],
    ])
    expect(good(productById('soda-ash', list)).product.label).toBe('Soda ash')
    expect(good(productById('acid-20', list)).product.strength).toContain('20 %')
  })

  test('prices stand on the packages they are for, of generic and own products, by alias too', () => {
    const mine = { ...acid, packages: [{ label: 'jug', massG: 5000, price: 9 }] }
    const list = productsWith(
      [mine],
      [
        { product: 'soda-ash', packageLabel: '5 kg', price: 12 },
        { product: 'acid-20', packageLabel: 'jug', price: 7 },
        { product: 'salt', packageLabel: '3 kg', price: 7 },
        { product: 'elixir', packageLabel: '3 kg', price: 7 },
        { product: 'salt', packageLabel: '25 kg', price: -1 },
      ],
    )
    const priceOf = (name: string, label: string) =>
      good(productById(name, list)).product.packages.find((pack) => pack.label === label)?.price
    expect(priceOf('soda-ash', '5 kg')).toBe(12)
    expect(priceOf('soda ash anhydrous 100 %', '5 kg')).toBe(12)
    expect(priceOf('soda-ash', '10 kg')).toBeUndefined()
    expect(priceOf('acid-20', 'jug')).toBe(7)
    expect(priceOf('salt', '25 kg')).toBeUndefined()
    expect(list.problems.map(({ path }) => path)).toEqual([
      'prices[2].packageLabel',
      'prices[3].packageLabel',
      'prices[4].price',
    ])
    expect(PRODUCTS.get('soda-ash')?.packages.every(({ price }) => price === undefined)).toBe(true)
  })

  test('an alias keeps its basis in a list with own products', () => {
    const name = 'sodium hypochlorite 12.5 trade % (per mL)'
    expect(good(productById(name, productsWith([acid]))).basis).toBe('mL')
  })

  test('whatever a label says, the answer is a neutral product of finite numbers or a Problem (seed 20)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LIKE_IDS, 'chlorine-gas', 'elixir'),
        fc.constantFrom('percent-by-mass', 'trade-percent', 'available-chlorine'),
        fc.oneof(fc.double({ min: 0, max: 120, noNaN: true }), fc.double()),
        fc.option(fc.oneof(fc.double({ min: 0.5, max: 1.7, noNaN: true }), fc.double()), { nil: undefined }),
        fc.option(fc.double({ min: -5, max: 5000 }), { nil: undefined }),
        fc.option(fc.double({ min: -40, max: 80 }), { nil: undefined }),
        (like, basis, strength, densityKgPerL, ageDays, storedC) => {
          const made = ownProduct(own({ like, basis, strength, densityKgPerL, ageDays, storedC }))
          if (!made.ok) {
            expect(made.problem.hint).not.toBe('')
            return
          }
          const after = addTotals(PURE_WATER, deltaPerGram(made.value))
          for (const key of TOTAL_KEYS) expect(Number.isFinite(after[key] ?? 0)).toBe(true)
          expect(Math.abs(strongIonChargeEq(after) - after.alkalinityEq)).toBeLessThan(1e-15)
          expect(made.value.availableChlorine).toBeGreaterThanOrEqual(0)
          expect(made.value.availableChlorine).toBeLessThan(1.22)
          expect(made.value.contains.every(({ gPer100g }) => Number.isFinite(gPer100g))).toBe(true)
        },
      ),
      { seed: 20, numRuns: 3000 },
    )
  })
})
