import { describe, expect, test } from 'vitest'
import { logKAt } from '../../src/water/constants.ts'
import {
  addTotals,
  CONSTANT_SETS,
  FORMULA_NAMES,
  formulaDelta,
  PURE_WATER,
  strongIonChargeEq,
} from '../../src/water/index.ts'
import { ORACLE } from './golden.ts'
import { cellOf, EXCEPTIONS, IDENTITIES, SETS } from './matrix.ts'
import { WATERS } from './waters.ts'

/** What of an identity does not hold in a cell. */
function broken(identity: string, index: number, set: (typeof SETS)[number]): string[] {
  const water = WATERS[index]!
  const cell = cellOf(water, WATERS[(index + 1) % WATERS.length]!, set[1])
  return IDENTITIES[identity]!(cell).flatMap(([what, left, right, scale]) =>
    Math.abs(left - right) <= 1e-9 * scale + 1e-16 ? [] : [`${water.id}, ${set[0]}: ${what} ${left} against ${right}`],
  )
}

describe(`consistency matrix: ${Object.keys(IDENTITIES).length} identities × ${WATERS.length} waters × ${SETS.length} sets of constants`, () => {
  test('it spans more than a hundred waters, no two of one name', () => {
    expect(WATERS.length).toBeGreaterThan(110)
    expect(new Set(WATERS.map(({ id }) => id)).size).toBe(WATERS.length)
    expect(SETS.map(([name]) => name)).toEqual(['default', 'oracle', 'wahman'])
  })

  test.each(Object.keys(IDENTITIES))('%s', (identity) => {
    const excused = new Set(EXCEPTIONS.filter((row) => row.identity === identity).map(({ water }) => water))
    const wrong = SETS.flatMap((set) =>
      WATERS.flatMap(({ id }, index) => (excused.has(id) ? [] : broken(identity, index, set))),
    )
    expect(wrong).toEqual([])
  })

  test('an exception names a water and an identity, gives its reason, and is still one', () => {
    for (const { water, identity, reason } of EXCEPTIONS) {
      const index = WATERS.findIndex(({ id }) => id === water)
      expect(index, water).toBeGreaterThanOrEqual(0)
      expect(Object.keys(IDENTITIES)).toContain(identity)
      expect(reason.length).toBeGreaterThan(20)
      expect(SETS.flatMap((set) => broken(identity, index, set)).length, `${water}: ${identity}`).toBeGreaterThan(0)
    }
  })

  test('every formula carries as much alkalinity as its strong ions carry charge', () => {
    expect(FORMULA_NAMES.length).toBeGreaterThan(30)
    for (const name of FORMULA_NAMES) {
      const one = addTotals(PURE_WATER, formulaDelta(name)!)
      expect(one.alkalinityEq, name).toBe(strongIonChargeEq(one))
    }
    expect(formulaDelta('toString')).toBeUndefined()
  })
})

describe('the cyanurate constants close', () => {
  // O'Brien, Morris & Butler 1974 (from memory): the three cycles give its other printed constants exactly
  const pK = (id: keyof typeof ORACLE.reactions) => -logKAt(ORACLE.reactions[id].logK, 298.15)
  test.each([
    ['H2ClCy to H3Cy: 5.33 + 5.62 − 6.88 = 4.07', () => pK('k4') + pK('k9a') - pK('k6'), 4.07],
    ['ClCy to HCy: 5.62 + 11.40 − 10.12 = 6.90', () => pK('k9a') + pK('k10') - pK('k8'), 6.9],
    ['HCl2Cy to H2ClCy: 3.75 + 4.51 − 5.33 = 2.93', () => pK('k2') + pK('k7a') - pK('k4'), 2.93],
  ] as const)('%s', (_name, closed, printed) => {
    expect(closed()).toBeCloseTo(printed, 10)
  })

  test('the Wahman set changes three constants and names its parent', () => {
    const { reactions } = CONSTANT_SETS.wahman
    const changed = Object.values(reactions).filter((row) => row !== CONSTANT_SETS.default.reactions[row.id])
    expect(changed.map((row) => row.id).sort()).toEqual(['k6', 'k7a', 'k9a'])
  })
})
