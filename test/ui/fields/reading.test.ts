import { describe, expect, test } from 'vitest'
import { limitWords } from '../../../src/ui/fields/limits.ts'
import { readNumber, readQuantity } from '../../../src/ui/fields/reading.ts'
import { formatForEntry } from '../../../src/units/index.ts'

describe('what is typed into a number field', () => {
  test('an empty field is unknown, never zero', () => {
    expect(readNumber('', 'us')).toEqual({ ok: true, value: undefined })
    expect(readNumber('   ', 'us')).toEqual({ ok: true, value: undefined })
  })

  test.each([
    ['12', 12],
    ['0.5', 0.5],
    ['0,5', 0.5],
    ['.5', 0.5],
    ['-3', -3],
    ['−3', -3],
    [' 7 ', 7],
    ['5 000', 5000],
    ['1,000.5', 1000.5],
  ])('%j is read as %d', (text, value) => {
    expect(readNumber(text, 'metric')).toEqual({ ok: true, value })
  })

  test.each(['abc', '1.2.3', '12 apples', '1e400', 'NaN', 'Infinity', '--1', '5 %'])(
    '%j is refused with a hint',
    (text) => {
      const read = readNumber(text, 'us')
      expect(read.ok).toBe(false)
      if (!read.ok) expect(read.problem.hint).not.toBe('')
    },
  )

  test('a comma before three digits parts thousands where people write them so, and is asked about elsewhere', () => {
    expect(readNumber('1,000', 'us')).toEqual({ ok: true, value: 1000 })
    const read = readNumber('1,000', 'metric')
    expect(read.ok).toBe(false)
    if (!read.ok) expect(read.problem.hint).toBe('Write 1000 or 1.000.')
  })

  test('what a field shows, it reads', () => {
    for (const system of ['us', 'metric', 'imperial'] as const)
      for (const value of [0.5, 12, 5000, 1234567])
        expect(readNumber(formatForEntry('number', value, system), system)).toEqual({ ok: true, value })
  })

  test('a range refuses what lies outside and allows its ends', () => {
    expect(readNumber('24', 'us', { min: 0, max: 24 }).ok).toBe(true)
    expect(readNumber('0', 'us', { min: 0, max: 24 }).ok).toBe(true)
    expect(readNumber('25', 'us', { min: 0, max: 24 }).ok).toBe(false)
    expect(readNumber('-1', 'us', { min: 0 }).ok).toBe(false)
    const low = readNumber('10', 'us', { min: 5000 })
    expect(!low.ok && low.problem.hint).toBe('Not less than 5,000.')
  })

  test('a count is kept whole', () => {
    expect(readNumber('3.6', 'us', {}, 0)).toEqual({ ok: true, value: 4 })
  })
})

describe('what is typed into a quantity field', () => {
  test('an empty field is unknown, never zero', () => {
    expect(readQuantity('length', ' ', 'us')).toEqual({ ok: true, value: undefined })
  })

  test('feet and inches come out in metres', () => {
    for (const text of ['7\'6"', '7 ft 6 in', '7′ 6″', '2.286 m']) {
      const read = readQuantity('length', text, 'us')
      expect(read.ok && read.value).toBeCloseTo(2.286, 9)
    }
  })

  test('the ends of a range are inside it, though they were converted on the way', () => {
    expect(readQuantity('length', '10 ft', 'us', { min: 3.048, max: 3.048 }).ok).toBe(true)
    const read = readQuantity('length', '9 ft', 'us', { min: 3.048 })
    expect(read.ok).toBe(false)
    if (!read.ok) expect(read.problem.hint).toMatch(/Not less than 10/)
  })
})

describe('a limit as it is told', () => {
  test('where it is seen elsewhere, as at the end of a slider, it is told as it is there', () => {
    const range = { min: -2.2, max: 0.15 }
    const told = (isExact: boolean) => {
      const read = readQuantity('length', '-9 ft', 'us', { ...range, isExact })
      return read.ok ? '' : read.problem.hint.replaceAll('\u00a0', ' ')
    }
    expect(told(true)).toBe('Between −7′ 2⅝″ and 5⅞″.')
    expect(told(false)).toBe('Between −7′ 2″ and 5½″.')
  })

  test.each([
    [0.1, 'low', '4″'],
    [1000, 'high', '3,280 ft'],
    [0.01, 'low', '½″'],
    [0.3048, 'low', '1′ 0″'],
    [2, 'high', '6′ 6″'],
  ] as const)('%d m at the %s end is %s in US units: round, and itself allowed', (m, end, words) => {
    expect(limitWords('length', m, 'us', end).replaceAll('\u00a0', ' ')).toBe(words)
    const range = end === 'low' ? { min: m } : { max: m }
    expect(readQuantity('length', words, 'us', range).ok).toBe(true)
  })

  test('what is round already stays', () => {
    expect(limitWords('length', 1234.5, 'metric', 'high').replace(/\s/g, ' ')).toBe('1 234.5 m')
    expect(limitWords('percent', 99.99, 'us', 'high')).toBe('99.99\u00a0%')
  })
})
