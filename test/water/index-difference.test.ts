import { describe, expect, test } from 'vitest'
import { tableIndex, type WaterReading, whyIndicesDiffer } from '../../src/water/index.ts'
import { stateOf } from './golden.ts'
import { WATERS } from './waters.ts'

const POOL: WaterReading = {
  pH: 7.5,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 250,
  mg_hardness_mg_per_L_as_CaCO3: 30,
  sulfate_mg_per_L: 20,
  salt_mg_per_L_as_NaCl: 300,
  temperature_C: 26,
}
const why = (change: Partial<WaterReading>) => {
  const reading = { ...POOL, ...change }
  return whyIndicesDiffer(reading, stateOf(reading).equilibrium)!
}

describe('why table index and calcite SI differ', () => {
  test('in every water the terms sum to the difference, and the largest comes first', () => {
    let explained = 0
    for (const { id, reading } of WATERS) {
      const { equilibrium } = stateOf(reading)
      const answer = whyIndicesDiffer(reading, equilibrium)
      if (!answer) {
        expect(!reading.ch_mg_per_L_as_CaCO3 || reading.ta_mg_per_L_as_CaCO3 <= 0, id).toBe(true)
        continue
      }
      explained++
      const sum = answer.terms.reduce((total, { value }) => total + value, 0)
      expect(sum, id).toBeCloseTo(tableIndex(reading).index - equilibrium.calciteSI, 9)
      expect(answer.terms.length).toBe(5)
      const sizes = answer.terms.map(({ value }) => Math.abs(value))
      expect(sizes).toEqual(sizes.toSorted((a, b) => b - a))
      expect(answer.sentence.split('. ').length, answer.sentence).toBe(1)
      expect(answer.sentence, id).toMatch(/act on calcite SI\.$/)
      expect(answer.sentence).not.toMatch(/NaN|undefined|Infinity/)
      // the constants that are left are the table's rounding and its own offset, nothing that a water could move far
      expect(Math.abs(answer.terms.find(({ id: term }) => term === 'constants')!.value), id).toBeLessThan(0.35)
    }
    expect(explained).toBeGreaterThan(100)
  })

  test.each([
    ['temperature', { temperature_C: 3 }, /temperature factor is 0\.\d+ too low for 3 °C/],
    ['alkalinity', { cya_mg_per_L: 150 }, /counts \d+ mg\/L of alkalinity as carbonate that belong to stabiliser/],
    ['alkalinity', { borate_mg_per_L_as_B: 50, pH: 8.1 }, /belong to borate/],
    ['salt', { salt_mg_per_L_as_NaCl: 12000 }, /salt weakens calcium and carbonate/],
    ['pairs', { sulfate_mg_per_L: 1500 }, /% of it is held by sulfate/],
  ] as const)('%s rules where it must', (id, change, words) => {
    const plain = why({})
    const changed = why(change)
    const value = (answer: typeof plain) => answer.terms.find((term) => term.id === id)!.value
    expect(Math.abs(value(changed))).toBeGreaterThan(Math.abs(value(plain)))
    expect(changed.terms.find((term) => term.id === id)!.words).toMatch(words)
    if (id !== 'pairs') expect(changed.terms.find((term) => term.id !== 'constants')!.id).toBe(id)
  })

  test('where both agree it says so', () => {
    const near = [0, 30, 60, 100, 200].map((salt) => why({ salt_mg_per_L_as_NaCl: 300 + salt, temperature_C: 24 }))
    for (const { difference, sentence } of near)
      expect(/^Both say the same/.test(sentence)).toBe(Math.abs(difference) < 0.1)
  })

  test('there is nothing to explain without calcium or carbonate', () => {
    const soft = { ...POOL, ch_mg_per_L_as_CaCO3: 0 }
    expect(whyIndicesDiffer(soft, stateOf(soft).equilibrium)).toBeUndefined()
  })
})
