import { describe, expect, test } from 'vitest'
import { calendarOf, isChlorineLate, keptStart, usualStart } from '../../../src/ui/ledger/opening/calendar.ts'
import { openingFixture } from '../../support/opening-fixture.ts'

const HOUR_MS = 3_600_000
const at = (day: number, hour: number, minute = 0) => new Date(2026, 4, day, hour, minute).getTime()
const clock = (ms: number | undefined) => {
  const date = new Date(ms ?? Number.NaN)
  return `${date.getDate()} ${date.getHours()}`
}
type Line = (typeof openingFixture.lines)[number]

/** Lines of one dose each at these hours. */
function doses(...starts: readonly { key: string; hours: number; purpose?: string; pours?: readonly number[] }[]) {
  const model = openingFixture.lines[1] as Line
  return starts.map(
    ({ key, hours, purpose = 'calcium', pours = [0] }) =>
      ({
        ...model,
        key,
        purpose,
        startHours: hours,
        state: 'later',
        pours: pours.map((h, i) => ({ index: i + 1, amountG: 1, hoursAfterStart: h })),
      }) as Line,
  )
}

describe('the calendar of an opening', () => {
  test('by day the plan’s own hours hold', () => {
    const times = calendarOf(doses({ key: 'a', hours: 1 }, { key: 'b', hours: 9 }), at(2, 9))
    expect(clock(times.get('a')?.startMs)).toBe('2 10')
    expect(clock(times.get('b')?.startMs)).toBe('2 18')
  })

  test('what falls into the night waits for seven in the morning, and all that follows moves along', () => {
    const times = calendarOf(doses({ key: 'a', hours: 14 }, { key: 'b', hours: 22 }, { key: 'c', hours: 24 }), at(2, 9))
    expect(clock(times.get('a')?.startMs)).toBe('3 7')
    expect(clock(times.get('b')?.startMs)).toBe('3 15')
    expect(clock(times.get('c')?.startMs)).toBe('3 17')
  })

  test('no wait between two lines, and none between two pours, gets shorter', () => {
    const hours = [1, 9, 17, 20, 31, 44, 60]
    const lines = doses(...hours.map((h, i) => ({ key: `k${i}`, hours: h, pours: [0, 1, 2] })))
    for (let start = 0; start < 24; start++) {
      const times = calendarOf(lines, at(2, start))
      for (let i = 1; i < hours.length; i++) {
        const gap = (times.get(`k${i}`)?.startMs ?? 0) - (times.get(`k${i - 1}`)?.startMs ?? 0)
        expect(gap).toBeGreaterThanOrEqual(((hours[i] ?? 0) - (hours[i - 1] ?? 0)) * HOUR_MS)
      }
      for (const { startMs, poursMs } of times.values())
        for (const ms of [startMs, ...poursMs]) {
          expect(new Date(ms).getHours()).toBeGreaterThanOrEqual(7)
          expect(new Date(ms).getHours()).toBeLessThan(21)
        }
      for (const { poursMs } of times.values())
        for (let p = 1; p < poursMs.length; p++)
          expect((poursMs[p] ?? 0) - (poursMs[p - 1] ?? 0)).toBeGreaterThanOrEqual(HOUR_MS)
    }
  })

  test('no line stands in the night for the first chlorine’s sake; that it comes late is told', () => {
    const lines = doses(
      { key: 'a', hours: 13 },
      { key: 'chlorine', hours: 21, purpose: 'openingChlorine' },
      { key: 'b', hours: 38 },
    )
    const times = calendarOf(lines, at(2, 9))
    expect(clock(times.get('a')?.startMs)).toBe('3 7')
    expect(clock(times.get('chlorine')?.startMs)).toBe('3 15')
    expect(isChlorineLate(lines, times, at(2, 9))).toBe(true)
    const soon = doses({ key: 'chlorine', hours: 3, purpose: 'openingChlorine' })
    expect(isChlorineLate(soon, calendarOf(soon, at(2, 17)), at(2, 17))).toBe(false)
    expect(isChlorineLate(soon, calendarOf(soon, at(2, 20)), at(2, 20))).toBe(true)
  })

  test('times are told to the quarter of an hour, never earlier than the plan allows', () => {
    const times = calendarOf(doses({ key: 'a', hours: 1 }, { key: 'b', hours: 5.13 }), at(2, 9))
    expect(times.get('b')?.startMs).toBe(at(2, 14, 15))
  })

  test('what is done stands where it was given', () => {
    const [line] = doses({ key: 'a', hours: 14 })
    const times = calendarOf([{ ...line, state: 'done' } as Line], at(2, 9))
    expect(clock(times.get('a')?.startMs)).toBe('2 23')
  })

  test('a plan that is looked at keeps its start until that is an hour past', () => {
    let shown: number | undefined
    const starts = [at(2, 8, 59), at(2, 9), at(2, 9, 1), at(2, 9, 59)].map((now) => {
      shown = keptStart(shown, now)
      return shown
    })
    expect(starts).toEqual(Array(4).fill(at(2, 9)))
    expect(keptStart(shown, at(2, 10, 1))).toBe(at(2, 11))
    // a clock that was set back
    expect(keptStart(at(5, 9), at(2, 9, 20))).toBe(at(2, 10))
  })

  test('hours that miss a quarter of an hour by a rounding error are that quarter', () => {
    const times = calendarOf(doses({ key: 'a', hours: 1 + 1e-7 }, { key: 'b', hours: 9 + 1e-7 }), at(2, 9))
    expect([times.get('a')?.startMs, times.get('b')?.startMs]).toEqual([at(2, 10), at(2, 18)])
  })

  test('nobody is asked to start at night', () => {
    expect(clock(usualStart(at(2, 9, 20)))).toBe('2 10')
    expect(clock(usualStart(at(2, 9)))).toBe('2 9')
    expect(clock(usualStart(at(2, 23, 30)))).toBe('3 9')
    expect(clock(usualStart(at(2, 19)))).toBe('3 9')
    expect(clock(usualStart(at(2, 3)))).toBe('2 9')
  })
})
