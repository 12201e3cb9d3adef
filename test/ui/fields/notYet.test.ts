import { describe, expect, test } from 'vitest'
import { notYet } from '../../../src/ui/fields/notYet.ts'

const NOW = Date.parse('2026-05-02T09:30:00Z')
const MINUTE = 60_000
const at = (minutes: number) => new Date(NOW + minutes * MINUTE).toISOString()

describe('a moment of something done', () => {
  test('may be now, earlier, or as little later as two clocks differ', () => {
    for (const minutes of [-60 * 24 * 400, 0, 4]) expect(notYet(at(minutes), NOW), `${minutes} min`).toBeUndefined()
  })

  test('is refused where it is still to come, with the time it is now', () => {
    for (const minutes of [6, 60 * 24]) {
      const problem = notYet(at(minutes), NOW)
      expect(problem?.what, `${minutes} min`).toBe('This moment is still to come.')
      expect(problem?.hint).toMatch(/^It is 2 May 2026, \d\d:30 now on this device/)
    }
  })
})
