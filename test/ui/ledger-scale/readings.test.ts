import { describe, expect, test } from 'vitest'
import { formatMeasured, formatReading, formatSigned, READING_ROWS } from '../../../src/ui/ledger/scale/index.ts'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')

describe('readings as they are shown', () => {
  test('what was measured to a hundredth keeps it, what was not gets none', () => {
    expect(plain(formatMeasured('pH', 7.43, 'us'))).toBe('7.43')
    expect(plain(formatMeasured('pH', 7.4, 'us'))).toBe('7.4')
    expect(plain(formatMeasured('fc_mg_per_L_as_Cl2', 0.25, 'metric'))).toBe('0.25 mg/L')
    expect(plain(formatMeasured('ta_mg_per_L_as_CaCO3', 88, 'metric'))).toBe('88 mg/L')
  })

  test('an expected reading claims no more than the usual decimals', () => {
    expect(plain(formatReading('pH', 7.4321, 'us'))).toBe('7.4')
    expect(plain(formatReading('temperature_C', 25, 'us'))).toBe('77 °F')
  })

  test('an index always shows its sign, and zero has none', () => {
    expect(formatSigned(0.2, 'us')).toBe('+0.20')
    expect(formatSigned(-0.42, 'us')).toBe('−0.42')
    expect(formatSigned(-0.001, 'us')).toBe('0.00')
  })

  test('every reading can be told apart, and has room for what pools hold', () => {
    expect(new Set(READING_ROWS.map((row) => row.key)).size).toBe(READING_ROWS.length)
    expect(READING_ROWS).toHaveLength(18)
    for (const row of READING_ROWS) expect(row.max).toBeGreaterThan(row.min)
  })
})
