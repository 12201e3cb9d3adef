import { describe, expect, test } from 'vitest'
import { ageWords, dateOf, dayAndTime, spanWords, waitWords } from '../../../src/ui/ledger/opening/schedule.ts'

const at = (month: number, day: number, hour: number, minute = 0) =>
  new Date(2026, month - 1, day, hour, minute).getTime()

describe('when a line is due', () => {
  test('days are counted from the calendar day of the start, not in spans of 24 hours', () => {
    const start = at(5, 2, 15)
    expect(dayAndTime(start, start)).toBe('Day 1, 15:00')
    expect(dayAndTime(start, at(5, 2, 21, 30))).toBe('Day 1, 21:30')
    expect(dayAndTime(start, at(5, 3, 1))).toBe('Day 2, 01:00')
    expect(dayAndTime(start, at(5, 4, 15))).toBe('Day 3, 15:00')
  })

  test('a wait is told in minutes, hours or days', () => {
    const plain = (hours: number) => spanWords(hours, 'metric').replaceAll('\u00a0', ' ')
    expect(plain(0.25)).toBe('15 min')
    expect(plain(8)).toBe('8 h')
    expect(plain(1.5)).toBe('1.5 h')
    expect(plain(48)).toBe('48 h')
    expect(plain(255)).toBe('11 days')
  })

  test('a wait is rounded up, never down', () => {
    const plain = (hours: number) => waitWords(hours, 'metric')?.replaceAll('\u00a0', ' ')
    expect(plain(13.1)).toBe('wait 13.5 h')
    expect(plain(4)).toBe('wait 4 h')
    expect(plain(0)).toBeUndefined()
  })

  test('the year is named only where it is another one', () => {
    expect(dateOf(at(5, 2, 9), at(11, 24, 9))).toBe('2 May')
    expect(dateOf(new Date(2025, 4, 2).getTime(), at(11, 24, 9))).toBe('2 May 2025')
  })
})

describe('the age of readings', () => {
  test('hours up to two days, then days, then months', () => {
    expect(ageWords(0.4)).toBe('measured within the hour')
    expect(ageWords(1.2)).toBe('measured 1 hour ago')
    expect(ageWords(47.9)).toBe('measured 47 hours ago')
    expect(ageWords(72)).toBe('measured 3 days ago')
    expect(ageWords(24 * 200)).toBe('measured 6 months ago')
    expect(ageWords(-2)).toBe('dated in the future')
  })
})
