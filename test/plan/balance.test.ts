import { describe, expect, test } from 'vitest'
import { productById } from '../../src/chemicals/index.ts'
import { balanceDelta, balanceTo } from '../../src/plan/balance.ts'
import { defaultTargets, isInside, openingPlan } from '../../src/plan/index.ts'
import {
  addTotals,
  CONSTANT_SETS,
  equilibrate,
  MG_CACO3_PER_EQ,
  totalsOf,
  type WaterReading,
} from '../../src/water/index.ts'
import { good } from '../water/golden.ts'

const constants = CONSTANT_SETS.default
const of = (id: string) => good(productById(id)).product
const products = { acid: of('muriatic-acid-31'), alkalinity: of('sodium-bicarbonate'), base: of('soda-ash') }
const bands = { pH: { low: 7.2, aim: 7.5, high: 7.8 }, alkalinity: { low: 80, aim: 100, high: 120 } }
const water = (pH: number, alkalinity: number, more: Partial<WaterReading> = {}): WaterReading => ({
  pH,
  ta_mg_per_L_as_CaCO3: alkalinity,
  ch_mg_per_L_as_CaCO3: 150,
  salt_mg_per_L_as_NaCl: 3000,
  cya_mg_per_L: 30,
  borate_mg_per_L_as_B: 20,
  temperature_C: 24,
  ...more,
})
const balanced = (reading: WaterReading) => {
  const totals = good(totalsOf(reading, constants))
  const balance = balanceTo(totals, bands, products, constants)!
  const after = balanceDelta(balance, products).reduce(addTotals, totals)
  return { balance, pH: good(equilibrate(after, constants)).pH, alkalinity: after.alkalinityEq * MG_CACO3_PER_EQ }
}

describe('the least that brings pH and alkalinity into their bands', () => {
  test('nothing where both are inside', () => {
    expect(balanced(water(7.3, 85)).balance).toEqual({
      acidGPerM3: 0,
      alkalinityGPerM3: 0,
      baseGPerM3: 0,
      aerationMol: 0,
    })
  })

  test('one product where one will do, landing on its aim', () => {
    const low = balanced(water(7.5, 60))
    expect(low.balance).toMatchObject({ acidGPerM3: 0, baseGPerM3: 0, aerationMol: 0 })
    expect(low.alkalinity).toBeCloseTo(100, 9)
    const acid = balanced(water(8.0, 110))
    expect(acid.balance).toMatchObject({ alkalinityGPerM3: 0, baseGPerM3: 0, aerationMol: 0 })
    expect(acid.pH).toBeCloseTo(7.5, 8)
  })

  test('two products where one won’t, landing on both aims exactly, counter-ions and all', () => {
    for (const [reading, pair] of [
      [water(8.4, 60), ['alkalinityGPerM3', 'acidGPerM3']],
      [water(6.9, 50), ['alkalinityGPerM3', 'baseGPerM3']],
    ] as const) {
      const { balance, pH, alkalinity } = balanced(reading)
      for (const key of pair) expect(balance[key], key).toBeGreaterThan(0)
      expect(pH).toBeCloseTo(7.5, 8)
      expect(alkalinity).toBeCloseTo(100, 8)
    }
  })

  test('acid and air where alkalinity is high, down to between aim and upper end', () => {
    const { balance, pH, alkalinity } = balanced(water(7.9, 200))
    expect(balance.acidGPerM3).toBeGreaterThan(0)
    expect(balance.aerationMol).toBeGreaterThan(0)
    expect(alkalinity).toBeCloseTo(110, 8)
    expect(pH).toBeCloseTo(7.5, 8)
  })

  test('air alone where a low pH is only dissolved CO2', () => {
    const { balance } = balanced(water(6.6, 110))
    expect(balance).toMatchObject({ acidGPerM3: 0, alkalinityGPerM3: 0, baseGPerM3: 0 })
    expect(balance.aerationMol).toBeGreaterThan(0)
  })
})

describe('alkalinity that ten rounds do not bring down', () => {
  test('stays, is said, and pH is set right all the same', () => {
    const targets = defaultTargets('plaster', 'unstabilised', {})
    const now = Date.UTC(2026, 5, 1)
    const plan = good(
      openingPlan({
        volumeM3: 60,
        volumeSigmaM3: 1,
        surface: 'plaster',
        regimeId: 'unstabilised',
        targets,
        products: {},
        start: water(6.98, 320, {
          ch_mg_per_L_as_CaCO3: 330,
          temperature_C: 33,
          cya_mg_per_L: 0,
          fc_mg_per_L_as_Cl2: 2,
          borate_mg_per_L_as_B: 40,
        }),
        startIs: 'pool',
        method: 'drop-kit',
        measuredAtMs: now,
        nowMs: now,
        turnoverHours: 8,
        given: [],
        stockG: {},
        constants: 'default',
      }),
    )
    expect(plan.unreachable.map((problem) => problem.code)).toEqual(['alkalinity-stays-high'])
    expect(plan.endWater!.reading.ta_mg_per_L_as_CaCO3).toBeGreaterThan(120)
    expect(isInside(plan.endWater!.reading.pH, targets.pH!)).toBe(true)
  })
})
