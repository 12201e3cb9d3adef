import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { offBy, RULES, ruledPools, rulesPage } from '../support/rules-of-thumb.ts'

const off = (pool: RegExp, rule: string): number => {
  const found = ruledPools().find(({ name }) => pool.test(name))
  if (!found) throw new Error(String(pool))
  return offBy(RULES.find(({ id }) => id === rule)!, found)
}

describe('rules of thumb', () => {
  it('are off by what the page says, which npm run rules writes', () => {
    const page = readFileSync(new URL('../../src/basin/RULES-OF-THUMB.md', import.meta.url), 'utf8')
    expect(page).toBe(rulesPage())
  })

  it('are right where they should be: the box for an oblong, 5.9 for a circle and an ellipse', () => {
    // 7.5 and 5.9 are rounded: 7.5 / 7.4805 and 5.9 / (π/4 · 7.4805).
    expect(off(/^oblong 8/, 'box')).toBeCloseTo(7.5 / (1728 / 231) - 1, 12)
    expect(off(/^round/, 'round')).toBeCloseTo(5.9 / ((Math.PI / 4) * (1728 / 231)) - 1, 12)
    expect(off(/^ellipse/, 'round')).toBeCloseTo(5.9 / ((Math.PI / 4) * (1728 / 231)) - 1, 12)
  })

  it('are far off elsewhere, by closed forms: a hopper and a beach by the mean of two depths, a circle by 0.89', () => {
    // Hopper: 55 m³ over it and the prismatoid (50 + 4 · ½(10 + 2.5) ½(5 + 2) + 5) 1.5 / 6 below.
    const hopper = 55 + ((50 + 4 * 6.25 * 3.5 + 5) * 1.5) / 6
    expect(off(/hopper/, 'box')).toBeCloseTo((50 * 1.85 * 7.5) / (1728 / 231) / hopper - 1, 10)
    // Beach: 6 m of wedge and 4 m of 1.5 m.
    expect(off(/beach/, 'box')).toBeCloseTo((50 * 0.75 * 7.5) / (1728 / 231) / (22.5 + 30) - 1, 10)
    expect(off(/^round/, 'oval89')).toBeCloseTo(0.89 / (Math.PI / 4) - 1, 12)
  })
})
