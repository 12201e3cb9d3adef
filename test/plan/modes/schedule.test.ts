import { describe, expect, test } from 'vitest'
import {
  closedOn,
  type KnownReading,
  type OpeningInput,
  openingPlan,
  START_MODES,
  type StartContext,
  startDay,
  startSchedule,
  stepsOn,
  targetsAt,
} from '../../../src/plan/index.ts'
import type { StartStep } from '../../../src/plan/modes/types.ts'
import type { PeopleReading } from '../../../src/water/index.ts'
import { good } from '../../water/golden.ts'
import { BEFORE, contextOf } from './cases.ts'

/** What makes a condition true, false and unanswerable: readings since the start, and from before with the inputs. */
interface Answers {
  readonly yes: Partial<StartContext>
  readonly no: Partial<StartContext>
  readonly measure: Partial<StartContext>
}

const OFF: PeopleReading = {
  pH: 8.1,
  ta_mg_per_L_as_CaCO3: 40,
  ch_mg_per_L_as_CaCO3: 60,
  cya_mg_per_L: 5,
  fc_mg_per_L_as_Cl2: 0.2,
  salt_mg_per_L_as_NaCl: 300,
}
const FINE: PeopleReading = {
  pH: 7.5,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 260,
  cya_mg_per_L: 45,
  fc_mg_per_L_as_Cl2: 3,
  salt_mg_per_L_as_NaCl: 3200,
}

function answersFor({ condition }: StartStep): Answers {
  switch (condition?.on) {
    case 'target': {
      const isHigh = condition.is === 'above' && condition.keys.includes('cya_mg_per_L')
      return { yes: { now: isHigh ? { ...FINE, cya_mg_per_L: 120 } : OFF }, no: { now: FINE }, measure: { now: {} } }
    }
    case 'metals':
      return {
        yes: { now: { iron_mg_per_L: 0.5 } },
        no: { now: { iron_mg_per_L: 0.05, copper_mg_per_L: 0.1 } },
        measure: { now: { iron_mg_per_L: 0.05 } },
      }
    case 'combined':
      return {
        yes: { now: { fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 3.5 } },
        no: { now: { fc_mg_per_L_as_Cl2: 2, tc_mg_per_L_as_Cl2: 2.1 } },
        measure: { now: { fc_mg_per_L_as_Cl2: 2 } },
      }
    case 'figure':
      return {
        yes: { before: BEFORE, now: { cya_mg_per_L: 0 } },
        no: { before: BEFORE, now: { cya_mg_per_L: 40 } },
        measure: { before: BEFORE, now: {} },
      }
    default:
      throw new Error(`no answers known for a condition on ${condition?.on}`)
  }
}

const CONDITIONAL = START_MODES.rows.flatMap((mode) =>
  mode.steps.filter(({ condition }) => condition).map((step) => [mode.id, step.key, step] as const),
)

test.each(CONDITIONAL)('%s %s is asked for, not asked for, or waits for a reading', (id, key, step) => {
  const values = id === 'spring-opening' ? { loweredM: 0.2, springBelowM: 0.1 } : {}
  const answers = answersFor(step)
  for (const answer of ['yes', 'no', 'measure'] as const) {
    const context = contextOf({ regimeId: 'salt', ...answers[answer] })
    const schedule = good(startSchedule(id, values, context))
    expect(schedule.steps.find((one) => one.key === key)?.applies, answer).toBe(answer)
    const isShown = stepsOn(schedule, step.fromDay).some((one) => one.key === key)
    expect(isShown, answer).toBe(answer !== 'no')
  }
})

test('conditions of every kind are among them', () => {
  expect(CONDITIONAL.length).toBeGreaterThan(20)
  expect(new Set(CONDITIONAL.map(([, , { condition }]) => condition!.on))).toEqual(
    new Set(['target', 'metals', 'combined', 'figure']),
  )
})

