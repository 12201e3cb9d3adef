import { describe, expect, test } from 'vitest'
import { START_MODES, startSchedule, TARGET_KEYS, targetPhasesAt, targetsAt } from '../../../src/plan/index.ts'
import { PLASTER_DAYS } from '../../../src/plan/modes/new-plaster.ts'
import { good } from '../../water/golden.ts'
import { CONTEXTS, contextOf, textsOf } from './cases.ts'

/** The starts that the trade knows, each once. */
const IDS = [
  'filled-pool',
  'new-plaster',
  'liner-or-shell',
  'spring-opening',
  'unknown-pool',
  'mid-season',
  'heavy-rain',
  'partial-drain',
  'party',
  'winter-closing',
]
const STATUSES = ['seen', 'seen second-hand', 'from memory', 'common practice, no source', 'derived']
/** Steps that handle chlorine on a day without dosing the pool: a bucket, and tubs that somebody left. */
const NOT_INTO_THE_POOL = ['ammonia', 'shed']

test('every way of starting is a row', () => {
  expect(START_MODES.rows.map(({ id }) => id)).toEqual(IDS)
})

describe.each(START_MODES.rows.map((mode) => [mode.id, mode] as const))('%s', (_, mode) => {
  test('its days run inside the schedule, from the first to the last', () => {
    for (const { key, fromDay, toDay } of [...mode.steps, ...mode.targets]) {
      expect(Number.isInteger(fromDay) && Number.isInteger(toDay), key).toBe(true)
      expect(fromDay, key).toBeGreaterThanOrEqual(1)
      expect(toDay, key).toBeGreaterThanOrEqual(fromDay)
      expect(toDay, key).toBeLessThanOrEqual(mode.lastDay)
    }
    expect(mode.steps.some(({ fromDay }) => fromDay === 1)).toBe(true)
    expect(Math.max(...mode.steps.map(({ toDay }) => toDay))).toBe(mode.lastDay)
  })

  test('its keys are unique', () => {
    for (const keys of [mode.steps.map(({ key }) => key), mode.inputs.map(({ key }) => key)])
      expect(new Set(keys).size).toBe(keys.length)
  })

  test('no two changes of one target hold on one day', () => {
    for (let day = 1; day <= mode.lastDay; day++) {
      const keys = targetPhasesAt(mode, day).map(({ key }) => key)
      expect(new Set(keys).size, `day ${day}`).toBe(keys.length)
    }
  })

  test('it begins and ends with readings', () => {
    const measures = mode.steps.filter(({ what }) => what.startsWith('Take all readings'))
    expect(Math.min(...measures.map(({ fromDay }) => fromDay))).toBe(1)
    expect(Math.max(...measures.map(({ toDay }) => toDay))).toBe(mode.lastDay)
    expect(mode.reads.length).toBeGreaterThan(3)
    expect(new Set(mode.reads).size).toBe(mode.reads.length)
  })

  test('it says on which word it stands, and every statement its source', () => {
    for (const { source, status } of [...mode.steps, ...mode.targets]) {
      expect(STATUSES).toContain(status)
      expect(source.length).toBeGreaterThan(5)
      if (status === 'common practice, no source') expect(source).toContain('common practice, no source')
    }
  })

  test('no step doses on its first day what is withheld on that day', () => {
    const targetOf = {
      acid: 'pH',
      alkali: 'ta_mg_per_L_as_CaCO3',
      chlorine: 'fc_mg_per_L_as_Cl2',
      calcium: 'ch_mg_per_L_as_CaCO3',
      stabiliser: 'cya_mg_per_L',
      salt: 'salt_mg_per_L_as_NaCl',
      borate: 'borate_mg_per_L_as_B',
    } as const
    const all = { ...contextOf({ regimeId: 'unstabilised' }).targets, ...contextOf({ regimeId: 'salt' }).targets }
    for (const step of mode.steps) {
      if (NOT_INTO_THE_POOL.includes(step.key)) continue
      const open = targetsAt(mode, step.fromDay, all)
      const asked = step.condition?.on === 'target' ? step.condition.keys : []
      const handled = step.handles.flatMap((handling) =>
        handling in targetOf ? [targetOf[handling as keyof typeof targetOf]] : [],
      )
      for (const key of [...asked, ...handled]) expect(open[key], `${step.key} ${key}`).toBeDefined()
    }
  })

  test('its texts are whole, plain and short', () => {
    for (const text of textsOf(mode)) {
      expect(text.trim()).toBe(text)
      expect(text.length).toBeGreaterThan(2)
      // the bucket test is a recipe, the longest of them all
      expect(text.length, text).toBeLessThan(1200)
      // straight quotes, double spaces, shouting, American spelling, trade marks
      expect(text).not.toMatch(/['"]| {2}|!|\b(color|fiber|stabilizer|odor|gray)|[™®©]/)
    }
    for (const { what, title } of mode.steps) {
      expect(title.length, title).toBeLessThan(60)
      expect(what).toMatch(/[.]$/)
    }
  })

  test('every capital inside a sentence is a word we chose: no maker, no brand, no place', () => {
    const known = new Set(['RCD', 'GFCI', 'WHO', 'UV', 'SI', 'L', 'C', 'Water', 'H', 'CO2'])
    const capitals = textsOf(mode).flatMap((text) =>
      text
        .split(/(?<=[.:!?])\s|^\d\.\s/)
        .flatMap((sentence) => sentence.split(/[\s(]+/).slice(1))
        .map((word) => word.replace(/[^\p{L}\p{N}]/gu, ''))
        .filter((word) => /^\p{Lu}/u.test(word) && !known.has(word)),
    )
    expect(capitals).toEqual([])
  })
})

test('a withheld target is gone on each of its days and back on the next', () => {
  const all = { ...contextOf({ regimeId: 'unstabilised' }).targets, ...contextOf({ regimeId: 'salt' }).targets }
  expect(Object.keys(all).sort()).toEqual([...TARGET_KEYS].sort())
  let seen = 0
  for (const mode of START_MODES.rows)
    for (const { key, fromDay, toDay, change } of mode.targets) {
      if (change.kind !== 'withheld') continue
      seen++
      for (let day = fromDay; day <= toDay; day++) expect(targetsAt(mode, day, all)[key]).toBeUndefined()
      expect(targetsAt(mode, toDay + 1, all)[key], `${mode.id} ${key}`).toBeDefined()
    }
  expect(seen).toBeGreaterThan(20)
})

test('a band of a start runs low, aim, high and stays inside what codes allow', () => {
  for (const mode of START_MODES.rows)
    for (const { key, change } of mode.targets) {
      if (change.kind !== 'band') continue
      const { low, aim, high } = change.band
      expect(low <= aim && aim <= high, `${mode.id} ${key}`).toBe(true)
      // Montana ARM 37.115.1308 and Wisconsin ATCP 76.14 (seen): pH 7.2 to 7.8, alkalinity from 60
      if (key === 'pH') expect([low >= 7.2, high <= 7.8]).toEqual([true, true])
      if (key === 'ta_mg_per_L_as_CaCO3') expect([low >= 60, high <= 180]).toEqual([true, true])
    }
})

test('the owner’s own band stands over a start’s band, and over no withholding', () => {
  const { targets } = contextOf()
  const own = { low: 7.3, aim: 7.6, high: 7.8, source: 'Your own band.', isOwn: true }
  const ownCya = { low: 30, aim: 40, high: 50, source: 'Your own band.', isOwn: true }
  const mine = { ...targets, pH: own, cya_mg_per_L: ownCya }
  expect(targetsAt('new-plaster', 3, targets).pH).toMatchObject({ low: 7.2, aim: 7.4, high: 7.6, isOwn: false })
  expect(targetsAt('new-plaster', 3, mine).pH).toEqual(own)
  expect(targetsAt('new-plaster', 3, mine).cya_mg_per_L).toBeUndefined()
  expect(targetsAt('new-plaster', PLASTER_DAYS.stabiliser, mine).cya_mg_per_L).toEqual(ownCya)
  expect(targetsAt('party', 1, targets).fc_mg_per_L_as_Cl2).toMatchObject({ low: 2, aim: 4, high: 4 })
  expect(targetsAt('party', 2, targets)).toEqual(targets)
  expect(targetsAt('no-such-start', 1, targets)).toEqual(targets)
})

test('a schedule is in the order of days, and warns wherever something is handled', () => {
  const words = {
    acid: /acid burns/i,
    chlorine: /chlorine|acid/i,
    electricity: /licensed electrician/,
    draining: /groundwater/,
    cover: /children drown/,
  }
  const shown = new Map<string, number>()
  for (const context of CONTEXTS)
    for (const mode of START_MODES.rows) {
      const schedule = good(startSchedule(mode.id, {}, context))
      const days = schedule.steps.map(({ fromDay }) => fromDay)
      expect(days).toEqual(days.toSorted((a, b) => a - b))
      for (const step of schedule.steps) {
        const told = step.cautions.join(' ')
        expect(new Set(step.cautions).size).toBe(step.cautions.length)
        for (const handling of step.handles) {
          shown.set(handling, (shown.get(handling) ?? 0) + 1)
          if (handling in words) expect(told, `${mode.id} ${step.key}`).toMatch(words[handling as keyof typeof words])
        }
        if (step.handles.length === 0) expect(step.cautions).toEqual([])
      }
      expect(schedule.notes[0]).toBe(mode.whoRules)
    }
  expect([...shown.keys()].sort()).toEqual(
    [
      'acid',
      'alkali',
      'borate',
      'calcium',
      'chlorine',
      'cover',
      'draining',
      'electricity',
      'salt',
      'stabiliser',
    ].sort(),
  )
})

test('borate is cautioned about only in a pool that has a target for it', () => {
  const rest = (regimeId: string) =>
    good(startSchedule('spring-opening', {}, contextOf({ regimeId }))).steps.find(({ key }) => key === 'rest')!.cautions
  const [with_, without] = [rest('unstabilised'), rest('stabilised')]
  expect(with_.some((text) => /pregnan/i.test(text))).toBe(true)
  expect(without.some((text) => /pregnan/i.test(text))).toBe(false)
})

test('each surface gets its own steps', () => {
  const keys = (surface: 'vinyl' | 'fibreglass') =>
    good(startSchedule('liner-or-shell', {}, contextOf({ surface }))).steps.map(({ key }) => key)
  expect(keys('vinyl')).toContain('liner')
  expect(keys('vinyl')).not.toContain('backfill')
  expect(keys('fibreglass')).toContain('backfill')
  expect(keys('fibreglass')).not.toContain('liner')
})

test('new plaster lets nothing come sooner than its day', () => {
  const steps = START_MODES.get('new-plaster')!.steps
  const dayOf = (key: string) => steps.find((step) => step.key === key)!.fromDay
  for (const [key, day] of Object.entries(PLASTER_DAYS)) expect(dayOf(key), key).toBe(day)
  expect(steps.filter(({ key }) => key.startsWith('brush')).map(({ fromDay, toDay }) => [fromDay, toDay])).toEqual([
    [1, 7],
    [8, 28],
  ])
  expect(steps.filter(({ key }) => key.startsWith('acid')).map(({ fromDay, toDay }) => [fromDay, toDay])).toEqual([
    [1, 14],
    [15, 30],
  ])
})
