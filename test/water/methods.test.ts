import { describe, expect, test } from 'vitest'
import { leastSeen, METHODS, methodSigma, PEOPLE_READING_NAMES, type PeopleReadingKey } from '../../src/water/index.ts'

const KEYS = Object.keys(PEOPLE_READING_NAMES) as PeopleReadingKey[]

describe('every way of testing says how well it reads', () => {
  test.each(METHODS.rows)('$id: each reading has a spread, a range and how sure that is', ({ errors }) => {
    expect(Object.keys(errors).length).toBeGreaterThan(4)
    for (const [key, error] of Object.entries(errors)) {
      expect(KEYS).toContain(key)
      expect(error.absolute, key).toBeGreaterThan(0)
      expect(error.relative, key).toBeGreaterThanOrEqual(0)
      expect(error.relative, key).toBeLessThan(0.5)
      expect(error.high, key).toBeGreaterThan(error.low)
      // nobody here measured them: none may claim to have been seen
      expect(['from memory', 'common practice, no source']).toContain(error.status)
    }
  })

  test('what a laboratory reads is read no better by any pool-side test, and a strip is the coarsest', () => {
    const typical: Partial<Record<PeopleReadingKey, number>> = {
      ta_mg_per_L_as_CaCO3: 90,
      ch_mg_per_L_as_CaCO3: 250,
      th_mg_per_L_as_CaCO3: 300,
      cya_mg_per_L: 40,
      borate_mg_per_L_as_B: 40,
      fc_mg_per_L_as_Cl2: 3,
      salt_mg_per_L_as_NaCl: 3000,
      pH: 7.5,
    }
    for (const [key, value] of Object.entries(typical)) {
      const sigma = (method: string) => methodSigma(method, key as PeopleReadingKey, value)?.sigma
      const rest = [sigma('drop-kit'), sigma('photometer'), sigma('sensor')].filter((one) => one !== undefined)
      for (const one of rest) {
        expect(one, key).toBeGreaterThanOrEqual(sigma('laboratory') ?? 0)
        expect(one, key).toBeLessThanOrEqual(sigma('strip') ?? Number.POSITIVE_INFINITY)
      }
    }
  })

  test('a strip reads no calcium, and no laboratory reads chlorine out of a bottle', () => {
    expect(methodSigma('strip', 'ch_mg_per_L_as_CaCO3', 250)).toBeUndefined()
    expect(methodSigma('laboratory', 'fc_mg_per_L_as_Cl2', 3)).toBeUndefined()
  })

  test('the spread is absolute plus relative; past a range’s end the reading counts as an end', () => {
    expect(methodSigma('drop-kit', 'ta_mg_per_L_as_CaCO3', 100)).toEqual({
      sigma: 8,
      status: 'from memory',
      isInRange: true,
    })
    expect(methodSigma('drop-kit', 'cya_mg_per_L', 20)?.isInRange).toBe(false)
    expect(methodSigma('drop-kit', 'cya_mg_per_L', 100)?.isInRange).toBe(false)
    expect(methodSigma('drop-kit', 'pH', 8.2)?.isInRange).toBe(false)
  })

  test('an unknown method is taken for the widest test there is', () => {
    expect(methodSigma('unknown', 'cya_mg_per_L', 40)).toEqual(methodSigma('strip', 'cya_mg_per_L', 40))
    expect(methodSigma('unknown', 'ch_mg_per_L_as_CaCO3', 250)?.sigma).toBeCloseTo(29.5, 9)
    expect(methodSigma('unknown', 'temperature_C', 25)?.sigma).toBe(0.5)
  })

  test('the least stabiliser that a test tells from none; an unknown test sees as little as the blindest', () => {
    const seen = (method: string) => leastSeen(method, 'cya_mg_per_L')
    expect(['drop-kit', 'strip', 'photometer', 'laboratory', 'unknown'].map(seen)).toEqual([30, 20, 10, 4, 30])
    expect([seen('sensor'), seen('supplier')]).toEqual([undefined, undefined])
  })
})