test('a few milligrams of stabiliser off are a reading’s scatter, all of it gone asks for the bucket', () => {
  const applies = (was: number, is: number) => {
    const context = contextOf({ before: { ...BEFORE, cya_mg_per_L: was }, now: { cya_mg_per_L: is } })
    const schedule = good(startSchedule('spring-opening', { loweredM: 0, springBelowM: 0 }, context))
    return schedule.steps.find(({ key }) => key === 'ammonia')!.applies
  }
  expect(applies(40, 36)).toBe('no')
  expect(applies(40, 30)).toBe('yes')
  expect(applies(12, 0)).toBe('yes')
})

test.each(['new-plaster', 'liner-or-shell', 'spring-opening'])(
  '%s takes metals from the fill water until the pool’s are read',
  (id) => {
    const values = id === 'spring-opening' ? { loweredM: 0.2, springBelowM: 0.1 } : {}
    const applies = (fill: PeopleReading, now?: PeopleReading) =>
      good(startSchedule(id, values, contextOf({ fill, now }))).steps.find(({ key }) => key === 'metals')!.applies
    const rusty = { iron_mg_per_L: 0.9, copper_mg_per_L: 0 }
    const clean = { iron_mg_per_L: 0.02, copper_mg_per_L: 0.02 }
    expect(applies(rusty)).toBe('yes')
    expect(applies(clean)).toBe('no')
    expect(applies(rusty, clean)).toBe('no')
    expect(applies(clean, rusty)).toBe('yes')
    expect(applies({})).toBe('measure')
  },
)

test('a pool that stood full takes no word of its fill water’s metals', () => {
  const context = contextOf({ fill: { iron_mg_per_L: 0.9, copper_mg_per_L: 0 } })
  const { steps } = good(startSchedule('filled-pool', {}, context))
  expect(steps.find(({ key }) => key === 'metals')!.applies).toBe('measure')
})

test.each(['new-plaster', 'liner-or-shell'])('%s has the fill water read at the tap', (id) => {
  const read = START_MODES.get(id)!.steps.find(({ key }) => key === 'read')!
  expect(read.how).toContain('not from the pool')
  expect(read.how).not.toContain('elbow')
})

test('new plaster is closed to bathing for its first week, whatever is read', () => {
  expect(closedOn('new-plaster', 1)).toContain('Nobody bathes')
  expect(closedOn('new-plaster', 7)).toContain('plasterer')
  expect(closedOn('new-plaster', 8)).toBeUndefined()
})

const NOW = Date.UTC(2026, 4, 2, 9)
const EMPTY: KnownReading = {
  pH: 8.0,
  ta_mg_per_L_as_CaCO3: 50,
  ch_mg_per_L_as_CaCO3: 60,
  cya_mg_per_L: 0,
  borate_mg_per_L_as_B: 0,
  fc_mg_per_L_as_Cl2: 0,
  salt_mg_per_L_as_NaCl: 200,
  temperature_C: 20,
}
const MOVES = {
  pH: ['acid', 'base'],
  ta_mg_per_L_as_CaCO3: ['alkalinity'],
  ch_mg_per_L_as_CaCO3: ['calcium'],
  cya_mg_per_L: ['stabiliser'],
  borate_mg_per_L_as_B: ['borate'],
  fc_mg_per_L_as_Cl2: ['openingChlorine', 'dailyChlorine'],
  salt_mg_per_L_as_NaCl: ['salt'],
} as const

