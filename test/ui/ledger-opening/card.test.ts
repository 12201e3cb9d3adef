import { describe, expect, test } from 'vitest'
import { deriveDeckCard } from '../../../src/derive/index.ts'
import { demoSpec } from '../../../src/document/index.ts'
import { gFromAmount, measureOf } from '../../../src/ui/ledger/opening/amounts.ts'
import { cardCautions, cardGroups, doseWords } from '../../../src/ui/ledger/opening/card/card-rows.ts'
import { parseQuantity, type UnitSystem } from '../../../src/units/index.ts'

const UNITS: readonly UnitSystem[] = ['us', 'metric', 'imperial']
const made = deriveDeckCard(demoSpec, 'pool', Date.parse('2026-05-03T09:00:00Z'))
if (!made.ok) throw new Error(made.problem.what)
const card = made.value

describe('the deck card', () => {
  test.each(UNITS)('in %s units no dose is written as more than what is lacking, nor as much less', (units) => {
    const doses = card.rows.flatMap((row) => row.doses)
    expect(doses.length).toBeGreaterThan(8)
    for (const dose of doses) {
      const read = parseQuantity(
        measureOf(dose.productId),
        doseWords(dose, units).replace(/\sin\s\d+\spours$/, ''),
        units,
      )
      if (!read.ok) throw new Error(read.problem.what)
      const writtenG = gFromAmount(dose.productId, read.value)
      expect(writtenG).toBeLessThanOrEqual(dose.exactG * (1 + 1e-9))
      expect(writtenG).toBeGreaterThan(dose.exactG * 0.8)
    }
  })

  test('a row reads evenly: whole ounces and two digits, rounded down, of one, two and three times as much', () => {
    const row = card.rows.find(({ reading }) => reading === 'fc_mg_per_L_as_Cl2')
    const first = row?.doses[0]
    if (!first) throw new Error('no chlorine on the card')
    const times = (n: number, exactG: number) => ({ ...first, exactG: n * exactG, pours: 1 })
    const written = (units: UnitSystem, exactG: number) => [1, 2, 3].map((n) => doseWords(times(n, exactG), units))
    const flOzG = gFromAmount(first.productId, 29.5735295625e-6)
    expect(written('us', 15.9 * flOzG)).toEqual(['15\u00a0fl oz (US)', '31\u00a0fl oz (US)', '47\u00a0fl oz (US)'])
    const literG = gFromAmount(first.productId, 1e-3)
    expect(written('metric', 0.4735 * literG)).toEqual(['470\u00a0mL', '940\u00a0mL', '1.40\u00a0L'])
  })

  test('each reading stands once, with a dose of each product under it', () => {
    for (const group of cardGroups(card, 'metric')) {
      expect(new Set(group.readings).size).toBe(group.readings.length)
      expect(group.readings.length).toBeLessThanOrEqual(3)
      for (const { doses } of group.products) expect(doses.length).toBe(group.readings.length)
    }
    const written = cardGroups(card, 'metric').flatMap(({ products }) => products.flatMap(({ doses }) => doses))
    expect(written.filter((dose) => dose !== undefined).length).toBe(card.rows.flatMap((row) => row.doses).length)
  })

  test('a caution of some products names them; one of all of them, or of the card, names none', () => {
    const of = (words: string) => cardCautions(card).find(({ text }) => text.startsWith(words))?.of
    expect(of('Acid burns eyes')).toBe('Muriatic acid')
    expect(of('It gets hot as it dissolves')).toBe('Calcium chloride flake')
    expect(of('Never near any acid')).toBe('Liquid chlorine')
    expect(of('The product')).toBe(undefined)
    expect(of('This card is no leave to bathe')).toBe(undefined)
    expect(cardCautions(card).map(({ text }) => text)).toEqual(card.cautions)
  })
})
