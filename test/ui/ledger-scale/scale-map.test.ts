import { describe, expect, test } from 'vitest'
import { domainOf, domainsOf, isWithin, placeOn, scaleWords, shortValue } from '../../../src/ui/ledger/scale/index.ts'

const ALKALINITY = { low: 60, aim: 80, high: 120 }

describe('the scale of a reading', () => {
  test('the band stands with its own width on both sides, and every value lies inside', () => {
    const domain = domainOf('ta_mg_per_L_as_CaCO3', [{ before: 42, after: 92, band: ALKALINITY }])
    expect(domain.min).toBe(0)
    expect(domain.max).toBeGreaterThan(180)
    const far = domainOf('ta_mg_per_L_as_CaCO3', [{ before: 400, after: 92, band: ALKALINITY }])
    expect(placeOn(far, 400, 100)).toBeLessThan(100)
  })

  test('a concentration never starts below zero, an index may', () => {
    expect(domainOf('borate_mg_per_L_as_B', [{ before: 0, after: 45, band: { low: 30, aim: 45, high: 50 } }]).min).toBe(
      0,
    )
    expect(domainOf('calciteSI', [{ before: -1.2, after: -0.1 }]).min).toBeLessThan(-1.2)
  })

  test('one value alone still has a scale of some width', () => {
    const domain = domainOf('pH', [{ before: 7.6 }])
    expect(domain.max).toBeGreaterThan(domain.min)
    expect(placeOn(domain, 7.6, 100)).toBeGreaterThan(0)
  })

  test('places are in order, and what lies outside stands at the end', () => {
    const domain = { min: 6, max: 9 }
    expect(placeOn(domain, 7.5, 120)).toBeCloseTo(60, 10)
    expect(placeOn(domain, 5, 120)).toBe(0)
    expect(placeOn(domain, 12, 120)).toBe(120)
    expect(placeOn(domain, Number.NEGATIVE_INFINITY, 120)).toBe(0)
  })

  test('the same reading has one domain in every line, so its band does not wander', () => {
    const domains = domainsOf([
      { movements: [{ key: 'pH' as const, before: 7.9, after: 8.0, band: { low: 7.2, aim: 7.5, high: 7.8 } }] },
      { movements: [{ key: 'pH' as const, before: 8.0, after: 7.5, band: { low: 7.2, aim: 7.5, high: 7.8 } }] },
    ])
    expect([...domains.keys()]).toEqual(['pH'])
    expect(domains.get('pH')?.max).toBeGreaterThan(8.0)
  })

  test('the ends of a band are inside it', () => {
    expect(isWithin(60, ALKALINITY)).toBe(true)
    expect(isWithin(120, ALKALINITY)).toBe(true)
    expect(isWithin(120.1, ALKALINITY)).toBe(false)
    expect(isWithin(5, undefined)).toBeUndefined()
  })
})

describe('the scale in words', () => {
  const format = (value: number) => `${value} mg/L`

  test('says measured, expected and where that lies', () => {
    const words = scaleWords(
      { key: 'ta_mg_per_L_as_CaCO3', band: ALKALINITY, before: 42, isBeforeMeasured: true, after: 92 },
      format,
    )
    expect(words).toBe('Total alkalinity: measured 42 mg/L, expected 92 mg/L, inside the band 60 to 120 mg/L')
  })

  test('never calls an expected start measured', () => {
    const words = scaleWords(
      { key: 'ta_mg_per_L_as_CaCO3', band: ALKALINITY, before: 92, isBeforeMeasured: false, after: 130 },
      format,
    )
    expect(words).not.toContain('measured')
    expect(words).toContain('above the band')
  })

  test('a pair of values names their unit once', () => {
    expect(shortValue('42 mg/L', '92 mg/L')).toBe('42')
    expect(shortValue('7.9', '8.0')).toBe('7.9')
    expect(shortValue('12 fl oz', '1 gal')).toBe('12 fl oz')
  })
})
