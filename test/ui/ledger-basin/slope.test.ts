import { describe, expect, test } from 'vitest'
import { slopeRemark } from '../../../src/ui/ledger/basin/slope.ts'

// Limits as in ISPSC 2012 chapter 7: 1 : 7 to the first change of slope, then 1 : 3.
describe('the fall between two stations', () => {
  test('is said as 1 : n', () => {
    expect(slopeRemark([0, 1], [7, 2])?.words).toMatch(/^1\s:\s7$/)
    expect(slopeRemark([0, 2], [3, 1.9])?.words).toMatch(/^1\s:\s30$/)
  })

  test('1 : 7 while shallow and 1 : 3 beyond are still usual', () => {
    expect(slopeRemark([0, 1], [7, 2])?.hint).toBeUndefined()
    expect(slopeRemark([0, 1.6], [3, 2.6])?.hint).toBeUndefined()
  })

  test('steeper than usual says which limit and where', () => {
    expect(slopeRemark([0, 1], [5, 2])?.hint).toMatch(/1\s:\s7, the usual limit in shallow water/)
    expect(slopeRemark([0, 1.6], [2, 2.6])?.hint).toMatch(/1\s:\s3, the usual limit in deep water/)
  })

  test('what reads as the limit itself is never said to pass it', () => {
    for (const run of [2.99, 2.97, 2.96, 2.94, 2.9]) {
      const remark = slopeRemark([0, 1.6], [run, 2.6])
      expect(remark?.hint === undefined, `${run}`).toBe(/^1\s:\s3$/.test(remark?.words ?? ''))
    }
  })

  test('rising to the far end counts as steep as falling to it', () => {
    expect(slopeRemark([0, 2], [5, 1])).toEqual(slopeRemark([0, 1], [5, 2]))
  })

  test('two stations at one place have no fall, a level stretch is flat', () => {
    expect(slopeRemark([2, 1], [2, 2])).toBeUndefined()
    expect(slopeRemark([0, 1.2], [4, 1.2])).toEqual({ words: 'flat', hint: undefined })
  })
})
