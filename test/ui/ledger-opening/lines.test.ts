import { describe, expect, test } from 'vitest'
import {
  entryOf,
  measuredStarts,
  originOf,
  overallMovements,
  productsOf,
  visibleMovements,
} from '../../../src/ui/ledger/opening/lines.ts'
import { openingFixture } from '../../support/opening-fixture.ts'

const { lines } = openingFixture

describe('the lines of an opening', () => {
  test('only the first line that moves a reading starts from a measurement', () => {
    const starts = measuredStarts(lines)
    expect(starts.get('alkalinity')?.has('pH')).toBe(true)
    expect(starts.get('acid')?.has('pH')).toBe(false)
    expect(starts.get('borate')?.has('borate_mg_per_L_as_B')).toBe(true)
  })

  test('the whole plan goes from the first start to the last end', () => {
    const whole = new Map(overallMovements(lines).map((movement) => [movement.key, movement]))
    expect(whole.get('pH')).toMatchObject({ before: 7.9, after: 7.5 })
    expect(whole.get('ta_mg_per_L_as_CaCO3')).toMatchObject({ before: 42, after: 88 })
  })

  test('hours count from the first dose that was given, else from the chosen start, else from the usual one', () => {
    const now = new Date(2026, 4, 2, 9, 20).getTime()
    expect(originOf(openingFixture, undefined, now + 7)).toBe(now + 7)
    expect(originOf(openingFixture, now - 5, now)).toBe(now - 5)
    const given = { product: 'sodium-bicarbonate', amountG: 6500, atMs: now - 3_600_000 }
    const underWay = {
      ...openingFixture,
      lines: lines.map((line) => (line.key === 'alkalinity' ? { ...line, given } : line)),
    }
    expect(originOf(underWay as typeof openingFixture, now - 5, now)).toBe(now - 3_600_000)
  })

  test('a done line finds its entry in the log, to take it back', () => {
    const atMs = Date.parse('2026-05-02T09:00:00Z')
    const line = {
      ...lines[1],
      given: { product: 'sodium-bicarbonate', amountG: 6500, atMs },
    } as (typeof lines)[number]
    const entry = {
      kind: 'dose' as const,
      id: 'b',
      at: '2026-05-02T11:00:00+02:00',
      product: 'sodium-bicarbonate',
      amountG: 6500,
    }
    expect(entryOf(line, [{ ...entry, id: 'a', amountG: 100 }, entry])?.id).toBe('b')
    expect(entryOf(line, [])).toBeUndefined()
    expect(entryOf(lines[0] as (typeof lines)[number], [entry])).toBeUndefined()
  })

  test('a scale is drawn only for what has a band or is the index, and reads differently after', () => {
    const band = { low: 1, aim: 2, high: 3 }
    const format = (_: string, value: number) => value.toFixed(1)
    const shown = visibleMovements(
      [
        { key: 'fc_mg_per_L_as_Cl2', before: 1, after: 2, band, inBand: true },
        { key: 'pH', before: 7.51, after: 7.52, band, inBand: true },
        { key: 'salt_mg_per_L_as_NaCl', before: 300, after: 320, inBand: true },
        { key: 'calciteSI', before: -0.4, after: -0.1, inBand: true },
      ],
      format,
    )
    expect(shown.map((movement) => movement.key)).toEqual(['fc_mg_per_L_as_Cl2', 'calciteSI'])
  })

  test('each product is named once, in order', () => {
    expect(productsOf([...lines, ...lines])).toEqual(['sodium-bicarbonate', 'muriatic-acid-31', 'boric-acid'])
  })
})
