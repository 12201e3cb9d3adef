import { describe, expect, test } from 'vitest'
import type { Problem, Result } from '../../src/base/index.ts'
import {
  addTotals,
  CONSTANT_SETS,
  equilibrate,
  equilibrateAtPH,
  equilibrateOpen,
  leastSaltMgPerL,
  PURE_WATER,
  scaleDelta,
  stoichiometryDelta,
  totalsOf,
  type WaterReading,
} from '../../src/water/index.ts'
import { seeded } from '../bench/bench.ts'
import { good, stateOf } from './golden.ts'
import { randomReading } from './random-waters.ts'

const C = CONSTANT_SETS.default

const POOL: WaterReading = {
  pH: 7.5,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 250,
  cya_mg_per_L: 40,
  fc_mg_per_L_as_Cl2: 3,
  salt_mg_per_L_as_NaCl: 1000,
  temperature_C: 27,
}

function problemOf<T>(result: Result<T>): Problem {
  if (result.ok) throw new Error('expected a problem')
  const { problem } = result
  for (const part of [problem.code, problem.what, problem.why, problem.hint]) expect(part).not.toBe('')
  return problem
}

/** Random readings as they come, of which many are no water. */
function clashing(count: number) {
  const random = seeded(20_261_127)
  const readings: { reading: WaterReading; problem: Problem }[] = []
  for (let i = 0; i < count; i++) {
    const reading = randomReading(random)
    const result = totalsOf(reading, C)
    if (!result.ok) readings.push({ reading, problem: result.problem })
  }
  return { readings, infeasible: readings.length }
}

describe('readings no water can have are a Problem, never bent', () => {
  test('alkalinity below what stabiliser alone holds: the clash is named, with the amount', () => {
    const problem = problemOf(totalsOf({ ...POOL, ta_mg_per_L_as_CaCO3: 20, cya_mg_per_L: 150, pH: 7.8 }, C))
    expect(problem.code).toBe('water-alkalinity-too-low')
    expect(problem.path).toBe('ta_mg_per_L_as_CaCO3')
    expect(problem.why).toContain('stabiliser')
    const [, needed, short] = /needs ([\d.]+) mg.*: ([\d.]+) too little/.exec(problem.what) ?? []
    expect(Number(needed) - 20).toBeCloseTo(Number(short), 0)
    // and the amount is right: with that much more alkalinity the water exists, with a little less it doesn't
    const at = (ta: number) => totalsOf({ ...POOL, ta_mg_per_L_as_CaCO3: ta, cya_mg_per_L: 150, pH: 7.8 }, C).ok
    expect(at(Number(needed) * 1.01)).toBe(true)
    expect(at(Number(needed) * 0.99)).toBe(false)
  })

  test('hardness without the anions to balance it: the least salt is named, and suffices', () => {
    const reading = { pH: 7.5, ta_mg_per_L_as_CaCO3: 80, ch_mg_per_L_as_CaCO3: 300 }
    const problem = problemOf(totalsOf(reading, C))
    expect(problem.code).toBe('water-charge-does-not-close')
    const least = Number(/at least ([\d.]+) mg/.exec(problem.hint)?.[1])
    // 220 mg/L as CaCO3 of charge is 4.396 meq of NaCl
    expect(least).toBe(257)
    expect(problem.what).toContain('Calcium 300 mg/L as CaCO3 carries 220 mg/L as CaCO3 more charge than alkalinity 80')
    expect(leastSaltMgPerL(reading)).toBeCloseTo(256.9, 0)
    expect(leastSaltMgPerL({ ...reading, ch_mg_per_L_as_CaCO3: 50 })).toBe(0)
    expect(totalsOf({ ...reading, salt_mg_per_L_as_NaCl: leastSaltMgPerL(reading) }, C).ok).toBe(true)
    expect(totalsOf({ ...reading, salt_mg_per_L_as_NaCl: least + 1 }, C).ok).toBe(true)
    expect(totalsOf({ ...reading, salt_mg_per_L_as_NaCl: least - 2 }, C).ok).toBe(false)
  })

  test.each([
    ['pH', Number.NaN, 'water-not-a-number'],
    ['cya_mg_per_L', Number.POSITIVE_INFINITY, 'water-not-a-number'],
    ['cya_mg_per_L', -1, 'water-reading-negative'],
    ['pH', 13, 'water-reading-out-of-range'],
    ['pH', 2, 'water-reading-out-of-range'],
    ['temperature_C', 80, 'water-reading-out-of-range'],
    ['temperature_C', -5, 'water-reading-out-of-range'],
  ] as const)('%s of %s is %s', (key, value, code) => {
    const problem = problemOf(totalsOf({ ...POOL, [key]: value }, C))
    expect(problem.code).toBe(code)
    expect(problem.path).toBe(key)
  })

  test('a reading that is text or missing is named, not computed with', () => {
    const broken = { ta_mg_per_L_as_CaCO3: 80 } as unknown as WaterReading
    expect(problemOf(totalsOf(broken, C))).toMatchObject({ code: 'water-not-a-number', path: 'pH' })
  })

  test('brine beyond the model is refused', () => {
    expect(problemOf(totalsOf({ ...POOL, salt_mg_per_L_as_NaCl: 300000 }, C)).code).toBe('water-too-salty')
  })
})

