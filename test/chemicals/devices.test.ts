import { describe, expect, test } from 'vitest'
import { type Device, keepApart, mayHold, PRODUCTS, productsWith } from '../../src/chemicals/index.ts'

const device = (kind: Device['kind'], held: readonly string[] = [], isNew = true): Device => ({
  kind,
  name: 'The thing',
  isNew,
  held: held.map((product) => ({ product })),
})
const answerOf = (kind: Device['kind'], held: readonly string[], next: string, isNew = true) =>
  mayHold(device(kind, held, isNew), next).answer

const byGroup = (group: 'hypochlorite' | 'isocyanurate') =>
  PRODUCTS.rows.filter((row) => row.groups.includes(group) && row.form !== 'gas').map((row) => row.id)
const kinds = ['feeder', 'skimmer', 'floater', 'bucket'] as const

describe('what a device may hold', () => {
  test.each(kinds)('a %s that held stabilised chlorine never holds unstabilised, and the other way about', (kind) => {
    for (const unstabilised of byGroup('hypochlorite'))
      for (const stabilised of byGroup('isocyanurate'))
        for (const isNew of [true, false]) {
          expect(answerOf(kind, [stabilised], unstabilised, isNew)).toBe('never')
          expect(answerOf(kind, [unstabilised], stabilised, isNew)).toBe('never')
          // nor after something harmless in between
          expect(answerOf(kind, [stabilised, 'salt'], unstabilised, isNew)).toBe('never')
        }
  })

  test('the refusal names what it held, why, a source, and a new device as the way out', () => {
    const verdict = mayHold(device('feeder', ['trichlor-tablet']), 'cal-hypo-tablet')
    expect(verdict).toMatchObject({ answer: 'never', because: 'trichlor-tablet', status: 'seen' })
    if (verdict.answer === 'may') throw new Error('was allowed')
    expect(verdict.reason).toContain('Trichlor')
    expect(verdict.source).toContain('550-F-01-003')
    expect(verdict.instead).toContain('new')
  })

  test('a new feeder may hold either, and go on with the same', () => {
    expect(answerOf('feeder', [], 'trichlor-tablet')).toBe('may')
    expect(answerOf('feeder', [], 'cal-hypo-tablet')).toBe('may')
    expect(answerOf('feeder', ['cal-hypo-tablet'], 'cal-hypo-tablet')).toBe('may')
    expect(answerOf('feeder', ['trichlor-tablet'], 'trichlor-tablet', false)).toBe('may')
  })

  test('an old device of unknown history is asked about before anything reactive, not before salt', () => {
    expect(answerOf('feeder', [], 'trichlor-tablet', false)).toBe('ask')
    expect(answerOf('bucket', [], 'muriatic-acid-31', false)).toBe('ask')
    expect(answerOf('bucket', [], 'salt', false)).toBe('may')
    expect(answerOf('bucket', ['gone-own-product'], 'liquid-chlorine-12')).toBe('ask')
    expect(answerOf('bucket', [], 'elixir')).toBe('ask')
  })

  test('a bucket bars whatever the table of dangerous pairs bars, and stabilised chlorine with alkali, for every pair of products', () => {
    const buckets = PRODUCTS.rows.filter((row) => row.form !== 'gas' && !row.isAccounting && row.form !== 'tablet')
    for (const before of buckets)
      for (const next of buckets) {
        const of = (group: 'isocyanurate' | 'alkali') => [before, next].some((row) => row.groups.includes(group))
        const isBarred = keepApart(before, next)?.kind === 'danger' || (of('isocyanurate') && of('alkali'))
        expect(answerOf('bucket', [before.id], next.id), `${before.id} then ${next.id}`).toBe(
          isBarred ? 'never' : 'may',
        )
      }
    expect(answerOf('bucket', ['muriatic-acid-31'], 'sodium-thiosulfate')).toBe('never')
    expect(answerOf('bucket', ['muriatic-acid-31'], 'soda-ash')).toBe('never')
    expect(answerOf('bucket', ['calcium-chloride-flake'], 'sodium-bicarbonate')).toBe('may')
  })

  test('what a device is not made for is refused even when new', () => {
    expect(answerOf('skimmer', [], 'cal-hypo-65')).toBe('never')
    expect(answerOf('floater', [], 'liquid-chlorine-12')).toBe('never')
    expect(answerOf('skimmer', [], 'muriatic-acid-31')).toBe('never')
    expect(answerOf('bucket', [], 'trichlor-tablet')).toBe('never')
    expect(answerOf('feeder', [], 'chlorine-gas')).toBe('never')
    expect(answerOf('skimmer', [], 'dichlor')).toBe('never')
    expect(answerOf('skimmer', [], 'soda-ash')).toBe('never')
    // stabiliser in its sock, and what only has to dissolve, may hang there
    expect(answerOf('skimmer', [], 'cyanuric-acid')).toBe('may')
  })

  test('tablets in a skimmer are let in with the word about the pump; a used bucket is to be rinsed', () => {
    const skimmer = mayHold(device('skimmer'), 'trichlor-tablet')
    expect(skimmer.answer === 'may' ? skimmer.notes.join(' ') : '').toContain('before the pump stops')
    const bucket = mayHold(device('bucket', ['salt']), 'soda-ash')
    expect(bucket.answer === 'may' ? bucket.notes.join(' ') : '').toContain('Rinse')
  })

  test('an owner’s own product counts by its substance', () => {
    const products = productsWith([
      { id: 'jug', label: 'Jug', like: 'liquid-chlorine-12', strength: 10, basis: 'trade-percent' },
      { id: 'tab', label: 'Tab', like: 'trichlor-tablet', strength: 90, basis: 'available-chlorine' },
    ])
    expect(mayHold(device('feeder', ['tab']), 'jug', products).answer).toBe('never')
    expect(mayHold(device('bucket'), 'tab', products).answer).toBe('never')
    expect(mayHold(device('bucket'), 'jug', products).answer).toBe('may')
  })
})
