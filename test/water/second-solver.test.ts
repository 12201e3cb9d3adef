import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { runCommandLine } from '../../src/cli/run.ts'
import { shareOfTolerance } from './golden.ts'

type Numbers = Readonly<Record<string, number | null>>
interface Row {
  readonly line: unknown
  readonly output?: Numbers
  readonly after_closed?: Numbers
  readonly after_open_log10_pCO2_minus3p38?: Numbers
  readonly doses?: Readonly<Record<string, number>>
  /** The code that is due. */
  readonly problem?: string
}

const FILE = join(import.meta.dirname, '../golden/water/second-solver.json')
const table: Readonly<Record<string, readonly Row[]>> & { readonly provenance?: unknown } = JSON.parse(
  readFileSync(FILE, 'utf8'),
)
/** Of tier A. Only buffer capacity needs more: the second solver’s follows ionic strength, ours holds it. */
const SHARE = 0.001
const BUFFER_SHARE = 0.2
/** Relative; the solvers stop at different roundings. */
const DOSE = 1e-6

/** Columns that are out, each with its two values. */
function wrong(mine: Numbers, reference: Numbers): string[] {
  return Object.entries(reference).flatMap(([column, expected]) => {
    const value = mine[column]
    if (expected === null) return value === null ? [] : [`${column} is ${value}, not null`]
    const most = column.startsWith('buffer_') ? BUFFER_SHARE : SHARE
    return typeof value === 'number' && shareOfTolerance(column, value, expected) <= most
      ? []
      : [`${column} ${value} against ${expected}`]
  })
}

describe('waters that no table has, against a second solver written apart from this one', () => {
  test('its table says where it comes from', () => {
    expect(table.provenance).toContain('second solver')
  })

  test.each(['speciate', 'dose', 'blend', 'target'])('%s: 40 lines, each within a thousandth of tier A', (verb) => {
    const rows = table[verb] ?? []
    expect(rows.length).toBe(40)
    const text = rows.map(({ line }) => JSON.stringify(line)).join('\n')
    const { stdout, exitCode } = runCommandLine([verb, '-', '--constants', 'oracle'], {
      readInput: () => text,
      nowMs: 0,
    })
    expect(exitCode).toBe(0)
    const answers = stdout.trim().split('\n')
    const out = rows.flatMap((row, i) => {
      const answer = JSON.parse(answers[i] ?? '{}')
      const parts = ['output', 'after_closed', 'after_open_log10_pCO2_minus3p38'] as const
      const columns = parts.flatMap((part) => (row[part] ? wrong(answer[part], row[part]) : []))
      const doses = Object.entries(row.doses ?? {}).flatMap(([product, amount]) => {
        const found = answer.doses.find((dose: { product: string }) => dose.product === product)
        const mine = found?.gPerM3 ?? found?.mLPerM3
        return Math.abs(mine / amount - 1) <= DOSE ? [] : [`${product} ${mine} against ${amount}`]
      })
      return [...columns, ...doses].map((what) => `${verb} ${i}: ${what}`)
    })
    expect(out).toEqual([])
  })

  test('40 readings that no water can have are told as such, half for want of charge and half of alkalinity', () => {
    const rows = table['impossible'] ?? []
    const text = rows.map(({ line }) => JSON.stringify(line)).join('\n')
    const { stdout, exitCode } = runCommandLine(['speciate', '-', '--constants', 'oracle'], {
      readInput: () => text,
      nowMs: 0,
    })
    expect(exitCode).toBe(2)
    const codes = stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line).problem?.code)
    expect(codes).toEqual(rows.map(({ problem }) => problem))
    expect(codes.filter((code) => code === 'water-charge-does-not-close').length).toBe(20)
    expect(codes.filter((code) => code === 'water-alkalinity-too-low').length).toBe(20)
  })
})
