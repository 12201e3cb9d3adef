import { describe, expect, test } from 'vitest'
import { STARTING_OUTLINES } from '../../../src/basin/index.ts'
import { measureProblem, rangeOf } from '../../../src/ui/ledger/basin/measure-range.ts'
import { startValues } from '../../../src/ui/ledger/basin/start-values.ts'

const FT = 0.3048
const kindOf = (id: string) => {
  const kind = STARTING_OUTLINES.get(id)
  if (!kind) throw new Error(`no outline ${id}`)
  return kind
}

describe('a measure of a starting outline that doesn’t fit the others', () => {
  test('is named with its range in the reader’s units', () => {
    const kind = kindOf('rectangle')
    const values = { ...startValues(kind, 'us'), cornerRadiusM: 40 * FT }
    const made = kind.make(values)
    if (made.ok) throw new Error('a corner can’t be so round')
    const { what, hint } = measureProblem(kind, values, ['cornerRadiusM'], made.problem, 'us')
    expect(what.replace(/\s/g, ' ')).toBe('“Corner radius” can’t be 40′ 0″ here.')
    // Half of 13 ft, the shorter side.
    expect(hint.replace(/\s/g, ' ')).toContain('between 0″ and 6′ 6″')
  })

  test.each(STARTING_OUTLINES.rows.map((kind) => [kind.id, kind] as const))(
    '%s: the range is where it closes',
    (_, kind) => {
      const values = startValues(kind, 'metric')
      for (const parameter of kind.parameters) {
        const range = rangeOf(kind, { ...values, [parameter.id]: parameter.maxM }, parameter)
        if (!range) throw new Error(`${parameter.id} has no range`)
        const closes = (m: number) => kind.make({ ...values, [parameter.id]: m }).ok
        for (const share of [0, 0.3, 0.7, 1]) {
          const m = range.lowM + share * (range.highM - range.lowM)
          expect(closes(m), `${parameter.id} ${m}`).toBe(true)
        }
        const beyond = [range.lowM * 0.999 - 1e-6, range.highM * 1.001 + 1e-6]
        for (const m of beyond) expect(closes(m), `${parameter.id} ${m}`).toBe(false)
      }
    },
  )

  test('the measure that was typed last is the one that is named, and where none alone mends it, that is said', () => {
    const kind = kindOf('kidney')
    const values = { lengthM: 8, endRadiusM: 5, backRadiusM: 6, waistRadiusM: 1.7 }
    const made = kind.make(values)
    if (made.ok) throw new Error('ends can’t be so large')
    expect(measureProblem(kind, values, ['endRadiusM'], made.problem, 'metric').path).toBe('endRadiusM')
    const odd = { lengthM: 2, widthM: 2, footM: 3, armM: 3 }
    expect(measureProblem(kindOf('ell'), odd, [], made.problem, 'metric').hint).toMatch(/change two/)
  })
})
