import { describe, expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'
import { expectColumns, goldenRows } from '../water/golden.ts'

/** Every row of the golden tables as it stands there, through the command line with the tables' own constants. */
function answers(verb: string, rows: readonly unknown[]) {
  const text = rows.map((row) => JSON.stringify(row)).join('\n')
  const { stdout, exitCode } = runCommandLine([verb, '-', '--constants', 'oracle'], { readInput: () => text, nowMs: 0 })
  expect(exitCode).toBe(0)
  return stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line))
}

describe('the command line gives the waters that USGS PHREEQC 3.6.3 gives', () => {
  test('speciate', () => {
    const rows = goldenRows('speciation')
    answers('speciate', rows).forEach(({ output }, i) => {
      expectColumns(output, rows[i]!.output, rows[i]!.id)
    })
  })

  test('dose, with the products by the names of the table', () => {
    const rows = goldenRows('dose_reactions')
    answers('dose', rows).forEach((answer, i) => {
      expectColumns(answer.after_closed, rows[i]!.after_closed, rows[i]!.id)
      expectColumns(answer.after_open_log10_pCO2_minus3p38, rows[i]!.after_open_log10_pCO2_minus3p38, rows[i]!.id)
    })
  })

  test('blend', () => {
    const rows = goldenRows('blending')
    answers('blend', rows).forEach(({ output }, i) => {
      expectColumns(output, rows[i]!.output, rows[i]!.id)
    })
  })
})
