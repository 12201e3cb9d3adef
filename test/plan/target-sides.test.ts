import { describe, expect, test } from 'vitest'
import { productById, productsWith } from '../../src/chemicals/index.ts'
import { type OpeningPlan, targetDoses } from '../../src/plan/index.ts'
import type { WaterReading } from '../../src/water/index.ts'
import { CONSTANT_SETS } from '../../src/water/index.ts'
import { good } from '../water/golden.ts'
import { BALANCED, doses, plan } from './opening-cases.ts'

const start: WaterReading = { pH: 7.2, ta_mg_per_L_as_CaCO3: 100, fc_mg_per_L_as_Cl2: 1 }
const up = { pH: 7.8, ta_mg_per_L_as_CaCO3: 140 }
const solve = (target: object, ids: readonly string[]) => good(targetDoses(start, target, ids, CONSTANT_SETS.default))

describe('what has no target stays where it is', () => {
  test('bleach on the list is no way to raise pH and alkalinity while soda ash and bicarbonate are there too', () => {
    const answer = solve(up, ['muriatic-acid-31', 'liquid-chlorine-12', 'sodium-bicarbonate', 'soda-ash'])
    expect(answer.doses.map(({ product }) => product)).not.toContain('liquid-chlorine-12')
    expect(answer.after.reading.fc_mg_per_L_as_Cl2).toBeCloseTo(1, 6)
    expect(answer).not.toHaveProperty('moves')
  })

  test.each([
    ['borax-10', 'borate_mg_per_L_as_B'],
    ['cal-hypo-68', 'fc_mg_per_L_as_Cl2'],
    ['dichlor', 'fc_mg_per_L_as_Cl2'],
  ] as const)('%s is left alone in whatever place of the list', (loud, key) => {
    const answer = solve({ pH: 7.5 }, [loud, 'soda-ash'])
    expect(answer.doses.map(({ product }) => product)).toEqual(['soda-ash'])
    expect(answer.after.reading[key]).toBeCloseTo(start[key] ?? 0, 6)
  })

  test('where nothing else reaches the target, what moves is named with how far', () => {
    const answer = solve(up, ['muriatic-acid-31', 'liquid-chlorine-12'])
    const moved = answer.moves?.fc_mg_per_L_as_Cl2
    expect(moved?.from).toBeCloseTo(1, 6)
    expect(moved?.by).toBeGreaterThan(20)
    expect(answer.after.reading.fc_mg_per_L_as_Cl2).toBeCloseTo(moved!.to, 6)
    expect(Object.keys(answer.moves!)).toEqual(['fc_mg_per_L_as_Cl2'])
  })

  test('of the ways that move it, the one that moves it least', () => {
    const two = solve(up, ['muriatic-acid-31', 'liquid-chlorine-12']).moves!.fc_mg_per_L_as_Cl2!
    const three = solve(up, ['muriatic-acid-31', 'liquid-chlorine-12', 'sodium-bicarbonate']).moves!
    expect(three.fc_mg_per_L_as_Cl2!.by).toBeLessThan(0.7 * two.by)
  })

  test('chlorine that is asked for is given, and the calcium it brings is named', () => {
    const answer = solve({ fc_mg_per_L_as_Cl2: 3 }, ['cal-hypo-68'])
    expect(Object.keys(answer.moves ?? {})).toEqual(['ch_mg_per_L_as_CaCO3'])
    expect(solve({ fc_mg_per_L_as_Cl2: 3 }, ['cal-hypo-68', 'liquid-chlorine-12'])).not.toHaveProperty('moves')
  })
})

describe('the plan’s own choice of products', () => {
  const low = { ...BALANCED, pH: 6.9, ta_mg_per_L_as_CaCO3: 82 }
  const packs = (id: string, perG: number) =>
    good(productById(id)).product.packages.map((pack) => ({
      product: id,
      packageLabel: pack.label,
      price: perG * pack.massG,
    }))
  const productList = productsWith([], [...packs('soda-ash', 1), ...packs('borax-10', 0.0001)])
  const bases = (of: OpeningPlan) =>
    new Set(doses(of).flatMap((line) => (line.purpose === 'base' ? [line.productId] : [])))

  test('cheap borax is no base where borate has no target', () => {
    const of = plan(low, { objective: 'cheapest', productList })
    expect(bases(of)).toEqual(new Set(['soda-ash']))
    expect(of.endWater!.reading.borate_mg_per_L_as_B).toBe(0)
  })

  test('it is one where the owner chose it', () => {
    const own = plan(low, { objective: 'cheapest', productList, products: { base: 'borax-10' } })
    expect(bases(own)).toEqual(new Set(['borax-10']))
  })
})
