import { describe, expect, test } from 'vitest'
import { READING_ROWS } from '../../../src/ui/ledger/scale/index.ts'
import { rulerMarks } from '../../../src/ui/ledger/scale/ruler.ts'
import { plusMinusWords, toleranceOf, toleranceWords } from '../../../src/ui/ledger/scale/tolerance.ts'

const row = (key: string) => {
  const found = READING_ROWS.find((each) => each.key === key)
  if (!found) throw new Error(key)
  return found
}
const plain = (text: string) => text.replaceAll('\u00a0', ' ')

describe('a ruler', () => {
  test.each([0.03, 0.2, 1, 3.2, 64, 90, 110, 999, 12345])(
    'of %d has two to six round numbers, the first of them zero',
    (length) => {
      const numbers = rulerMarks(length).filter(({ isLabelled }) => isLabelled)
      expect(numbers.length).toBeGreaterThanOrEqual(2)
      expect(numbers.length).toBeLessThanOrEqual(6)
      expect(numbers[0]?.value).toBe(0)
      expect(numbers.at(-1)?.value).toBeLessThanOrEqual(length * (1 + 1e-9))
      const step = numbers[1]?.value ?? Number.NaN
      expect([1, 2, 5]).toContain(Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9)))
    },
  )

  test('of nothing has no marks', () => {
    expect(rulerMarks(0)).toEqual([])
    expect(rulerMarks(Number.NaN)).toEqual([])
  })
})

describe('how far a reading may be off', () => {
  test('stands at the reading’s own decimals and never has more than two figures', () => {
    expect(plain(plusMinusWords(row('pH'), 0.15, 1, 'metric'))).toBe('± 0.3')
    expect(plain(plusMinusWords(row('ta_mg_per_L_as_CaCO3'), 6.9, 0, 'metric'))).toBe('± 14')
    expect(plain(plusMinusWords(row('salt_mg_per_L_as_NaCl'), 105.4, 0, 'metric'))).toBe('± 210')
  })

  test('is an upper end where nothing lies below the least', () => {
    const free = row('fc_mg_per_L_as_Cl2')
    expect(plain(toleranceWords(free, 0.2, 0.1, 1, 'metric'))).toBe('± 0.2')
    expect(plain(toleranceWords(free, 0.1, 0.1, 1, 'metric'))).toBe('up to 0.3')
    expect(plain(toleranceWords(row('cya_mg_per_L'), 0, 10, 0, 'metric'))).toBe('up to 20')
    expect(plain(toleranceWords(row('pH'), 7.5, 0.15, 1, 'metric'))).toBe('± 0.3')
  })

  test('is shown up to where its span ends, which may lie beyond the scatter', () => {
    const stabiliser = row('cya_mg_per_L')
    const { high } = toleranceOf(stabiliser, 0, 5, 'low', 30)
    expect(plain(toleranceWords(stabiliser, 0, 5, 0, 'metric', high))).toBe('up to 30')
  })

  test('is never shown as nothing where there is some', () => {
    expect(plain(plusMinusWords(row('pH'), 0.001, 1, 'metric'))).toBe('± 0.1')
    expect(plain(toleranceWords(row('borate_mg_per_L_as_B'), 0, 0.02, 0, 'metric'))).toBe('up to 1')
  })

  test('reaches both ways, but not below the least that can be', () => {
    expect(toleranceOf(row('cya_mg_per_L'), 5, 10).low).toBe(0)
    expect(toleranceOf(row('cya_mg_per_L'), 50, 10)).toMatchObject({ low: 30.4, high: 69.6 })
  })
})
