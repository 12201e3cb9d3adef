import { describe, expect, test } from 'vitest'
import { activeWords } from '../../../src/ui/ledger/water/chlorine-words.ts'
import {
  andList,
  inSentence,
  rangeWords,
  unitsWords,
  unknownWords,
  whereWords,
} from '../../../src/ui/ledger/water/reading-words.ts'
import { sourceWords } from '../../../src/ui/ledger/water/source-words.ts'
import {
  alkalinityParts,
  alkalinityWords,
  carbonDioxideWords,
  indexLacksWords,
  saturationWords,
  unreadWords,
} from '../../../src/ui/ledger/water/state-words.ts'
import { CONSTANT_SETS, equilibrate, totalsOf, type WaterReading } from '../../../src/water/index.ts'

const solved = (reading: WaterReading) => {
  const totals = totalsOf(reading, CONSTANT_SETS.default)
  if (!totals.ok) throw new Error(totals.problem.what)
  const water = equilibrate(totals.value, CONSTANT_SETS.default)
  if (!water.ok) throw new Error(water.problem.what)
  return water.value
}

describe('a source', () => {
  test('is named with how sure it is, and once where both say the same', () => {
    expect(sourceWords({ source: 'DPD methods', status: 'from memory' })).toBe('(DPD methods; from memory)')
    const custom = 'common practice, no source'
    expect(sourceWords({ source: custom, status: custom })).toBe(`(${custom})`)
    expect(sourceWords({ source: `${custom}; the figure is ours`, status: custom })).toBe(
      `(${custom}; the figure is ours)`,
    )
  })
})

describe('what was not measured is said', () => {
  test('without pH or alkalinity nothing can be worked out', () => {
    expect(unknownWords({}, 'us')).toContain('Without pH and total alkalinity')
  })

  test('the others are not dosed for', () => {
    const words = unknownWords(
      { pH: 7.5, ta_mg_per_L_as_CaCO3: 80, ch_mg_per_L_as_CaCO3: 200, temperature_C: 20 },
      'us',
    )
    expect(words).toContain('nothing is dosed for it: stabiliser')
    expect(words).not.toContain('calcium')
  })

  test('the warmth that is taken instead is told in the owner’s degrees', () => {
    const values = { pH: 7.5, ta_mg_per_L_as_CaCO3: 80 }
    expect(unknownWords(values, 'us')).toMatch(/77\s°F is assumed/)
    expect(unknownWords(values, 'metric')).toMatch(/25\s°C is assumed/)
  })

  test('zero is a reading, not an unknown', () => {
    const words = unknownWords({ pH: 7.5, ta_mg_per_L_as_CaCO3: 80, cya_mg_per_L: 0 }, 'us')
    expect(words).not.toContain('stabiliser')
  })

  test('what another reading tells is not called unmeasured', () => {
    const values = { pH: 7.5, ta_mg_per_L_as_CaCO3: 80 }
    expect(unknownWords(values, 'us')).toContain('calcium')
    expect(unknownWords(values, 'us', ['ch_mg_per_L_as_CaCO3'])).not.toContain('calcium')
  })

  test('labels and ranges read well inside a sentence', () => {
    expect(inSentence('Total alkalinity')).toBe('total alkalinity')
    expect(inSentence('pH')).toBe('pH')
    expect(inSentence('Borate, as boron')).toBe('borate')
    expect(andList(['a', 'b', 'c'])).toBe('a, b and c')
    expect(rangeWords('3 mg/L', '5 mg/L')).toBe('3 to 5 mg/L')
    expect(rangeWords('5 mg/L', '5 mg/L')).toBe('5 mg/L')
  })

  test('a reading’s place by its band is said, ends included', () => {
    const band = { low: 60, aim: 90, high: 120 }
    const say = (value: number) => `${value} mg/L`
    expect(whereWords(59, band, say)).toBe('below the band 60 to 120 mg/L')
    expect(whereWords(60, band, say)).toBe('inside the band 60 to 120 mg/L')
    expect(whereWords(121, band, say)).toContain('above')
  })

  test('grains per gallon are named only where a gallon is one thing', () => {
    expect(unitsWords('us')).toContain('gpg')
    expect(unitsWords('metric')).not.toContain('gpg')
  })
})

describe('the balance in words', () => {
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

  test('a table index that can’t be told says which reading it needs', () => {
    expect(indexLacksWords({})).toBe('needs calcium and temperature')
    expect(indexLacksWords({ th_mg_per_L_as_CaCO3: 200, temperature_C: 20 })).toContain('total hardness is not enough')
    expect(indexLacksWords({ ch_mg_per_L_as_CaCO3: 0, temperature_C: 20 })).toContain('no calcium')
  })

  test('the parts of alkalinity make up the whole, and stabiliser and borate have theirs', () => {
    const water = solved({
      pH: 7.6,
      ta_mg_per_L_as_CaCO3: 110,
      ch_mg_per_L_as_CaCO3: 250,
      cya_mg_per_L: 50,
      borate_mg_per_L_as_B: 45,
      fc_mg_per_L_as_Cl2: 3,
      salt_mg_per_L_as_NaCl: 900,
    })
    const parts = alkalinityParts(water)
    expect(parts.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(110, 6)
    // fCy 0.334 and fB 0.121 at pH 7.6 and 25 °C: the exact corrections of the design notes
    expect(parts.find(({ id }) => id === 'cyanurate')?.value).toBeCloseTo(0.334 * 50, 0)
    expect(parts.find(({ id }) => id === 'borate')?.value).toBeCloseTo(0.121 * 45, 0)
    expect(alkalinityWords(water)).toContain('carbonate alone')
    expect(alkalinityWords(solved({ pH: 7.5, ta_mg_per_L_as_CaCO3: 90, salt_mg_per_L_as_NaCl: 500 }))).toContain(
      'Nearly all',
    )
  })

  test('a part that nobody read is unknown, not none, and the ± of the index says that it leaves it out', () => {
    const water = solved({ pH: 7.5, ta_mg_per_L_as_CaCO3: 90, salt_mg_per_L_as_NaCl: 500 })
    const part = { key: 'cya_mg_per_L', atMgPerL: 50, holdsMgPerL: 15.6, lowersSI: 0.09 } as const
    const isUnknown = alkalinityParts(water, [part]).map(({ id, isUnknown }) => [id, isUnknown])
    expect(isUnknown).toContainEqual(['cyanurate', true])
    expect(isUnknown).toContainEqual(['borate', false])
    expect(alkalinityWords(water, true)).not.toContain('Nearly all')
    const words = unreadWords(
      [part],
      (value) => value.toFixed(0),
      (value) => value.toFixed(2),
    )
    expect(words).toContain('Stabiliser is not measured: 50 mg/L of stabiliser would hold 16 of it')
    expect(words).toContain('the ± of the index doesn’t count it')
    expect(unreadWords([], String, String)).toBe(undefined)
  })

  test('active chlorine of an expected water can’t be told where stabiliser was not read', () => {
    const equilibrium = solved({ pH: 7.5, ta_mg_per_L_as_CaCO3: 90, salt_mg_per_L_as_NaCl: 500, fc_mg_per_L_as_Cl2: 3 })
    const reading = {} as never
    expect(activeWords({ reading, equilibrium }, 'metric')).toMatch(/^1\.\d/)
    expect(activeWords({ reading, equilibrium, unknown: ['cya_mg_per_L'] }, 'metric')).toContain(
      'stabiliser is not measured',
    )
  })
})
