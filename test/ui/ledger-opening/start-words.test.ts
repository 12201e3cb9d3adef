import { describe, expect, test } from 'vitest'
import { START_MODES } from '../../../src/plan/index.ts'
import {
  conditionWords,
  daysWords,
  dayWords,
  figureWords,
  numberedParts,
  phaseWords,
  tickText,
} from '../../../src/ui/ledger/opening/start/start-words.ts'

const plain = (text: string) => text.replace(/\u00a0/g, ' ')

describe('the words of a start', () => {
  test('where the owner stands in it', () => {
    expect(dayWords(3, 28)).toBe('Day 3 of 28')
    expect(dayWords(0, 28)).toBe('It starts tomorrow')
    expect(dayWords(-2, 28)).toBe('It starts in 3 days')
    expect(dayWords(29, 28)).toBe('Day 29; the schedule ended with day 28')
    expect(daysWords({ fromDay: 2, toDay: 2 })).toBe('day 2')
    expect(daysWords({ fromDay: 2, toDay: 9 })).toBe('days 2 to 9')
    expect(tickText(4, 'Brush once a day')).toBe('Day 4: Brush once a day.')
  })

  test('what the readings say to a step', () => {
    const condition = { on: 'metals', words: 'only where a metal reads above its limit' } as const
    expect(conditionWords({ condition, applies: 'yes' })).toMatch(/^Your readings ask for it: only where/)
    expect(conditionWords({ condition, applies: 'no' })).toMatch(/^Your readings do not ask for it: /)
    expect(conditionWords({ condition, applies: 'measure' })).toMatch(/^Measure first: /)
    expect(conditionWords({ applies: 'yes' })).toBeUndefined()
  })

  test('a figure shows its range, and no digits that the range leaves open', () => {
    const wide = figureWords({ quantity: 'mass', value: 2.3456, low: 1.5, high: 3.5 }, 'metric')
    expect(plain(wide.best)).toBe('2.3 kg')
    expect(plain(wide.range ?? '')).toBe('1.5 to 3.5 kg')
    expect(figureWords({ quantity: 'mass', value: 2, low: 2, high: 2 }, 'metric').range).toBeUndefined()
  })

  test('a few drops are told in millilitres also where the house has ounces; a jug is not', () => {
    expect(plain(figureWords({ quantity: 'liquid', value: 8e-7, low: 8e-7, high: 8e-7 }, 'us').best)).toMatch(/mL$/)
    expect(plain(figureWords({ quantity: 'liquid', value: 1e-3, low: 1e-3, high: 1e-3 }, 'us').best)).not.toMatch(/mL$/)
  })

  test('every target that any start changes is told with its days', () => {
    for (const mode of START_MODES.rows)
      for (const phase of mode.targets) {
        const words = plain(phaseWords(phase, 'metric'))
        expect(words).toContain(daysWords(phase))
        if (phase.change.kind === 'withheld') expect(words).toContain('nothing is dosed for it')
        expect(words).not.toContain(phase.key === 'pH' ? 'undefined' : phase.key)
      }
  })

  test('numbered work becomes a list and loses no word; other text is left alone', () => {
    expect(numberedParts('1. Fill 10 L. 2. Stir. 3. Wait.')).toEqual(['Fill 10 L.', 'Stir.', 'Wait.'])
    expect(numberedParts('By the makers’ manuals.')).toBeUndefined()
    const all = START_MODES.rows.flatMap(({ steps }) => steps.map(({ how }) => how))
    const numbered = all.filter((how) => how.startsWith('1. '))
    expect(numbered.length).toBeGreaterThan(0)
    for (const how of numbered)
      expect((numberedParts(how) ?? []).map((part, i) => `${i + 1}. ${part}`).join(' ')).toBe(how)
  })
})
