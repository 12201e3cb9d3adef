import { describe, expect, test } from 'vitest'
import { productById } from '../../src/chemicals/index.ts'
import type { OpeningPlan, StepLine } from '../../src/plan/index.ts'
import { good } from '../water/golden.ts'
import { BALANCED, FRESH, NOW, plan } from './opening-cases.ts'

const stepOf = (of: OpeningPlan, key: string) => of.lines.find((line) => line.key === key) as StepLine
const liquid = good(productById('liquid-chlorine-12')).product

describe('amounts that a sentence names', () => {
  test.each([
    ['keep-chlorine', plan(FRESH)],
    ['combined', plan(BALANCED, { combinedMgPerL: 1.2 })],
  ])(
    '%s: the sentence’s words and the amount beside it are the same, so a screen can put other units in',
    (key, of) => {
      const { how, amounts } = stepOf(of, key)
      expect(amounts).toHaveLength(1)
      const { text, productId, amountG } = amounts![0]!
      expect(productId).toBe(liquid.id)
      expect(text).toBe(`${amountG} g`)
      expect(how.split(text)).toHaveLength(2)
    },
  )

  test('keep-chlorine’s is what 1 mg/L takes in this volume, never more', () => {
    const [{ amountG } = { amountG: 0 }] = stepOf(plan(FRESH), 'keep-chlorine').amounts ?? []
    const exactG = 60 / liquid.availableChlorine
    expect(amountG).toBeLessThanOrEqual(exactG)
    expect(amountG).toBeGreaterThan(0.9 * exactG)
  })
})

describe('chlorine that breaks combined chlorine down', () => {
  const of = (more = {}) => plan(BALANCED, { combinedMgPerL: 1.2, ...more })

  test('is on the list of what to buy, less what is in stock', () => {
    const [{ amountG } = { amountG: 0 }] = stepOf(of(), 'combined').amounts ?? []
    const [item, ...more] = of().purchases
    expect(more).toEqual([])
    expect(item).toMatchObject({ productId: liquid.id, needG: amountG, inStockG: 0 })
    expect(item!.count).toBeGreaterThan(0)
    expect(of({ stockG: { [liquid.id]: 1e6 } }).purchases[0]).toMatchObject({ count: 0 })
  })

  test('is not bought once it was ticked, nor while metals hold it back', () => {
    expect(of({ doneKeys: [{ key: 'combined', atMs: NOW }] }).purchases).toEqual([])
    const held = of({ metals: { iron_mg_per_L: 0.9 } })
    expect(stepOf(held, 'combined').how).toContain('Not yet')
    expect(held.purchases).toEqual([])
  })
})
