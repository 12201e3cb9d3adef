import type { Result } from '../../src/base/index.ts'
import { applyCommand, type Command, type Spec } from '../../src/document/index.ts'
import type { OpeningPlan } from '../../src/plan/index.ts'

/** The document after edits that have to succeed. */
export function edited(spec: Spec, ...commands: readonly Command[]): Spec {
  return commands.reduce((current, command) => {
    const result = applyCommand(current, command)
    if (!result.ok) throw new Error(`${result.problem.path}: ${result.problem.what} ${result.problem.hint}`)
    return result.value
  }, spec)
}

/** The lines of a plan that has to be there. */
export function lines(plan: Result<OpeningPlan>): OpeningPlan['lines'] {
  if (!plan.ok) throw new Error(plan.problem.what)
  return plan.value.lines
}
