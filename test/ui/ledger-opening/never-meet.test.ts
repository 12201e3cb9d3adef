import { describe, expect, test } from 'vitest'
import { neverMeet, orList } from '../../../src/ui/ledger/opening/never-meet.ts'

describe('what must never meet', () => {
  test('acid and hypochlorite of one plan are named, with the gas they make', () => {
    const rows = neverMeet(['muriatic-acid-31', 'sodium-bicarbonate', 'liquid-chlorine-12'])
    const gas = rows.find((row) => /chlorine gas/i.test(row.reason))
    expect(gas?.first).toEqual(['Muriatic acid 31.45 %'])
    expect(gas?.second.join()).toContain('Liquid chlorine')
    expect(gas?.source).not.toBe('')
  })

  test('calcium hypochlorite and stabilised tablets are a danger, and dangers come first', () => {
    const rows = neverMeet(['calcium-chloride-flake', 'sodium-bicarbonate', 'cal-hypo-65', 'trichlor-tablet'])
    expect(rows[0]?.kind).toBe('danger')
    expect(
      rows.some((row) => row.first.join().includes('Calcium hypochlorite') && row.second.join().includes('Trichlor')),
    ).toBe(true)
    const firstCloud = rows.findIndex((row) => row.kind === 'clouds')
    expect(rows.slice(firstCloud).every((row) => row.kind === 'clouds')).toBe(true)
  })

  test('a product alone meets nobody', () => {
    expect(neverMeet(['muriatic-acid-31'])).toEqual([])
    expect(neverMeet(['boric-acid', 'salt'])).toEqual([])
  })

  test('names are joined as people say them', () => {
    expect(orList(['a'])).toBe('a')
    expect(orList(['a', 'b', 'c'])).toBe('a, b or c')
  })
})
