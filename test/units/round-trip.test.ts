import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatForEntry, formatQuantity, parseQuantity, QUANTITIES, snapLength, UNITS } from '../../src/units/index.ts'

const SEED = 20261124
const systems = fc.constantFrom('us', 'metric', 'imperial')
const rows = fc.constantFrom(...QUANTITIES.rows)

describe('what is printed can be read back', () => {
  test('parse(format(x)) is x within half of the last digit shown', () => {
    fc.assert(
      fc.property(
        rows,
        systems,
        fc.double({ min: 0.001, max: 5000, noNaN: true }),
        fc.integer({ min: 0, max: 4 }),
        (row, system, x, digits) => {
          const text = formatQuantity(row.id, x, system, { digits })
          const back = parseQuantity(row.id, text, system)
          if (!back.ok) throw new Error(`${text}: ${back.problem.what}`)
          // The coarsest unit that may have been used, at those decimals; feet and inches show 2^-digits of an inch.
          const display = row[system]
          const units = [display.main, ...(display.ladder ?? []).flatMap((rung) => [rung.with ?? rung.unit])].map(
            (id) => UNITS.get(id)!.toSI,
          )
          const step =
            row.id === 'length' && system !== 'metric' ? 0.0254 / 2 ** digits : Math.max(...units) * 10 ** -digits
          expect(Math.abs(back.value - x)).toBeLessThanOrEqual(step * 0.5000001 + x * 1e-12)
        },
      ),
      { seed: SEED, numRuns: 1500 },
    )
  })

  test('what a field shows is read back to the same text', () => {
    fc.assert(
      fc.property(rows, systems, fc.double({ min: 0.01, max: 3000, noNaN: true }), (row, system, x) => {
        const text = formatForEntry(row.id, x, system)
        const back = parseQuantity(row.id, text, system)
        if (!back.ok) throw new Error(`${text}: ${back.problem.what}`)
        expect(formatForEntry(row.id, back.value, system)).toBe(text)
      }),
      { seed: SEED, numRuns: 1500 },
    )
  })

  test('a snapped length prints exactly and stays where it is', () => {
    fc.assert(
      fc.property(systems, fc.double({ min: -20, max: 60, noNaN: true }), (system, x) => {
        const snapped = snapLength(x, system)
        const back = parseQuantity('length', formatQuantity('length', snapped, system), system)
        expect(back.ok && Math.abs(back.value - snapped) < 1e-9).toBe(true)
        expect(snapLength(snapped, system)).toBe(snapped)
      }),
      { seed: SEED, numRuns: 500 },
    )
  })

  test('whatever is typed, the answer is a finite number or a problem with a hint', () => {
    const piece = fc.constantFrom(
      '7',
      "'",
      '"',
      ' ',
      '½',
      '1/2',
      ',',
      '.',
      'ft',
      'in',
      'm3',
      'gal',
      '-',
      'oz',
      '℃',
      '\u0000',
      '/',
      '0',
      '900',
      'e',
      'NaN',
    )
    const text = fc.oneof(
      fc.string(),
      fc.string({ unit: 'grapheme' }),
      fc.array(piece, { maxLength: 9 }).map((a) => a.join('')),
    )
    fc.assert(
      fc.property(rows, systems, text, (row, system, typed) => {
        const result = parseQuantity(row.id, typed, system)
        if (result.ok) expect(Number.isFinite(result.value)).toBe(true)
        else expect(result.problem.hint).not.toBe('')
      }),
      { seed: SEED, numRuns: 4000 },
    )
  })
})
