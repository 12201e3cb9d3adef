import { describe, expect, test } from 'vitest'
import { START_MODES, type StartContext, startSchedule } from '../../../src/plan/index.ts'
import { BEFORE, bad, contextOf } from './cases.ts'

describe('what can’t be is said, not reckoned with', () => {
  const code = (mode: string, values: Record<string, number>, more: Partial<StartContext> = {}) => {
    const { code: of, path } = bad(startSchedule(mode, values, contextOf(more)))
    return [of, path]
  }

  test('an unknown start names the known ones', () => {
    const problem = bad(startSchedule('autumn', {}, contextOf()))
    expect(problem.code).toBe('unknown-start')
    for (const { id } of START_MODES.rows) expect(problem.hint).toContain(id)
  })

  test.each([0, -3, Number.NaN, Number.POSITIVE_INFINITY])('a pool of %f', (size) => {
    expect(code('party', {}, { volumeM3: size })).toEqual(['start-size', 'volumeM3'])
    expect(code('party', {}, { waterSurfaceM2: size })).toEqual(['start-size', 'waterSurfaceM2'])
  })

  test('every input just outside its range, and no number', () => {
    for (const mode of START_MODES.rows)
      for (const { key, low, high } of mode.inputs)
        for (const value of [low - 1e-6, high + 1e-6, Number.NaN])
          expect(code(mode.id, { [key]: value })).toEqual(['start-input-out-of-range', `values.${key}`])
  })

  test('a level below the floor, wherever a level is asked for', () => {
    expect(code('winter-closing', { loweredM: 1.4 })).toEqual(['start-level-below-floor', 'values.loweredM'])
    expect(code('spring-opening', { loweredM: 1.4, springBelowM: 0 })).toEqual([
      'start-level-below-floor',
      'values.loweredM',
    ])
    expect(code('spring-opening', { loweredM: 0, springBelowM: 1.4 })).toEqual([
      'start-level-below-floor',
      'values.springBelowM',
    ])
    expect(code('partial-drain', { drainedM: 1.4 })).toEqual(['start-level-below-floor', 'values.drainedM'])
  })

  test('a drain told twice and differently', () => {
    expect(code('partial-drain', { drainedM: 0.45, drainedPercent: 50 })).toEqual([
      'start-drain-twice',
      'values.drainedPercent',
    ])
    expect(startSchedule('partial-drain', { drainedM: 0.45, drainedPercent: 30 }, contextOf()).ok).toBe(true)
  })

  test('a regime or a product that nobody knows', () => {
    expect(code('party', {}, { regimeId: 'moonlight', targets: {} })[0]).toBe('unknown-regime')
    expect(startSchedule('party', {}, contextOf({ products: { acid: 'moon-acid' } })).ok).toBe(false)
  })

  test('readings that no water has, by whose they are', () => {
    const impossible = { ...BEFORE, ta_mg_per_L_as_CaCO3: 5, cya_mg_per_L: 300, pH: 8.2 }
    expect(code('heavy-rain', { rainM: 0.1 }, { before: impossible })[1]).toMatch(/^before/)
    const values = { drainedPercent: 30 }
    expect(code('partial-drain', values, { before: BEFORE, fill: impossible })[1]).toMatch(/^fill/)
  })

  test('every complaint is whole', () => {
    for (const problem of [
      bad(startSchedule('autumn', {}, contextOf())),
      bad(startSchedule('party', { bathers: -1 }, contextOf())),
      bad(startSchedule('party', {}, contextOf({ volumeM3: 0 }))),
      bad(startSchedule('winter-closing', { loweredM: 1.4 }, contextOf())),
      bad(startSchedule('partial-drain', { drainedM: 0.45, drainedPercent: 50 }, contextOf())),
    ])
      for (const text of [problem.what, problem.why, problem.hint]) expect(text).toMatch(/^\p{Lu}.+[.]$/su)
  })
})