describe('whatever the readings, a clash is named with an amount that is right', () => {
  const { readings: clashes, infeasible } = clashing(4000)

  test('half of random readings are no water, by both clashes', () => {
    expect(infeasible / 4000).toBeGreaterThan(0.2)
    expect(new Set(clashes.map(({ problem }) => problem.code))).toEqual(
      new Set(['water-alkalinity-too-low', 'water-charge-does-not-close']),
    )
  })

  test('so much alkalinity more, a water; clearly less, none', () => {
    const short = clashes.filter(({ problem }) => problem.code === 'water-alkalinity-too-low')
    expect(short.length).toBeGreaterThan(300)
    for (const { reading, problem } of short) {
      expect(problem.path).toBe('ta_mg_per_L_as_CaCO3')
      expect(problem.why).toMatch(/^These readings clash: pH, total alkalinity/)
      const amount = Number(/: ([\d.e-]+) too little/.exec(problem.what)?.[1])
      expect(amount, problem.what).toBeGreaterThan(0)
      const at = (ta: number) => totalsOf({ ...reading, ta_mg_per_L_as_CaCO3: reading.ta_mg_per_L_as_CaCO3 + ta }, C).ok
      // the sodium that comes with it shifts activities a little
      expect(at(1.03 * amount), JSON.stringify(reading)).toBe(true)
      expect(at(0.97 * amount), JSON.stringify(reading)).toBe(false)
    }
  })

  test('the salt that is named suffices, and a hundredth less does not', () => {
    const open = clashes.filter(({ problem }) => problem.code === 'water-charge-does-not-close')
    expect(open.length).toBeGreaterThan(300)
    for (const { reading, problem } of open) {
      expect(problem.why).toContain('total alkalinity, salt, sulfate')
      const least = Number(/at least ([\d.e-]+) mg/.exec(problem.hint)?.[1])
      const closes = (salt: number) => {
        const result = totalsOf({ ...reading, salt_mg_per_L_as_NaCl: salt }, C)
        return result.ok || result.problem.code !== 'water-charge-does-not-close'
      }
      expect(closes(least), problem.hint).toBe(true)
      expect(closes(least * 0.985), problem.hint).toBe(false)
    }
  })

  test('mineral acidity below what the acid itself makes is said in its own words', () => {
    const problem = problemOf(totalsOf({ pH: 3.4, ta_mg_per_L_as_CaCO3: -30, sulfate_mg_per_L: 300 }, C))
    expect(problem.code).toBe('water-alkalinity-too-low')
    expect(problem.what).toMatch(/even without any carbonate, but it reads -30: [\d.]+ too little/)
  })
})

describe('states no water can have are a Problem', () => {
  test('more chlorine taken out than there is', () => {
    const { totals } = stateOf(POOL, C)
    const problem = problemOf(equilibrate(addTotals(totals, { chlorineMol: -2 * totals.chlorineMol }), C))
    expect(problem.code).toBe('water-total-negative')
    expect(problem.path).toBe('chlorineMol')
  })

  test('all chlorine taken out exactly is a water, whatever rounding leaves', () => {
    const { totals } = stateOf(POOL, C)
    const removed = addTotals(addTotals(totals, { chlorineMol: -totals.chlorineMol / 3 }), {
      chlorineMol: (-2 * totals.chlorineMol) / 3 - 1e-20,
    })
    expect(good(equilibrate(removed, C)).activeChlorineMgPerL).toBe(0)
  })

  test('more acid or base than pH 0 or 14 can hold', () => {
    const { totals } = stateOf(POOL, C)
    const drown = (formula: string) => addTotals(totals, scaleDelta(stoichiometryDelta({ [formula]: 1 })!, 2.5))
    expect(problemOf(equilibrate(drown('HCl'), C)).code).toBe('water-ph-out-of-range')
    expect(problemOf(equilibrate(drown('NaOH'), C)).code).toBe('water-ph-out-of-range')
  })

  test('an air pressure or pH that is no number is refused', () => {
    const { totals } = stateOf(POOL, C)
    expect(problemOf(equilibrateOpen(totals, Number.NaN, C)).code).toBe('water-reading-out-of-range')
    expect(problemOf(equilibrateAtPH(totals, 15, C)).code).toBe('water-reading-out-of-range')
    expect(problemOf(equilibrate({ ...totals, calciumMol: Number.NaN }, C)).path).toBe('calciumMol')
  })
})

describe('legal but degenerate waters are answered', () => {
  test('pure water is neutral: pH 7.00 at 25 °C, 7.47 at 0 °C (CRC Handbook, from memory)', () => {
    expect(good(equilibrate(PURE_WATER, C)).pH).toBeCloseTo(6.998, 2)
    expect(good(equilibrate({ ...PURE_WATER, temperatureC: 0 }, C)).pH).toBeCloseTo(7.47, 1)
    expect(good(equilibrate(PURE_WATER, C)).calciteSI).toBe(Number.NEGATIVE_INFINITY)
  })

  test('strong acid alone: 1 mmol/kg HCl is pH 3.02 (activity coefficient 0.966)', () => {
    const acid = addTotals(PURE_WATER, { alkalinityEq: -1e-3, chlorideMol: 1e-3 })
    expect(good(equilibrate(acid, C)).pH).toBeCloseTo(3.015, 2)
  })

  test('an acid-flooded pool below pH 4.5 still closes', () => {
    const { totals } = stateOf(POOL, C)
    const flooded = addTotals(totals, scaleDelta(stoichiometryDelta({ HCl: 1 })!, 4e-3))
    const e = good(equilibrate(flooded, C))
    expect(e.pH).toBeLessThan(3)
    expect(e.residual).toBeLessThan(1e-12)
  })
})