describe('an opening plan made with a start’s targets', () => {
  const purposesOn = (mode: string, day: number, regimeId: 'salt' | 'unstabilised'): readonly string[] => {
    const { targets } = contextOf({ regimeId })
    const input: OpeningInput = {
      volumeM3: 60,
      volumeSigmaM3: 2,
      surface: 'plaster',
      regimeId,
      targets: targetsAt(mode, day, targets),
      products: {},
      start: EMPTY,
      startIs: 'pool',
      method: 'drop-kit',
      measuredAtMs: NOW,
      nowMs: NOW,
      turnoverHours: 8,
      given: [],
      stockG: {},
      constants: 'default',
    }
    return good(openingPlan(input)).lines.flatMap((line) => (line.kind === 'dose' ? [line.purpose] : []))
  }
  const cases = START_MODES.rows.flatMap((mode) =>
    mode.targets
      .filter(({ change }) => change.kind === 'withheld')
      .map((phase) => [mode.id, phase.key, phase.fromDay, phase.toDay] as const),
  )

  test.each(cases)('%s doses nothing for a withheld %s from day %i to %i, and does after', (id, key, from, to) => {
    const regimeId = key === 'salt_mg_per_L_as_NaCl' || key === 'cya_mg_per_L' ? 'salt' : 'unstabilised'
    for (const day of new Set([from, to]))
      for (const purpose of MOVES[key]) expect(purposesOn(id, day, regimeId), `day ${day}`).not.toContain(purpose)
    const after = purposesOn(id, to + 1, regimeId)
    expect(
      MOVES[key].some((purpose) => after.includes(purpose)),
      after.join(),
    ).toBe(true)
  })

  test('nothing at all is dosed on the first day with an unknown pool', () => {
    expect(purposesOn('unknown-pool', 1, 'unstabilised')).toEqual([])
    expect(purposesOn('unknown-pool', 2, 'unstabilised').length).toBeGreaterThan(0)
  })
})

test('what is missing is asked for, and nothing is reckoned without it', () => {
  for (const mode of START_MODES.rows) {
    const schedule = good(startSchedule(mode.id, {}, contextOf()))
    expect(schedule.missing.map(({ key }) => key)).toEqual(
      mode.inputs.filter(({ isNeeded }) => isNeeded).map(({ key }) => key),
    )
    expect(schedule.unread).toEqual(mode.reads)
    expect(schedule.expected).toEqual([])
    if (schedule.missing.length > 0) expect(schedule.figures.some(({ key }) => key === 'exchanged')).toBe(false)
  }
  const read = good(startSchedule('filled-pool', {}, contextOf({ now: { pH: 7.5 } })))
  expect(read.unread).not.toContain('pH')
})

test('bathing waits for readings inside limits, raised by a local rule and lowered by nothing', () => {
  const words = (rules?: StartContext['rules'], now?: PeopleReading) =>
    good(startSchedule('party', {}, contextOf({ rules, now }))).bathing
  expect(words(undefined, { cya_mg_per_L: 30 })).toContain('free chlorine from 2 to')
  expect(words(undefined, { cya_mg_per_L: 0 })).toContain('free chlorine from 1 to')
  expect(words({ chlorineFloorMgPerL: 2.5 }, { cya_mg_per_L: 30 })).toContain('free chlorine from 2.5 to')
  expect(words({ chlorineFloorMgPerL: 0.2 }, { cya_mg_per_L: 30 })).toContain('free chlorine from 2 to')
  expect(words({ chlorineFloorMgPerL: 3, chlorineCeilingMgPerL: 2 })).toMatch(/^Nobody bathes: the least/)
  for (const text of [words(), words({ chlorineFloorMgPerL: 3, chlorineCeilingMgPerL: 2 })])
    expect(text).toContain('Your local code comes first.')
})

test('a change of a target is told only where the pool has that target', () => {
  const keys = (regimeId: string) =>
    good(startSchedule('new-plaster', {}, contextOf({ regimeId }))).targetPhases.map(({ key }) => key)
  expect(keys('salt')).toContain('salt_mg_per_L_as_NaCl')
  expect(keys('stabilised')).not.toContain('salt_mg_per_L_as_NaCl')
  expect(keys('unstabilised')).toContain('borate_mg_per_L_as_B')
})

test('the days of a start count from one, in days of 24 hours', () => {
  const day = 86_400_000
  expect(startDay(NOW, NOW)).toBe(1)
  expect(startDay(NOW, NOW + day - 1)).toBe(1)
  expect(startDay(NOW, NOW + day)).toBe(2)
  expect(startDay(NOW, NOW - 1)).toBe(0)
})
