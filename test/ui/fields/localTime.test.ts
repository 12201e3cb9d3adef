import { describe, expect, test } from 'vitest'
import { isoFromLocal, isoFromMs, localFromIso } from '../../../src/ui/fields/localTime.ts'

describe('moments typed on this device', () => {
  test('a typed moment comes back as it was typed, in winter and in summer', () => {
    for (const local of ['2026-01-15T09:30', '2026-07-15T23:59', '2026-11-24T00:00']) {
      const iso = isoFromLocal(local)
      expect(iso).toMatch(/[+-]\d\d:\d\d$/)
      expect(localFromIso(iso)).toBe(local)
    }
  })

  test('the offset names the same instant', () => {
    const iso = isoFromLocal('2026-05-02T09:30') ?? ''
    expect(new Date(iso).getTime()).toBe(new Date('2026-05-02T09:30').getTime())
  })

  test('a moment in milliseconds is kept to the minute', () => {
    const ms = Date.UTC(2026, 4, 2, 9, 30, 42)
    expect(new Date(isoFromMs(ms)).getTime()).toBe(Date.UTC(2026, 4, 2, 9, 30, 0))
  })

  test('what is no moment is no moment', () => {
    expect(isoFromLocal('')).toBeUndefined()
    expect(isoFromLocal('soon')).toBeUndefined()
    expect(localFromIso(undefined)).toBe('')
    expect(localFromIso('soon')).toBe('')
  })
})
