import { fail, ok, type Problem, type Result, under } from '../../base/index.ts'
import { atTemperature, concentrate, doseColumns, equilibrateOpen, mix, type Totals } from '../../water/index.ts'
import { asNumber, asObject, type Options, type Verb } from '../verb.ts'
import { solveTotals, solveWater, waterNotices } from '../water-input.ts'

/** Each kind of blend, found by the key that only it has. */
const KINDS: Readonly<
  Record<
    string,
    (pool: Totals, value: number, line: Readonly<Record<string, unknown>>, options: Options) => Result<Totals>
  >
> = {
  fill_fraction: (pool, fraction, line, options) => {
    if (!(fraction >= 0 && fraction <= 1)) return fail(outside('fill_fraction', fraction, 'between 0 and 1', FRACTION))
    const fill = solveWater(line['fill'], 'input.fill', options)
    return fill.ok ? ok(mix(pool, fill.value.totals, fraction)) : fill
  },
  concentration_factor: (pool, factor) =>
    factor > 0 ? ok(concentrate(pool, factor)) : fail(outside('concentration_factor', factor, 'above 0', FACTOR)),
  log10_pCO2_atm: (pool, log10PCO2, _line, options) => {
    const open = equilibrateOpen(pool, log10PCO2, options.constants)
    return open.ok ? ok(open.value.totals) : fail(under('input', open.problem))
  },
  new_temperature_C: (pool, temperatureC) => ok(atTemperature(pool, temperatureC)),
}

const FRACTION = 'Give the part of the water that is fill: 0.25 for a quarter.'
const FACTOR = 'Give how many times as strong the water gets: 1.2 where a sixth evaporated.'

const outside = (key: string, value: number, range: string, hint: string): Problem => ({
  code: 'blend-out-of-range',
  path: `input.${key}`,
  what: `input.${key} is ${value}; it has to be ${range}.`,
  why: 'No water comes about from another amount.',
  hint,
})

/** What solving calls by its own name, at the key that was given; the rest belongs to the pool. */
const placedAt = (kind: string, problem: Problem): Problem => ({
  ...problem,
  path: problem.path === 'temperatureC' && kind === 'new_temperature_C' ? kind : '',
})

const twoBlends = (kinds: readonly string[]): Problem => ({
  code: 'two-blends',
  path: 'input',
  what: `The line asks for ${kinds.join(' and ')} at once.`,
  why: 'Each is a change of its own, and their order matters.',
  hint: 'Give one of them a line.',
})

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
    const kinds = Object.keys(KINDS).filter((key) => (asked.value[key] ?? undefined) !== undefined)
    if (kinds.length > 1) return fail(twoBlends(kinds))
    const [kind] = kinds
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
    const { notices: ofPool = [] } = waterNotices(asked.value['pool'], 'input.pool')
    const { notices: ofFill = [] } = waterNotices(asked.value['fill'], 'input.fill')
    const notices = [...ofPool, ...ofFill]
    if (solved.ok)
      return ok({
        output: doseColumns(solved.value.totals, solved.value.equilibrium),
        ...(notices.length > 0 ? { notices } : {}),
      })
    return fail(under('input', placedAt(kind, solved.problem)))
  },
}
