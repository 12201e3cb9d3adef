import { describe, expect, test } from 'vitest'
import { assumedNames, withMonth } from '../../../src/ui/ledger/season/climate.ts'
import { countingTerms, estimateWords, noonOf, rangeWords } from '../../../src/ui/ledger/season/upkeep-words.ts'

const usual = { airC: 20, humidityPercent: 60, windMPerS: 2, sunshine: 0.5 }

describe('the weather by month', () => {
  test('the first month that is set makes all twelve, and only that one differs', () => {
    const rows = withMonth(undefined, 6, { ...usual, airC: 30 }, usual)
    expect(rows).toHaveLength(12)
    expect(rows.map((row) => row.airC).filter((airC) => airC !== 20)).toEqual([30])
    expect(rows[6]?.airC).toBe(30)
  })

  test('other months stay as they were', () => {
    const before = Array.from({ length: 12 }, (_, month) => ({ ...usual, airC: month }))
    const after = withMonth(before, 3, { ...usual, airC: 99 }, usual)
    expect(after.map((row) => row.airC)).toEqual([0, 1, 2, 99, 4, 5, 6, 7, 8, 9, 10, 11])
    expect(before[3]?.airC).toBe(3)
  })

  test('what nobody gave is named', () => {
    const system = {
      id: 'pool',
      plumbingM3: 0,
      volumeEstimates: [],
      water: { readings: [], targets: {} },
      equipment: { helpers: [] },
      stock: [],
      regime: { id: 'stabilised', products: {} },
      log: [],
    }
    expect(assumedNames({}, system, 0, false, false)).toHaveLength(5)
    expect(assumedNames({}, system, 10, false, false)[0]).toMatch(/^November’s weather \(that of a mild summer day/)
    const full = assumedNames(
      { latitudeDeg: 44, climate: Array.from({ length: 12 }, () => ({ ...usual, waterC: 26 })) },
      { ...system, regime: { ...system.regime, bathersPerDay: 0 } },
      0,
      false,
      true,
    )
    expect(full).toEqual([])
  })
})

describe('the day that is reckoned for', () => {
  const now = Date.UTC(2026, 10, 24, 8)

  test('a day that the month lacks becomes its last one', () => {
    expect(new Date(noonOf(now, 1, 31)).toISOString()).toBe('2026-02-28T12:00:00.000Z')
    expect(new Date(noonOf(now, 6, 15)).toISOString()).toBe('2026-07-15T12:00:00.000Z')
  })
})

describe('an amount that is known to a factor of two', () => {
  const plain = (...args: Parameters<typeof estimateWords>) => estimateWords(...args).replace(/\s/g, ' ')

  test('has two figures, in any units', () => {
    expect(plain('cal-hypo-tablet', 4660, 'metric')).toBe('4.7 kg')
    expect(plain('cal-hypo-tablet', 4660, 'us')).toBe('10 lb')
    expect(plain('cal-hypo-tablet', 112, 'metric')).toBe('110 g')
    // A liquid is poured, not weighed: 3.5 kg at 1.16 kg/L are 102 fl oz.
    expect(plain('muriatic-acid-31', 3500, 'us')).toMatch(/^100 fl oz/)
    expect(plain('muriatic-acid-31', 0, 'metric')).toMatch(/^0/)
  })
})

describe('the terms of a demand', () => {
  const term = (id: string, value: number, high = value) => ({
    id,
    label: id,
    value,
    low: 0,
    high,
    how: '',
    source: '',
  })

  test('largest first, and what is nothing for certain is left out', () => {
    expect(countingTerms([term('a', 0.1), term('b', 2), term('c', 0), term('d', 0, 0.5)]).map((row) => row.id)).toEqual(
      ['b', 'a', 'd'],
    )
  })

  test('a range names its unit once', () => {
    expect(rangeWords('1.2 mg/L', '3.4 mg/L')).toBe('1.2 to 3.4 mg/L')
    expect(rangeWords('3 lb', '3 lb')).toBe('3 lb')
    expect(rangeWords('900 mL', '1.2 L')).toBe('900 mL to 1.2 L')
  })
})
