import { fail, type Problem, type Result } from '../base/index.ts'
import { LIMITS } from '../document/index.ts'
import { CONSTANT_SETS, type Constants } from '../water/index.ts'

export interface Options {
  readonly constants: Constants
  /** Undefined where none was asked for: a document's own choice then holds. */
  readonly constantsId: 'default' | 'oracle' | 'wahman' | undefined
  /** A level asked for on the command line [m above the datum]. */
  readonly levelM: number | undefined
  readonly baseUrl: string
  readonly nowMs: number
}

/** A verb turns one JSON value into one JSON value, or into problems. */
export interface Verb {
  readonly id: string
  readonly summary: string
  readonly run: (input: unknown, options: Options) => Result<unknown, Problem | readonly Problem[]>
}

/** A set of constants by name. */
export function constantsById(id: string): Result<Constants> {
  const set = Object.entries(CONSTANT_SETS).find(([name]) => name === id)?.[1]
  if (set) return { ok: true, value: set }
  return fail({
    code: 'unknown-constants',
    path: '--constants',
    what: `There is no set of constants named “${id}”.`,
    why: 'The water is computed with a named set.',
    hint: `Use one of ${Object.keys(CONSTANT_SETS).join(', ')}.`,
  })
}

/** An object to look keys up in, or a problem that says what was there instead. */
export function asObject(value: unknown, path: string): Result<Readonly<Record<string, unknown>>> {
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) return { ok: true, value: { ...value } }
  return fail({
    code: 'not-an-object',
    path,
    what: `${path === '' ? 'The line' : path} must be a JSON object.`,
    why: 'Its keys say what is asked.',
    hint: 'See the command line’s help for the keys of each verb.',
  })
}

/** A finite number, or a problem. */
export function asNumber(value: unknown, path: string): Result<number> {
  if (typeof value === 'number' && Number.isFinite(value)) return { ok: true, value }
  return fail({
    code: 'not-a-number',
    path,
    what: `${path} must be a finite number, not ${JSON.stringify(value) ?? 'nothing'}.`,
    why: 'The calculation needs it.',
    hint: 'Give a plain number in the unit that the key names.',
  })
}

/** A level of the water that a document could have, or a problem. */
export function asLevel(value: unknown, path: string): Result<number> {
  const level = asNumber(value, path)
  if (!level.ok || Math.abs(level.value) <= LIMITS.depthM) return level
  return fail({
    code: 'out-of-range',
    path,
    what: `${path} is ${level.value}; the most is ${LIMITS.depthM}, the least −${LIMITS.depthM}.`,
    why: 'Outside of that it can only be a slip.',
    hint: 'Give metres above (+) or below (−) the datum.',
  })
}
