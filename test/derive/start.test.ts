import { describe, expect, test } from 'vitest'
import { deriveStart, startLine } from '../../src/derive/index.ts'
import { blankSpec, demoSpec, type Spec } from '../../src/document/index.ts'
import { START_MODES } from '../../src/plan/index.ts'
import { edited } from './edited.ts'

const systemId = 'pool'
const at = '2026-05-28T09:00:00-07:00'
const on = (mode: string, values?: { readonly [key: string]: number }): Spec =>
  edited(demoSpec, { id: 'setStart', args: { systemId, mode, at, ...(values ? { values } : {}) } })
const startOf = (spec: Spec, now: string) => {
  const start = deriveStart(spec, systemId, Date.parse(now))
  if (!start?.ok) throw new Error(start?.problem.what ?? 'no start')
  return start.value
}

describe('the start that is under way', () => {
  test('there is none until one is chosen, and none without a volume', () => {
    expect(deriveStart(demoSpec, systemId, 0)).toBeUndefined()
    expect(deriveStart(demoSpec, 'nowhere', 0)).toBeUndefined()
    const blank = blankSpec()
    const id = blank.systems[0]!.id
    const chosen = edited(blank, { id: 'setStart', args: { systemId: id, mode: 'party', at } })
    const start = deriveStart(chosen, id, 0)
    expect(start?.ok ? '' : start?.problem.code).toBe('no-volume')
  })

  test.each(START_MODES.rows.map(({ id }) => id))('%s: a schedule whose days are counted from its moment', (mode) => {
    const spec = on(mode)
    expect(startOf(spec, '2026-05-28T08:59:00-07:00').day).toBe(0)
    expect(startOf(spec, '2026-05-28T09:00:00-07:00').day).toBe(1)
    expect(startOf(spec, '2026-06-01T09:00:00-07:00').day).toBe(5)
    const { steps, schedule, assumed } = startOf(spec, '2026-05-28T12:00:00-07:00')
    expect(steps.length).toBeGreaterThan(2)
    expect(steps.map(({ key }) => key)).toEqual(schedule.steps.map(({ key }) => key))
    expect(steps.some(({ isToday }) => isToday)).toBe(true)
    for (const step of steps) {
      expect(step.isToday).toBe(step.fromDay <= 1 && step.toDay >= 1 && step.applies !== 'no')
      expect(step.isDone).toBe(false)
    }
    expect(assumed).toEqual([])
  })

  test('a tick is of its day: daily work is due again the next morning, work that is due once stays done', () => {
    const spec = on('new-plaster')
    const today = '2026-05-30T12:00:00-07:00'
    const daily = startOf(spec, today).steps.find(({ isToday, often }) => isToday && often !== undefined)!
    const once = startOf(spec, today).steps.find(({ often }) => often === undefined)!
    const ticked = edited(
      spec,
      {
        id: 'tickLine',
        args: { systemId, line: daily.line, at: '2026-05-30T08:00:00-07:00', text: 'Before the start of day 3.' },
      },
      { id: 'tickLine', args: { systemId, line: daily.line, at: '2026-05-30T10:00:00-07:00', text: 'Done.' } },
      { id: 'tickLine', args: { systemId, line: once.line, at: '2026-05-28T10:00:00-07:00', text: 'Done.' } },
    )
    const stepOn = (now: string, line: string) => startOf(ticked, now).steps.find((step) => step.line === line)!
    expect(stepOn(today, daily.line)).toMatchObject({ isDone: true, doneDays: [2, 3] })
    expect(stepOn('2026-05-31T12:00:00-07:00', daily.line).isDone).toBe(false)
    expect(stepOn('2026-06-20T12:00:00-07:00', once.line)).toMatchObject({ isDone: true, doneDays: [1] })
    expect(daily.line).toBe(startLine('new-plaster', daily.key))
    // A tick from before this start is another start's.
    const again = edited(ticked, {
      id: 'setStart',
      args: { systemId, mode: 'new-plaster', at: '2026-08-01T09:00:00-07:00' },
    })
    expect(startOf(again, '2026-08-01T12:00:00-07:00').steps.every(({ doneDays }) => doneDays.length === 0)).toBe(true)
  })

  test('readings from before and since the start are told apart, and later ones than now are left aside', () => {
    const set = (when: string, chlorine: number) =>
      ({
        id: 'addReadings',
        args: {
          systemId,
          set: {
            at: when,
            method: 'photometer',
            values: { pH: 7.5, fc_mg_per_L_as_Cl2: chlorine, cya_mg_per_L: 30, tc_mg_per_L_as_Cl2: chlorine },
          },
        },
      }) as const
    const spec = edited(
      on('party', { bathers: 20, hours: 2 }),
      set('2026-05-28T08:00:00-07:00', 3),
      set('2026-05-28T23:00:00-07:00', 1),
    )
    expect(startOf(spec, '2026-05-28T12:00:00-07:00').schedule.unread).toContain('fc_mg_per_L_as_Cl2')
    expect(startOf(spec, '2026-05-28T23:30:00-07:00').schedule.unread).not.toContain('fc_mg_per_L_as_Cl2')
  })

  test('figures follow the values; what is missing is asked for; a value that can’t be names its place', () => {
    const now = '2026-05-28T12:00:00-07:00'
    expect(startOf(on('party'), now).schedule.missing.map(({ key }) => key)).toEqual(['bathers', 'hours'])
    const figures = (bathers: number) => startOf(on('party', { bathers, hours: 2 }), now).schedule.figures
    expect(figures(40)[0]!.value / figures(20)[0]!.value).toBeCloseTo(2, 6)
    const slipped = {
      ...on('party'),
      systems: [{ ...on('party').systems[0]!, start: { mode: 'party', at, values: { bathers: -1 } } }],
    }
    const start = deriveStart(slipped, systemId, Date.parse(now))
    expect(start?.ok ? '' : start?.problem.path).toBe('systems.pool.start.values.bathers')
  })

  test('an estimate alone has its surface assumed, and says so', () => {
    const blank = blankSpec()
    const id = blank.systems[0]!.id
    const spec = edited(
      blank,
      { id: 'setVolumeEstimate', args: { systemId: id, estimate: { from: 'stated', m3: 60, sigmaM3: 6 } } },
      { id: 'setStart', args: { systemId: id, mode: 'heavy-rain', at, values: { rainM: 0.05 } } },
    )
    const start = deriveStart(spec, id, Date.parse(at))
    expect(start?.ok && start.value.assumed).toEqual(['mean depth 1.4 m, since nothing is drawn'])
  })
})
