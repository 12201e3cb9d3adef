import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { effectPerGPerM3 } from '../../../src/plan/index.ts'
import { gFromAmount, productOf } from '../../../src/ui/ledger/opening/amounts.ts'
import { doubtOf } from '../../../src/ui/ledger/opening/doubt.ts'

const ID = 'liquid-chlorine-12'
const product = productOf(ID)
const KEYS = {
  'free chlorine': 'fc_mg_per_L_as_Cl2',
  alkalinity: 'ta_mg_per_L_as_CaCO3',
  stabiliser: 'cya_mg_per_L',
  borate: 'borate_mg_per_L_as_B',
  'calcium hardness': 'ch_mg_per_L_as_CaCO3',
  salt: 'salt_mg_per_L_as_NaCl',
} as const
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

  test.each([
    ['liquid-chlorine-12', 'free chlorine'],
    ['sodium-bicarbonate', 'alkalinity'],
    ['cyanuric-acid', 'stabiliser'],
    ['boric-acid', 'borate'],
    ['calcium-chloride-flake', 'calcium hardness'],
    ['salt', 'salt'],
  ] as const)('%s: asked after from the movement of %s on that the plan’s MODEL.md says', (id, name) => {
    const text = readFileSync(join(import.meta.dirname, '../../../src/plan/MODEL.md'), 'utf8')
    const mgPerL = Number(new RegExp(`\\| one dose: ${name} +\\| (\\d+)`).exec(text)?.[1])
    const each = productOf(id)!
    const key = KEYS[name]
    const gPerM3 = mgPerL / effectPerGPerM3(each, key)
    const at = (share: number) => doubtOf({ product: each, amountG: share * gPerM3 * 60, volumeM3: 60 }, 'metric')
    expect(at(0.999)).toBeUndefined()
    expect(at(1.001)).toContain(`raise ${name} by`)
  })
})
