import { describe, expect, test } from 'vitest'
import { PRODUCTS, pourAmount, productById } from '../../src/chemicals/index.ts'
import { good } from '../water/golden.ts'

const of = (id: string) => good(productById(id)).product

describe('an amount as it is measured out', () => {
  test('by scale in exact ounces and pounds; a US cup is 236.6 mL and a fluid ounce 29.5735 mL (definitions)', () => {
    const { byScale } = pourAmount(of('salt'), 453.59237)
    expect(byScale.lb).toBeCloseTo(1, 12)
    expect(byScale.oz).toBeCloseTo(16, 12)
    const cup = pourAmount(of('muriatic-acid-31'), 236.6 * 1.16).byVolume!
    expect(cup.cups).toBeCloseTo(1, 3)
    expect(cup.flOz).toBeCloseTo(8, 2)
  })

  test('liquid chlorine by the jug is exact: 10.24 fl oz of 12.5 % for 1 mg/L in 10,000 US gal', () => {
    const poured = pourAmount(of('liquid-chlorine-12'), (37.854118 / 0.125) * 1.168).byVolume!
    expect(poured.flOz).toBeCloseTo(10.24, 2)
    expect(poured.isRough).toBe(false)
    expect(poured.note).toBe('')
    expect([poured.lowML, poured.highML]).toEqual([poured.mL, poured.mL])
  })

  test('grains by the scoop are rough, with the spread of their bulk density', () => {
    const { byVolume } = pourAmount(of('sodium-bicarbonate'), 1100)
    expect(byVolume).toMatchObject({ isRough: true })
    expect(byVolume!.mL).toBeCloseTo(1000, 9)
    expect(byVolume!.lowML).toBeCloseTo(1100 / 1.2, 9)
    expect(byVolume!.highML).toBeCloseTo(1100, 9)
    expect(byVolume!.note).toContain('Rough')
  })

  test('tablets are counted, gases only weighed', () => {
    expect(pourAmount(of('trichlor-tablet'), 500)).toMatchObject({ pieces: 2.5 })
    expect(pourAmount(of('trichlor-tablet'), 500).byVolume).toBeUndefined()
    expect(pourAmount(of('carbon-dioxide'), 500)).toEqual({ byScale: expect.anything() })
  })

  test.each(PRODUCTS.rows.filter((row) => !row.isAccounting))(
    '$id: twice the grams are twice of everything, zero is zero',
    (row) => {
      const one = pourAmount(row, 700)
      const two = pourAmount(row, 1400)
      expect(two.byScale.oz).toBeCloseTo(2 * one.byScale.oz, 9)
      if (one.byVolume) {
        expect(two.byVolume!.mL).toBeCloseTo(2 * one.byVolume.mL, 9)
        expect(one.byVolume.lowML).toBeLessThanOrEqual(one.byVolume.mL)
        expect(one.byVolume.highML).toBeGreaterThanOrEqual(one.byVolume.mL)
      }
      expect(pourAmount(row, 0).byScale.g).toBe(0)
    },
  )
})
