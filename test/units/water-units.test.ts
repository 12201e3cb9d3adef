import { describe, expect, test } from 'vitest'
import { formatQuantity, parseQuantity, type Quantity, UNITS, type UnitSystem } from '../../src/units/index.ts'

function read(quantity: Quantity, text: string, system: UnitSystem = 'metric'): number | string {
  const result = parseQuantity(quantity, text, system)
  return result.ok ? result.value : result.problem.code
}

describe('units of hardness, alkalinity and conductivity', () => {
  // DIN 38409-6 and ISO 6059 definitions, as printed in conversion tables of water works (from memory)
  test.each([
    ['°dH', 17.848],
    ['°f', 10],
    ['°e', 14.254],
    ['gpg', 17.118],
    ['mmol/L', 100.09],
    ['meq/L', 50.04],
    ['mg/L Ca', 2.497],
    ['ppm', 1],
    ['mg/L as CaCO3', 1],
    ['mg/L CaCO₃', 1],
  ] as const)('1 %s of hardness is %d mg/L as CaCO3', (unit, value) => {
    expect(read('hardness', `1 ${unit}`, 'us')).toBeCloseTo(value, 2)
  })

  test.each([
    ['°dH', 17.848],
    ['°KH', 17.848],
    ['°f', 10],
    ['mmol/L', 50.043],
    ['meq/L', 50.043],
    ['mval/L', 50.043],
    ['mg/L HCO3-', 0.8202],
    ['mg/L HCO₃⁻', 0.8202],
    ['mg/L as CaCO3', 1],
  ] as const)('1 %s of alkalinity is %d mg/L as CaCO3', (unit, value) => {
    expect(read('alkalinity', `1 ${unit}`)).toBeCloseTo(value, 3)
  })

  test('hardness of 1 mmol/L is 5.6 German, 10 French and 7.0 English degrees (from memory)', () => {
    const mmol = read('hardness', '1 mmol/L') as number
    expect(mmol / UNITS.get('hardnessDH')!.toSI).toBeCloseTo(5.608, 3)
    expect(mmol / UNITS.get('hardnessFH')!.toSI).toBeCloseTo(10.009, 3)
    expect(mmol / UNITS.get('hardnessE')!.toSI).toBeCloseTo(7.022, 3)
  })

  test('alkalinity of 61 mg/L HCO3 is 50 mg/L as CaCO3 and 1 mmol/L', () => {
    expect(read('alkalinity', '61.0168 mg/L HCO3')).toBeCloseTo(50.04345, 9)
    expect(read('alkalinity', '1 mmol/l')).toBeCloseTo(50.04345, 9)
  })

  test('grains per gallon are told apart by whose gallon it is, and refused where that is not said', () => {
    expect(read('hardness', '10 gpg', 'us')).toBeCloseTo(171.18, 2)
    expect(read('hardness', '10 gpg', 'imperial')).toBeCloseTo(142.54, 2)
    expect(read('hardness', '10 gpg', 'metric')).toBe('typed-ambiguous-gallon')
    expect(read('hardness', '10 °e', 'metric')).toBeCloseTo(142.54, 2)
  })

  test('a French degree is no Fahrenheit, a hardness no mass', () => {
    expect(read('temperature', '68 °F', 'us')).toBeCloseTo(20, 9)
    expect(read('hardness', '25 °f')).toBe(250)
    expect(read('hardness', '25 kg')).toBe('typed-wrong-kind')
    expect(read('hardness', '-3 mg/L')).toBe('typed-negative')
    expect(read('alkalinity', '-3 mg/L')).toBe(-3)
  })

  test('conductivity: 1.2 mS/cm is 1200 µS/cm, with either micro sign', () => {
    for (const text of ['1200 µS/cm', '1200 μS/cm', '1.2 mS/cm', '0.12 S/m', '1200'])
      expect(read('conductivity', text), text).toBeCloseTo(1200, 9)
    expect(formatQuantity('conductivity', 1234.4, 'metric', { digits: 0 }).replace(/\s/g, ' ')).toBe('1 234 µS/cm')
  })
})
