import { describe, expect, test } from 'vitest'
import { mayHold, PRODUCTS, productsWith } from '../../../src/chemicals/index.ts'
import { amountFromG, formatAmount, productLabel } from '../../../src/ui/ledger/opening/amounts.ts'
import { safeFirstWords } from '../../../src/ui/ledger/opening/dose-words.ts'
import { formatMoney } from '../../../src/ui/ledger/opening/money.ts'
import { ageingWords, freeId, heldWords, verdictWords } from '../../../src/ui/ledger/opening/shed/shed-words.ts'

const plain = (text: string) => text.replace(/\u00a0/g, ' ')
const jug = {
  id: 'own-1',
  label: 'Green jug',
  like: 'liquid-chlorine-12',
  strength: 11,
  basis: 'trade-percent',
} as const

describe('own products and devices', () => {
  test('an own product is poured as a liquid under its own name and density', () => {
    const list = productsWith([{ ...jug, densityKgPerL: 1.25 }])
    expect(productLabel('own-1', list)).toBe('Green jug')
    expect(productLabel('own-1')).toBe('own-1')
    expect(amountFromG('own-1', 1250, list)).toBeCloseTo(0.001, 9)
    expect(plain(formatAmount('own-1', 1250, 'metric', list))).toMatch(/^1(\.00?)? L$/)
  })

  test('what is left of stored liquid chlorine, with its range', () => {
    const found = productsWith([{ ...jug, ageDays: 60, storedC: 30 }]).find('own-1')
    if (!found.ok || !found.value.product.ageing) throw new Error('it has no age')
    const { ageing } = found.value.product
    const words = plain(ageingWords(ageing, 'trade-percent', 'metric'))
    expect(words).toContain(`About ${ageing.percent.toFixed(1)} trade % left of 11.0 after 60 days at 30 °C`)
    expect(words).toContain(`between ${ageing.low.toFixed(1)} and ${ageing.high.toFixed(1)}`)
    expect(ageing.percent).toBeLessThan(11)
  })

  test('a device that held tablets is told to stay away from liquid chlorine, with why and what instead', () => {
    const device = { kind: 'feeder', name: 'Feeder', isNew: true, held: [{ product: 'trichlor-tablet' }] } as const
    const chlorine = PRODUCTS.get('liquid-chlorine-12')
    if (!chlorine) throw new Error('there is no liquid chlorine')
    const never = verdictWords(mayHold(device, chlorine.id), chlorine)
    expect(never[0]).toBe(`${chlorine.label} must never go in.`)
    expect(never.join(' ')).toMatch(/has held Trichlor tablet.*Take a new one.*EPA/)
    const empty = { ...device, held: [] }
    expect(verdictWords(mayHold(empty, chlorine.id), chlorine)[0]).toBe(`${chlorine.label} may go in.`)
    const unknown = verdictWords(mayHold({ ...empty, isNew: false }, chlorine.id), chlorine)
    expect(unknown[0]).toBe(`${chlorine.label}: not yet.`)
  })

  test('new is never called unknown, and an unknown history never empty', () => {
    expect(heldWords({ isNew: true }, undefined)).toBe('new, has held nothing')
    expect(heldWords({ isNew: false }, undefined)).toBe('what it held is not known')
    expect(heldWords({ isNew: false }, 'Trichlor tablet')).toBe('Trichlor tablet')
  })

  test('ids are free ones', () => {
    expect(freeId('own', [])).toBe('own-1')
    expect(freeId('own', ['own-1', 'own-3'])).toBe('own-2')
  })

  test('the safe first share is told only where it is less than all', () => {
    const say = (amountG: number) => `${amountG} g`
    expect(safeFirstWords({ safeFirstG: 80, amountG: 100 }, say)).toBe(
      'Give 80 g first, measure, then what is still lacking',
    )
    expect(safeFirstWords({ safeFirstG: 100, amountG: 100 }, say)).toBeUndefined()
    expect(safeFirstWords({ amountG: 100 }, say)).toBeUndefined()
  })

  test('money has two decimals and the currency as the owner writes it', () => {
    expect(plain(formatMoney(1234.5, 'Cr'))).toBe('1,234.50 Cr')
    expect(formatMoney(3, undefined)).toBe('3.00')
  })
})
