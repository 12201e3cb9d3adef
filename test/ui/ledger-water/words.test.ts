import { describe, expect, test } from 'vitest'
import { codeWarning } from '../../../src/ui/ledger/water/code-limits.ts'
import { andList, inSentence, unknownWords } from '../../../src/ui/ledger/water/reading-words.ts'
import { carbonDioxideWords, saturationWords, whyIndicesDiffer } from '../../../src/ui/ledger/water/state-words.ts'

describe('a target outside code warns', () => {
  const chlorine = { low: 1, aim: 2, high: 3 }

  test('the chlorine floor is 1 mg/L without stabiliser and 2 with it (MAHC 5.7.3.1.1)', () => {
    expect(codeWarning('fc_mg_per_L_as_Cl2', chlorine, 0)).toBeUndefined()
    expect(codeWarning('fc_mg_per_L_as_Cl2', chlorine, 30)).toContain('below')
  })

  test('stabiliser that nobody measured counts as present', () => {
    expect(codeWarning('fc_mg_per_L_as_Cl2', chlorine, undefined)).toContain('at least 2 mg/L')
  })

  test('pH, alkalinity and stabiliser have their limits, with a source', () => {
    expect(codeWarning('pH', { low: 6.8, aim: 7.2, high: 7.6 }, 0)).toContain('MAHC')
    expect(codeWarning('ta_mg_per_L_as_CaCO3', { low: 60, aim: 90, high: 181 }, 0)).toContain('above')
    expect(codeWarning('cya_mg_per_L', { low: 30, aim: 60, high: 100 }, 0)).toContain('above')
    expect(codeWarning('pH', { low: 7.2, aim: 7.5, high: 7.8 }, 0)).toBeUndefined()
    expect(codeWarning('salt_mg_per_L_as_NaCl', { low: 0, aim: 1, high: 9000 }, 0)).toBeUndefined()
  })
})

describe('what was not measured is said', () => {
  test('without pH or alkalinity nothing can be worked out', () => {
    expect(unknownWords({})).toContain('Without pH and total alkalinity')
  })

  test('the others are not dosed for', () => {
    const words = unknownWords({ pH: 7.5, ta_mg_per_L_as_CaCO3: 80, ch_mg_per_L_as_CaCO3: 200, temperature_C: 20 })
    expect(words).toContain('nothing is dosed for it: stabiliser')
    expect(words).not.toContain('calcium')
  })

  test('zero is a reading, not an unknown', () => {
    const words = unknownWords({ pH: 7.5, ta_mg_per_L_as_CaCO3: 80, cya_mg_per_L: 0 })
    expect(words).not.toContain('stabiliser')
  })

  test('labels read well inside a sentence', () => {
    expect(inSentence('Total alkalinity')).toBe('total alkalinity')
    expect(inSentence('pH')).toBe('pH')
    expect(inSentence('Borate, as boron')).toBe('borate')
    expect(andList(['a', 'b', 'c'])).toBe('a, b and c')
  })
})

describe('the balance in words', () => {
  test('names the cause that weighs most: stabiliser and borate, then cold, then salt', () => {
    expect(whyIndicesDiffer({ cya_mg_per_L: 50, borate_mg_per_L_as_B: 45 }, 26)).toContain('stabiliser and borate')
    expect(whyIndicesDiffer({ borate_mg_per_L_as_B: 45 }, 26)).toContain('belongs to borate')
    expect(whyIndicesDiffer({}, 8)).toContain('cold')
    expect(whyIndicesDiffer({ salt_mg_per_L_as_NaCl: 3200 }, 26)).toContain('dissolved salts')
  })

  test('a negative index dissolves, a positive one leaves scale', () => {
    expect(saturationWords(-0.6)).toContain('dissolves')
    expect(saturationWords(0.1)).toBe('near balance')
    expect(saturationWords(0.6)).toContain('scale')
    expect(saturationWords(Number.NEGATIVE_INFINITY)).toContain('no calcium')
  })

  test('carbon dioxide beyond air’s escapes', () => {
    const format = (factor: number) => factor.toFixed(0)
    expect(carbonDioxideWords(-2.38, format)).toContain('10 times')
    expect(carbonDioxideWords(-3.38, format)).toBe('in balance with air')
    expect(carbonDioxideWords(-3.9, format)).toContain('takes some up')
  })
})
