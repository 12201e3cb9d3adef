import { describe, expect, test } from 'vitest'
import { measuredStarts, overallMovements, productsOf } from '../../../src/ui/ledger/opening/lines.ts'
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

  test('each product is named once, in order', () => {
    expect(productsOf([...lines, ...lines])).toEqual(['sodium-bicarbonate', 'muriatic-acid-31', 'boric-acid'])
  })
})
