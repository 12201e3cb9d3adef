import * as v from 'valibot'
import { fail, type Problem, type Result } from '../../base/index.ts'
import { problemOfTyped } from '../issues.ts'
import { ownerProblems, twice } from '../owner-problems.ts'
import { problem } from '../problems.ts'
import { Name } from '../schema/numbers.ts'
import { BodySchema, SiteSchema } from '../schema/spec.ts'
import { SystemSchema } from '../schema/system.ts'
import { sizeProblems } from '../size-problems.ts'
import type { Spec } from '../types.ts'
import { COMMANDS, type Command } from './index.ts'

/** The document after an edit. Where the edit can't be, a problem, and the document is as it was. */
export function applyCommand(spec: Spec, command: Command): Result<Spec> {
  const edit = Object.hasOwn(COMMANDS, command.id) ? COMMANDS[command.id] : undefined
  if (!edit) return fail(problem('unknown-edit', 'id', { detail: String(command.id).slice(0, 40) }))
  const args = v.safeParse(edit.args, command.args)
  if (!args.success) return fail(problemOfTyped(args.issues[0], 'args'))
  // The schema has just made the arguments those of this very edit, which the types can't follow through the table.
  const apply = edit.apply as (spec: Spec, args: unknown) => Result<Spec>
  const edited = apply(spec, args.output)
  if (!edited.ok) return edited
  const trouble = troubleIn(spec, edited.value)
  return trouble ? fail(trouble) : edited
}

/** What undo calls the edit. */
export function commandLabel(command: Command): string {
  return COMMANDS[command.id].label
}

/** Checks only what the edit made anew, so that a drag stays quick however long the log is. */
function troubleIn(before: Spec, after: Spec): Problem | undefined {
  const check = (schema: v.GenericSchema, value: unknown, path: string) => {
    const parsed = v.safeParse(schema, value)
    return parsed.success ? undefined : problemOfTyped(parsed.issues[0], path)
  }
  if (after.name !== before.name) {
    const trouble = check(Name, after.name, 'name')
    if (trouble) return trouble
  }
  for (const [i, body] of after.bodies.entries()) {
    if (before.bodies.includes(body)) continue
    const trouble = check(BodySchema, body, `bodies[${i}]`) ?? sizeProblems(body, `bodies[${i}]`)[0]
    if (trouble) return trouble
    if (!after.systems.some(({ id }) => id === body.system)) {
      return problem('no-such-system', `bodies[${i}].system`, { received: body.system })
    }
  }
  for (const [i, system] of after.systems.entries()) {
    if (before.systems.includes(system)) continue
    const path = `systems[${i}]`
    const trouble =
      check(SystemSchema, system, path) ??
      twice(
        system.log.map(({ id }) => id),
        (n) => `${path}.log[${n}].id`,
      )[0] ??
      ownerProblems(system, path)[0]
    if (trouble) return trouble
  }
  return after.site === before.site ? undefined : check(SiteSchema, after.site, 'site')
}
