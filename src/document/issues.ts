import type { BaseIssue } from 'valibot'
import type { Problem } from '../base/index.ts'
import { placesOfIssue } from './place-of-issue.ts'
import { isProblemCode, type ProblemCode, problem } from './problems.ts'

/** The complaint that a schema's issue amounts to, at its path below `prefix`. */
export function problemOfIssue(issue: BaseIssue<unknown>, prefix = ''): Problem {
  const path = pathOf(issue, prefix)
  const fill = {
    key: keyOf(issue, prefix),
    expected: expectedOf(issue),
    received: shown(issue.input),
    bound: boundOf(issue),
  }
  const code = codeOf(issue)
  const at = placesOfIssue(issue, code)
  return { ...problem(code, path, fill), ...(at.length > 0 && { at }) }
}

/** Parts that hold lengths, and the endings of those that say their unit. */
const LENGTHS = /^(to|at|start|from|centre|c1|c2|points|stations|treads)$|M$/
const VOLUMES = /M3$|^m3$/

/** The same of an edit: whoever typed the figure knows no key of the document. */
export function problemOfTyped(issue: BaseIssue<unknown>, prefix: string): Problem {
  const found = problemOfIssue(issue, prefix)
  if (found.code !== 'out-of-range') return found
  const key = keyOf(issue, prefix)
  const unit = VOLUMES.test(key) ? ' m³' : LENGTHS.test(key) ? ' m' : ''
  const isHigh = issue.type === 'max_value'
  const limit = isHigh ? 'Not more than' : issue.type === 'gt_value' ? 'More than' : 'Not less than'
  return {
    ...found,
    what: `This figure is too ${isHigh ? 'large' : 'small'}.`,
    hint: `${limit} ${String(issue.requirement)}${unit}.`,
  }
}

function codeOf(issue: BaseIssue<unknown>): ProblemCode {
  if (issue.type === 'check' && isProblemCode(issue.message)) return issue.message
  switch (issue.type) {
    case 'min_value':
    case 'max_value':
    case 'gt_value':
      return 'out-of-range'
    case 'min_length':
      return typeof issue.input === 'string' ? 'empty-text' : 'too-few'
    case 'max_length':
      return typeof issue.input === 'string' ? 'long-text' : 'too-many'
    case 'length':
      return Array.isArray(issue.input) && issue.input.length > Number(issue.requirement) ? 'too-many' : 'too-few'
    case 'integer':
      return 'not-whole'
    case 'finite':
      return 'not-finite'
  }
  if (issue.input === undefined) return 'missing'
  if (issue.expected === 'never') return issue.type === 'strict_object' ? 'unknown-key' : 'too-many'
  if (typeof issue.input === 'number' && Number.isNaN(issue.input)) return 'not-finite'
  if (issue.type === 'variant') return 'unknown-kind'
  return issue.type === 'picklist' || issue.type === 'literal' ? 'not-one-of' : 'wrong-type'
}

function pathOf(issue: BaseIssue<unknown>, prefix: string): string {
  let path = prefix
  for (const { key } of issue.path ?? []) {
    if (typeof key === 'number') path += `[${key}]`
    else path += path === '' ? String(key) : `.${String(key)}`
  }
  return path
}

/** The last name in the path: "segments" of segments[3]. */
function keyOf(issue: BaseIssue<unknown>, prefix: string): string {
  const names = (issue.path ?? []).filter((item) => typeof item.key === 'string')
  return String(names.at(-1)?.key ?? (prefix === '' ? 'document' : prefix))
}

const KINDS: { readonly [expected: string]: string } = {
  number: 'a number',
  string: 'a text',
  boolean: 'true or false',
  Array: 'a list',
  Object: 'an object',
  Tuple: 'a pair of numbers',
}

function expectedOf(issue: BaseIssue<unknown>): string {
  const expected = issue.expected ?? ''
  if (KINDS[expected]) return KINDS[expected]
  // The issue of a missing key expects the key's own name.
  if (issue.type.endsWith('object') && expected.startsWith('"')) return `a value for ${expected}`
  return expected.replace(/^\(|\)$/g, '').replaceAll(' | ', ', ')
}

function boundOf(issue: BaseIssue<unknown>): string {
  const bound = String(issue.requirement ?? '')
  switch (issue.type) {
    case 'min_value':
      return `the least is ${bound}`
    case 'gt_value':
      return `it has to be above ${bound}`
    case 'max_value':
      return `the most is ${bound}`
    case 'min_length':
      return `the fewest are ${bound}`
    case 'max_length':
      return `the most are ${bound}`
    case 'length':
      return `there have to be ${bound}`
    case 'strict_tuple':
      return 'fewer numbers are expected'
    default:
      return ''
  }
}

function shown(input: unknown): string {
  if (input === null) return 'null'
  if (Array.isArray(input)) return 'a list'
  if (typeof input === 'object') return 'an object'
  if (typeof input === 'function') return 'a function'
  if (typeof input === 'string') return JSON.stringify(input.length > 40 ? `${input.slice(0, 40)}…` : input)
  return String(input)
}
