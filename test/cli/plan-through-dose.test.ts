import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'
import { openingPlan, REGIMES } from '../../src/plan/index.ts'
import { fillWater, inputOf, SURFACES } from '../plan/staging-rules.ts'
import { good } from '../water/golden.ts'

/** Largest difference allowed between what a plan predicts and what `dose` answers, in each column's own unit. */
const AGREES = 1e-6
const COLUMNS = [
  'pH',
  'ta_mg_per_L_as_CaCO3',
  'ch_mg_per_L_as_CaCO3',
  'mg_hardness_mg_per_L_as_CaCO3',
  'cya_mg_per_L',
  'borate_mg_per_L_as_B',
  'fc_mg_per_L_as_Cl2',
  'sulfate_mg_per_L',
] as const

describe('a plan applied line by line through the verb dose', () => {
  test.each(SURFACES)('%s: 200 fill waters, every dose line leaves the readings that it predicts', (surface) => {
    let lines = 0
    let worst = 0
    fc.assert(
      fc.property(fillWater, fc.constantFrom(...REGIMES.rows.map((row) => row.id)), (start, regimeId) => {
        const plan = good(openingPlan(inputOf(start, surface, { regimeId })))
        let before = plan.startWater!
        const asked = plan.lines.flatMap((line) => {
          const from = before
          before = line.after ?? before
          return line.kind === 'dose'
            ? [
                {
                  after: line.after,
                  json: {
                    start: from.reading,
                    add: line.pours.map(({ amountG }) => ({ product: line.productId, gPerM3: amountG / 60 })),
                  },
                },
              ]
            : []
        })
        if (asked.length === 0) return
        const readInput = () => JSON.stringify(asked.map(({ json }) => json))
        const { stdout, exitCode } = runCommandLine(['dose', '-'], { readInput, nowMs: 0 })
        expect(exitCode).toBe(0)
        const answers = stdout.trim().split('\n')
        expect(answers.length).toBe(asked.length)
        answers.forEach((answer, at) => {
          const { after_closed: closed } = JSON.parse(answer)
          const { reading, equilibrium } = asked[at]!.after
          for (const key of COLUMNS) worst = Math.max(worst, Math.abs(closed[key] - (reading[key] ?? 0)))
          // a water without calcium has no index
          if (closed.calcite_SI !== null) worst = Math.max(worst, Math.abs(closed.calcite_SI - equilibrium.calciteSI))
          lines++
        })
        expect(worst).toBeLessThan(AGREES)
      }),
      { numRuns: 200, seed: 20261124 },
    )
    expect(lines).toBeGreaterThan(400)
  })
})
