import { describe, expect, test } from 'vitest'
import type { ReadingMethod, ReadingValues } from '../../../src/document/index.ts'
import { clashesOf } from '../../../src/ui/ledger/water/clashes.ts'
import { lettered, limitBands, readingLines } from '../../../src/ui/ledger/water/reading-lines.ts'
import { sourceWords } from '../../../src/ui/ledger/water/source-words.ts'
import { CONSTANT_SETS, leastSeen, methodSigma, readingFromPeople, trapsFor } from '../../../src/water/index.ts'

const linesOf = (values: ReadingValues, method: ReadingMethod) =>
  readingLines(values, method, readingFromPeople(values, method, CONSTANT_SETS.default), limitBands(0.4))
const line = (values: ReadingValues, method: ReadingMethod, key: string) =>
  linesOf(values, method).find(({ row }) => row.key === key)

describe('the lines of a set of readings', () => {
  test('a measured line holds 19 times in 20 within two standard deviations of its method', () => {
    const found = line({ pH: 7.5 }, 'drop-kit', 'pH')
    const sigma = methodSigma('drop-kit', 'pH', 7.5)?.sigma ?? Number.NaN
    expect(found?.sigma).toBe(sigma)
    expect(found?.tolerance?.high).toBeCloseTo(7.5 + 1.96 * sigma, 10)
    expect(found?.isReckoned).toBe(false)
  })

  test('what a method does not scatter on record has no bracket', () => {
    expect(line({ pH: 7.5, sulfate_mg_per_L: 40 }, 'drop-kit', 'sulfate_mg_per_L')?.tolerance).toBeUndefined()
  })

  test('nothing lies below none', () => {
    expect(line({ fc_mg_per_L_as_Cl2: 0.1 }, 'strip', 'fc_mg_per_L_as_Cl2')?.tolerance?.low).toBe(0)
  })

  test('a reading at the end of the test’s range is open at that end', () => {
    expect(line({ cya_mg_per_L: 100 }, 'drop-kit', 'cya_mg_per_L')?.tolerance?.openAt).toBe('high')
    expect(line({ cya_mg_per_L: 20 }, 'drop-kit', 'cya_mg_per_L')?.tolerance?.openAt).toBe('low')
    expect(line({ cya_mg_per_L: 50 }, 'drop-kit', 'cya_mg_per_L')?.tolerance?.openAt).toBeUndefined()
  })

  test('what a test sees only from some value on may be as much as that where it shows less', () => {
    const none = line({ cya_mg_per_L: 0 }, 'drop-kit', 'cya_mg_per_L')?.tolerance
    expect(none).toMatchObject({ low: 0, high: leastSeen('drop-kit', 'cya_mg_per_L') })
    const seen = line({ fc_mg_per_L_as_Cl2: 0 }, 'drop-kit', 'fc_mg_per_L_as_Cl2')
    expect(seen?.tolerance?.high).toBeCloseTo(1.96 * (seen?.sigma ?? Number.NaN), 10)
  })

  test('calcium that total hardness tells is called reckoned, with its range in words', () => {
    const found = line(
      { pH: 7.5, ta_mg_per_L_as_CaCO3: 90, th_mg_per_L_as_CaCO3: 200 },
      'strip',
      'ch_mg_per_L_as_CaCO3',
    )
    expect(found?.isReckoned).toBe(true)
    expect(found?.tolerance).toEqual({ low: 100, high: 200 })
    expect(found?.words).toContain('from total hardness')
  })

  test('combined chlorine is total less free, and none where the tests scatter by more', () => {
    const clear = line({ fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 3.5 }, 'photometer', 'cc_mg_per_L_as_Cl2')
    expect(clear?.value).toBeCloseTo(1.5, 10)
    expect(clear?.band?.high).toBe(0.4)
    expect(clear?.words).toBe('Total less free chlorine.')
    const lost = line({ fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 2.1 }, 'strip', 'cc_mg_per_L_as_Cl2')
    expect(lost?.words).toContain('may as well be none')
  })

  test('a combined chlorine that was read is not reckoned over', () => {
    const found = line(
      { fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 2.6, cc_mg_per_L_as_Cl2: 0.5 },
      'photometer',
      'cc_mg_per_L_as_Cl2',
    )
    expect(found?.value).toBe(0.5)
    expect(found?.isReckoned).toBe(false)
  })

  test('metals stand against their limits', () => {
    expect(limitBands(undefined).manganese_mg_per_L).toEqual({ low: 0, aim: 0, high: 0.05 })
    expect(limitBands(undefined).cc_mg_per_L_as_Cl2).toBeUndefined()
  })
})

describe('the traps of the tests', () => {
  test('each has its own letter, and names the readings it spoils', () => {
    const notes = lettered(
      trapsFor({ pH: 7.5, fc_mg_per_L_as_Cl2: 12, cya_mg_per_L: 40, temperature_C: 12 }, 'drop-kit'),
    )
    expect(notes.map(({ mark }) => mark).slice(0, 3)).toEqual(['a', 'b', 'c'])
    expect(notes.filter(({ concerns }) => concerns.includes('pH')).map(({ trap }) => trap.id)).toEqual([
      'ph-with-high-chlorine',
    ])
    for (const { trap } of notes) expect(sourceWords(trap)).toContain(trap.status)
  })
})

describe('readings that clash', () => {
  test('both kinds are said: those that a test’s definition forbids, and those that no water has', () => {
    const values = {
      pH: 7.2,
      ta_mg_per_L_as_CaCO3: 20,
      ch_mg_per_L_as_CaCO3: 300,
      th_mg_per_L_as_CaCO3: 120,
      salt_mg_per_L_as_NaCl: 10,
    }
    const codes = clashesOf(values, 'drop-kit').map(({ code }) => code)
    expect(codes).toContain('water-hardness-disagrees')
    expect(codes.length).toBe(2)
  })

  test('too few readings clash with nothing', () => {
    expect(clashesOf({ pH: 7.2 }, 'drop-kit')).toEqual([])
  })
})
