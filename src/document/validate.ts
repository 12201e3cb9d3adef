import * as v from 'valibot'
import { fail, ok, type Problem, type Result } from '../base/index.ts'
import { problemOfIssue } from './issues.ts'
import { migrate } from './migrations.ts'
import { ownerProblems, twice } from './owner-problems.ts'
import { problem } from './problems.ts'
import { DEFAULTS, SpecSchema, type WrittenBody, type WrittenSpec } from './schema/spec.ts'
import { SystemSchema } from './schema/system.ts'
import { sizeProblems } from './size-problems.ts'
import type { Body, Spec, System } from './types.ts'

/** More complaints than this help nobody. */
const MOST_PROBLEMS = 200
/** Room for one ring of as many curves as a ring may have. */
const MOST_VALUES = 2_000_000
const DEEPEST = 64

/**
 * A whole document out of anything: every complaint with its path, or the spec with what it leaves out filled in.
 * Keys that aren't known are kept.
 */
export function validateSpec(json: unknown): Result<Spec, readonly Problem[]> {
  if (isTooLarge(json)) return fail([problem('too-large', '')])
  const migrated = migrate(json)
  if (!migrated.ok) return fail([migrated.problem])
  const parsed = v.safeParse(SpecSchema, migrated.value)
  if (!parsed.success) return fail(parsed.issues.slice(0, MOST_PROBLEMS).map((issue) => problemOfIssue(issue)))
  const written = parsed.output
  const systems = systemsOf(written)
  const problems = crossProblems(written, systems)
  if (problems.length > 0) return fail(problems.slice(0, MOST_PROBLEMS))
  const isAbsent = written.systems === undefined
  const bodies = written.bodies.map((body) => wholeBody(body, isAbsent ? undefined : body.system, systems))
  return ok({ ...written, bodies, systems })
}

/** A system with nothing in it yet. */
export function emptySystem(id: string): System {
  return v.parse(SystemSchema, { id })
}

/** Systems that are absent mean one that holds every body. */
function systemsOf(written: WrittenSpec): readonly System[] {
  return written.systems === undefined ? [emptySystem(DEFAULTS.systemId)] : written.systems
}

function wholeBody(body: WrittenBody, system: string | undefined, systems: readonly System[]): Body {
  return { ...body, name: body.name ?? body.id, system: system ?? systems[0]?.id ?? DEFAULTS.systemId }
}

function crossProblems(written: WrittenSpec, systems: readonly System[]): Problem[] {
  const problems = [
    ...twice(
      written.bodies.map((body) => body.id),
      (i) => `bodies[${i}].id`,
    ),
    ...twice(
      systems.map((system) => system.id),
      (i) => `systems[${i}].id`,
    ),
    ...written.bodies.flatMap((body, i) => sizeProblems(body, `bodies[${i}]`)),
    ...systems.flatMap((system, s) => [
      ...twice(
        system.log.map((entry) => entry.id),
        (i) => `systems[${s}].log[${i}].id`,
      ),
      ...ownerProblems(system, `systems[${s}]`),
    ]),
  ]
  if (written.systems === undefined) return problems
  const ids = new Set(systems.map((system) => system.id))
  for (const [i, body] of written.bodies.entries()) {
    if (body.system === undefined && systems.length !== 1)
      problems.push(problem('system-unnamed', `bodies[${i}].system`))
    if (body.system !== undefined && !ids.has(body.system)) {
      problems.push(problem('no-such-system', `bodies[${i}].system`, { received: body.system }))
    }
  }
  return problems
}

/** Counts before anything walks the document by recursion, so that neither size nor nesting (a loop even) can stall it. */
function isTooLarge(json: unknown): boolean {
  let count = 0
  let level: unknown[] = [json]
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > DEEPEST) return true
    const next: unknown[] = []
    for (const value of level) {
      if (typeof value !== 'object' || value === null) continue
      const inside = Array.isArray(value) ? value : Object.values(value)
      count += inside.length
      if (count > MOST_VALUES) return true
      for (const item of inside) next.push(item)
    }
    level = next
  }
  return false
}
