import { describe, expect, test } from 'vitest'
import { dosesOf, plannedOf } from '../../../src/ui/ledger/opening/pours.ts'

const line = {
  amountG: 900,
  pours: [
    { index: 1, amountG: 300, hoursAfterStart: 0 },
    { index: 2, amountG: 300, hoursAfterStart: 4 },
    { index: 3, amountG: 300, hoursAfterStart: 8 },
  ],
}
const given = { amountG: 990, at: '2026-05-02T18:00:00Z' }

describe('a line of several pours', () => {
  test('is filled in with the first, or with all of it', () => {
    expect(plannedOf(line, 'one')).toBe(300)
    expect(plannedOf(line, 'all')).toBe(900)
  })

  test('one pour is one dose, as it was given', () => {
    expect(dosesOf(line, 'one', given)).toEqual([given])
    expect(dosesOf({ ...line, pours: line.pours.slice(0, 1) }, 'all', given)).toEqual([given])
  })

  test('all of them are a dose each, hours apart, the last when it was said, and no gram is lost', () => {
    const doses = dosesOf(line, 'all', given)
    expect(doses.map(({ at }) => Date.parse(at))).toEqual(
      [10, 14, 18].map((hour) => Date.parse(`2026-05-02T${hour}:00:00Z`)),
    )
    expect(doses.reduce((sum, { amountG }) => sum + amountG, 0)).toBeCloseTo(990, 9)
  })
})
