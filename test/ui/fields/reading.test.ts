import { describe, expect, test } from 'vitest'
import { readNumber } from '../../../src/ui/fields/reading.ts'

describe('what is typed into a number field', () => {
  test('an empty field is unknown, never zero', () => {
    expect(readNumber('')).toEqual({ ok: true, value: undefined })
    expect(readNumber('   ')).toEqual({ ok: true, value: undefined })
  })

  test.each([
    ['12', 12],
    ['0.5', 0.5],
    ['0,5', 0.5],
    ['.5', 0.5],
    ['-3', -3],
    ['−3', -3],
    [' 7 ', 7],
  ])('%j is read as %d', (text, value) => {
    expect(readNumber(text)).toEqual({ ok: true, value })
  })

  test.each(['abc', '1.2.3', '12 apples', '1e400', 'NaN', 'Infinity', '--1', '1,000.5'])(
    '%j is refused with a hint',
    (text) => {
      const read = readNumber(text)
      expect(read.ok).toBe(false)
      if (!read.ok) expect(read.problem.hint).not.toBe('')
    },
  )

  test('a range refuses what lies outside and allows its ends', () => {
    expect(readNumber('24', { min: 0, max: 24 }).ok).toBe(true)
    expect(readNumber('0', { min: 0, max: 24 }).ok).toBe(true)
    expect(readNumber('25', { min: 0, max: 24 }).ok).toBe(false)
    expect(readNumber('-1', { min: 0 }).ok).toBe(false)
  })

  test('a count is kept whole', () => {
    expect(readNumber('3.6', {}, 0)).toEqual({ ok: true, value: 4 })
  })
})
