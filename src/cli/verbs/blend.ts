import { fail, ok, type Result } from '../../base/index.ts'
import { atTemperature, concentrate, doseColumns, equilibrateOpen, mix, type Totals } from '../../water/index.ts'
import { asNumber, asObject, type Options, type Verb } from '../verb.ts'
import { solveTotals, solveWater } from '../water-input.ts'

/** Each kind of blend, found by the key that only it has. */
const KINDS: Readonly<
  Record<
    string,
    (pool: Totals, value: number, line: Readonly<Record<string, unknown>>, options: Options) => Result<Totals>
  >
> = {
  fill_fraction: (pool, fraction, line, options) => {
    const fill = solveWater(line['fill'], 'input.fill', options)
    return fill.ok ? ok(mix(pool, fill.value.totals, fraction)) : fill
  },
  concentration_factor: (pool, factor) => ok(concentrate(pool, factor)),
  log10_pCO2_atm: (pool, log10PCO2, _line, options) => {
    const open = equilibrateOpen(pool, log10PCO2, options.constants)
    return open.ok ? ok(open.value.totals) : open
  },
  new_temperature_C: (pool, temperatureC) => ok(atTemperature(pool, temperatureC)),
}

export const blend: Verb = {
  id: 'blend',
  summary:
    '{"input": {"pool": WATER, and "fill_fraction" with "fill", or "concentration_factor", or "log10_pCO2_atm", or "new_temperature_C"}} → {"output"}',
  run: (input, options) => {
    const line = asObject(input, '')
    if (!line.ok) return line
    const asked = asObject(line.value['input'], 'input')
    if (!asked.ok) return asked
    const pool = solveWater(asked.value['pool'], 'input.pool', options)
    if (!pool.ok) return pool
    const kind = Object.keys(KINDS).find((key) => asked.value[key] !== undefined)
    const change = kind === undefined ? undefined : KINDS[kind]
    if (kind === undefined || !change) {
      return fail({
        code: 'no-blend',
        path: 'input',
        what: 'The line does not say what happens to the pool’s water.',
        why: 'Mixing, evaporation, aeration and a change of temperature each have a key of their own.',
        hint: `Give one of ${Object.keys(KINDS).join(', ')}.`,
      })
    }
    const value = asNumber(asked.value[kind], `input.${kind}`)
    if (!value.ok) return value
    const changed = change(pool.value.totals, value.value, asked.value, options)
    if (!changed.ok) return changed
    const solved = solveTotals(changed.value, options)
    return solved.ok ? ok({ output: doseColumns(solved.value.totals, solved.value.equilibrium) }) : solved
  },
}
