import { fail, ok, type Problem, type Result } from '../base/index.ts'
import type { Axis, Point } from '../basin/index.ts'
import { asNumber, asObject } from './verb.ts'

/** More than this in one list is a slip [items]. */
const MOST_ITEMS = 10_000

/** A list whose items are read one by one; nothing where there is none. The first bad item is the problem, at its place. */
export function listOf<T>(
  value: unknown,
  path: string,
  item: (value: unknown, path: string) => Result<T>,
): Result<readonly T[] | undefined> {
  if (value === undefined || value === null) return ok(undefined)
  if (!Array.isArray(value)) return fail(notAList(path))
  if (value.length > MOST_ITEMS) return fail(tooMany(path, value.length))
  const items: T[] = []
  for (const [i, each] of value.entries()) {
    const read = item(each, `${path}[${i}]`)
    if (!read.ok) return read
    items.push(read.value)
  }
  return ok(items)
}

/** A place in plan: a pair of finite numbers [m]. */
export function asPoint(value: unknown, path: string): Result<Point> {
  if (!Array.isArray(value) || value.length !== 2) return fail(notAPoint(path))
  const x = asNumber(value[0], `${path}[0]`)
  if (!x.ok) return x
  const y = asNumber(value[1], `${path}[1]`)
  return y.ok ? ok([x.value, y.value]) : y
}

/** A line in plan from a place to another one. */
export function asAxis(value: unknown, path: string): Result<Axis> {
  const line = asObject(value, path)
  if (!line.ok) return line
  const from = asPoint(line.value['from'], `${path}.from`)
  if (!from.ok) return from
  const to = asPoint(line.value['to'], `${path}.to`)
  if (!to.ok) return to
  if (from.value[0] === to.value[0] && from.value[1] === to.value[1]) return fail(withoutLength(path))
  return ok({ from: from.value, to: to.value })
}

const notAList = (path: string): Problem => ({
  code: 'not-a-list',
  path,
  what: `${path} must be a list.`,
  why: 'Each of its items is answered for itself.',
  hint: 'Put what you ask for in square brackets, even one item.',
})

const tooMany = (path: string, count: number): Problem => ({
  code: 'too-many',
  path,
  what: `${path} has ${count} items; the most are ${MOST_ITEMS}.`,
  why: 'Beyond that one line would take very long.',
  hint: 'Ask in several lines.',
})

const notAPoint = (path: string): Problem => ({
  code: 'not-a-point',
  path,
  what: `${path} must be a pair of numbers.`,
  why: 'It is a place in the plan.',
  hint: 'Give metres as [x, y].',
})

const withoutLength = (path: string): Problem => ({
  code: 'line-without-length',
  path,
  what: `${path} ends where it starts.`,
  why: 'It has no direction to cut along.',
  hint: 'Move one of its ends.',
})
