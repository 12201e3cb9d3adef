import { describe, expect, test } from 'vitest'
import { decayPerMolarDay } from '../../src/chemicals/ageing.ts'
import { strengthAfter } from '../../src/chemicals/index.ts'
import { good } from '../water/golden.ts'

const left = (percent: number, days: number, storedC: number) => good(strengthAfter({ percent, days, storedC }))
/** Loss in the first moments [trade % a day]. */
const firstLoss = (percent: number, storedC: number) => percent / left(percent, 0, storedC).halfLifeDays

describe('strength that stored liquid chlorine loses', () => {
  test('the rate is the published formula’s: 1.0143e-8 per mol/L and second at 25 °C without the salt’s share (Adam & Gordon 1999, abstract)', () => {
    // by hand: 2.083e10 × 298.15 × exp(−101800 / (8.314 × 298.15)) × exp(−56.5 / 8.314)
    const kelvin = 298.15
    const eyring = 2.083e10 * kelvin * Math.exp(-41.06794) * Math.exp(-6.79577)
    expect(decayPerMolarDay(0, 25) / 86_400 / eyring).toBeCloseTo(1, 4)
    expect(decayPerMolarDay(0, 25) / 86_400).toBeCloseTo(1.0143e-8, 11)
    // 0.149 of a decade for each mol/L of ionic strength
    expect(decayPerMolarDay(4, 30) / decayPerMolarDay(3, 30)).toBeCloseTo(10 ** 0.149, 12)
  })

  test('10 °C more make it three to four times as fast (water-works literature, from memory), a little more in the cold', () => {
    for (const from of [20, 25, 30, 35, 40]) {
      const factor = decayPerMolarDay(3, from + 10) / decayPerMolarDay(3, from)
      expect(factor).toBeGreaterThan(3)
      expect(factor).toBeLessThan(4.2)
    }
  })

  test('half-lives are within a factor of 1.6 of a water-works handbook’s (recalled, unchecked): 144, 220, 790 days at 25 °C', () => {
    for (const [percent, days] of [
      [15, 144],
      [10, 220],
      [5, 790],
    ] as const) {
      const ratio = left(percent, 0, 25).halfLifeDays / days
      expect(Math.abs(Math.log(ratio))).toBeLessThan(Math.log(1.6))
    }
  })

  test('halving the strength of works-strength liquor slows it more than cooling from 24 to 10 °C (JAWWA 85(9), 1993, abstract)', () => {
    const fresh = firstLoss(16, 24)
    expect(fresh / firstLoss(8, 24)).toBeGreaterThan(fresh / firstLoss(16, 10))
    // of pool strength the two are about equal by this formula: 7.3 and 8.05 times slower
    expect(firstLoss(12.5, 24) / firstLoss(6.25, 24)).toBeCloseTo(7.3, 1)
    expect(firstLoss(12.5, 24) / firstLoss(12.5, 10)).toBeCloseTo(8.05, 2)
  })

  test('the closed form is what stepping dc/dt = −k c² gives', () => {
    const molar = (percent: number) => (percent * 10) / 70.906
    for (const [percent, days, storedC] of [
      [12.5, 120, 30],
      [10, 400, 20],
      [15, 30, 40],
    ] as const) {
      const k = decayPerMolarDay(2 * molar(percent) + 0.1, storedC)
      let c = molar(percent)
      const steps = 2000
      const h = days / steps
      for (let i = 0; i < steps; i += 1) {
        const k1 = -k * c * c
        const k2 = -k * (c + (h / 2) * k1) ** 2
        c += h * k2
      }
      expect(left(percent, days, storedC).percent / percent).toBeCloseTo(c / molar(percent), 5)
    }
  })

  test('it only ever loses: less with days and warmth, never below zero, its range ordered, half after the half-life', () => {
    for (const percent of [1, 5, 10, 12.5, 15, 20]) {
      for (const storedC of [-10, 5, 20, 35, 55]) {
        let before = percent
        for (const days of [0, 1, 7, 30, 90, 365, 3653]) {
          const now = left(percent, days, storedC)
          expect(now.percent).toBeLessThanOrEqual(before)
          expect(now.low).toBeGreaterThan(0)
          expect(now.low).toBeLessThanOrEqual(now.percent)
          expect(now.high).toBeGreaterThanOrEqual(now.percent)
          expect(now.high).toBeLessThanOrEqual(percent)
          if (storedC < 55)
            expect(left(percent, days, Math.min(storedC + 5, 55)).percent).toBeLessThanOrEqual(now.percent)
          before = now.percent
        }
        const { halfLifeDays } = left(percent, 0, storedC)
        if (halfLifeDays <= 3653) expect(left(percent, halfLifeDays, storedC).percent).toBeCloseTo(percent / 2, 9)
      }
    }
  })

  test('a stronger one loses a greater share', () => {
    const share = (percent: number) => left(percent, 60, 25).percent / percent
    expect(share(15)).toBeLessThan(share(12.5))
    expect(share(12.5)).toBeLessThan(share(10))
    expect(share(10)).toBeLessThan(share(5))
  })

  test.each([
    [{ percent: 0, days: 1, storedC: 20 }, 'percent'],
    [{ percent: 40, days: 1, storedC: 20 }, 'percent'],
    [{ percent: 12, days: -1, storedC: 20 }, 'days'],
    [{ percent: 12, days: Number.NaN, storedC: 20 }, 'days'],
    [{ percent: 12, days: 1, storedC: 80 }, 'storedC'],
    [{ percent: 12, days: 1, storedC: Number.NaN }, 'storedC'],
  ] as const)('%j is a Problem about %s', (stored, path) => {
    const answer = strengthAfter(stored)
    expect(answer.ok ? '' : answer.problem.path).toBe(path)
  })
})
