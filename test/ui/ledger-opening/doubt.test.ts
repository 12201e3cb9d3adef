import { describe, expect, test } from 'vitest'
import { gFromAmount, productOf } from '../../../src/ui/ledger/opening/amounts.ts'
import { doubtOf } from '../../../src/ui/ledger/opening/doubt.ts'

const ID = 'liquid-chlorine-12'
const product = productOf(ID)
const litres = (l: number) => gFromAmount(ID, l / 1000)
const planned = { amountG: litres(1.34), highG: litres(1.5), text: '1.34 L' }

describe('an amount that can hardly have gone in', () => {
  test('is asked after with how far off it is and what it would do', () => {
    const words = doubtOf({ product, amountG: litres(99), planned, volumeM3: 60 }, 'metric')
    expect(words).toMatch(
      /^This is 74 times the 1\.34 L that the plan asks for, enough to raise free chlorine by 2\d0\smg\/L\./,
    )
    expect(words).toMatch(/Is it really what went in\?$/)
  })

  test('is asked after without a plan by what it would do, acid by what it takes', () => {
    expect(doubtOf({ product, amountG: litres(99), volumeM3: 60 }, 'metric')).toMatch(/^This is enough to raise free/)
    const acid = productOf('muriatic-acid-31')
    expect(doubtOf({ product: acid, amountG: 40_000, volumeM3: 60 }, 'metric')).toMatch(
      /lower alkalinity by \d+\smg\/L/,
    )
  })

  test('is not doubted where it is about the plan’s, less, or what one treatment has', () => {
    for (const l of [0, 0.5, 1.34, 1.9])
      expect(doubtOf({ product, amountG: litres(l), planned, volumeM3: 60 }, 'metric'), `${l} L`).toBeUndefined()
    expect(doubtOf({ product, amountG: litres(5), volumeM3: 60 }, 'metric')).toBeUndefined()
  })

  test('without a volume is held against the plan alone', () => {
    expect(doubtOf({ product, amountG: litres(99), planned, volumeM3: undefined }, 'metric')).toMatch(/asks for\. Is/)
    expect(doubtOf({ product, amountG: litres(99), volumeM3: undefined }, 'metric')).toBeUndefined()
  })
})
