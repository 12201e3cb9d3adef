import { describe, expect, test } from 'vitest'
import {
  DEFAULT_RULES,
  LOCAL_CODE_FIRST,
  limitsFor,
  NO_STABILISER_MG_PER_L,
  RULE_IDS,
  RULES,
  type RuleFigures,
} from '../../src/water/index.ts'

const FIGURES = [
  'floorWithoutStabiliserMgPerL',
  'floorWithStabiliserMgPerL',
  'ceilingMgPerL',
  'pHLow',
  'pHHigh',
  'combinedHighMgPerL',
  'combinedHighIndoorMgPerL',
  'stabiliserHighMgPerL',
  'alkalinityLowMgPerL',
  'alkalinityHighMgPerL',
] as const satisfies readonly (keyof RuleFigures)[]

describe('rules for bathing water are a table', () => {
  test.each(RULES.rows)(
    '$id: edition, source and note are said, the local code comes first, the figures are in order',
    (row) => {
      for (const words of [row.label, row.edition, row.source]) expect(words.length).toBeGreaterThan(5)
      expect(row.note).toContain(LOCAL_CODE_FIRST)
      for (const figure of FIGURES) if (row[figure] !== undefined) expect(row[figure]).toBeGreaterThan(0)
      const most = row.ceilingMgPerL ?? Number.POSITIVE_INFINITY
      expect(row.floorWithoutStabiliserMgPerL ?? 0).toBeLessThan(most)
      expect(row.floorWithStabiliserMgPerL ?? 0).toBeLessThan(most)
      expect(row.pHLow ?? 7).toBeLessThan(row.pHHigh ?? 7.8)
      expect(row.floorWithStabiliserMgPerL ?? 99).toBeGreaterThanOrEqual(row.floorWithoutStabiliserMgPerL ?? 0)
      // a status is given only for a figure that is there
      for (const figure of Object.keys(row.statuses ?? {})) expect(row[figure as keyof RuleFigures]).toBeDefined()
    },
  )

  test('the short list of ids is that of the rows, in their order', () => {
    expect(RULES.rows.map(({ id }) => id)).toEqual(RULE_IDS)
  })

  test('the default is the numeric floor of 1 mg/L without stabiliser and 2 with it (MAHC 5.7.3.1.1, seen second-hand)', () => {
    expect(limitsFor(undefined, 0).floorMgPerL).toBe(1)
    expect(limitsFor(undefined, 30).floorMgPerL).toBe(2)
    expect(limitsFor(undefined, 0.99 * NO_STABILISER_MG_PER_L).floorMgPerL).toBe(1)
    expect(limitsFor(undefined, NO_STABILISER_MG_PER_L).floorMgPerL).toBe(2)
    expect(RULES.rows[0]).toBe(DEFAULT_RULES)
  })

  test('unknown stabiliser counts as present', () => {
    expect(limitsFor('default', undefined)).toMatchObject({ stabiliser: 'unknown', floorMgPerL: 2 })
  })

  test('a code that holds only without stabiliser gives way to the default where there is any, or may be', () => {
    expect(limitsFor('din-19643', 0)).toMatchObject({ floorMgPerL: 0.3, ceilingMgPerL: 0.6 })
    for (const stabiliser of [30, undefined]) {
      const limits = limitsFor('din-19643', stabiliser)
      expect(limits.profile.id).toBe('default')
      expect(limits.floorMgPerL).toBe(2)
      expect(limits.notes[0]).toContain('only in water without stabiliser')
    }
  })

  test('where a code is silent the default holds', () => {
    expect(limitsFor('wisconsin', 20)).toMatchObject({ floorMgPerL: 2, ceilingMgPerL: 4, stabiliserHighMgPerL: 30 })
    expect(limitsFor('wisconsin', 20).combinedHighMgPerL).toBe(0.5)
    expect(limitsFor('wisconsin', 20, {}, true).combinedHighMgPerL).toBe(0.8)
    expect(limitsFor('no such code', 20)).toMatchObject({ floorMgPerL: 2 })
    expect(limitsFor('no such code', 20).notes[0]).toContain('no such code')
  })

  test('an own floor can only raise, an own ceiling only lower; a contradiction is said', () => {
    expect(limitsFor('default', 0, { chlorineFloorMgPerL: 0.2 }).floorMgPerL).toBe(1)
    expect(limitsFor('default', 0, { chlorineFloorMgPerL: 3 })).toMatchObject({
      floorMgPerL: 3,
      floorSource: 'your own floor',
    })
    expect(limitsFor('default', 0, { chlorineCeilingMgPerL: 8 }).ceilingMgPerL).toBe(4)
    expect(limitsFor('default', 0, { chlorineCeilingMgPerL: 3 }).ceilingMgPerL).toBe(3)
    expect(limitsFor('default', 30, { chlorineCeilingMgPerL: 1.5 }).notes[0]).toContain('No free chlorine is allowed')
  })

  test.each(RULES.rows)(
    '$id: with any stabiliser its limits end with the local code, and the floor names its source',
    (row) => {
      for (const stabiliser of [0, 30, undefined]) {
        const limits = limitsFor(row.id, stabiliser)
        expect(limits.notes.at(-1)).toContain(LOCAL_CODE_FIRST)
        expect(limits.floorSource).toMatch(/\(.+\)$/)
        expect(limits.floorMgPerL).toBeLessThanOrEqual(limits.ceilingMgPerL)
      }
    },
  )
})
