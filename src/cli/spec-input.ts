import { fail, ok, type Problem, type Result, under } from '../base/index.ts'
import { deriveLabelProblems } from '../derive/index.ts'
import { type Spec, validateSpec } from '../document/index.ts'
import { bodyNotices } from './body-keys.ts'
import type { Notice } from './unknown-keys.ts'
import { asObject } from './verb.ts'

export interface SpecLine {
  readonly spec: Spec
  /** What stands beside a wrapped spec; nothing beside a bare one, whose other keys are its own. */
  readonly asked: Readonly<Record<string, unknown>>
  /** What paths into the spec begin with. */
  readonly prefix: '' | 'spec'
}

/** A line that is a spec, or holds one as `spec`. */
export function readSpecLine(input: unknown): Result<SpecLine, Problem | readonly Problem[]> {
  const line = asObject(input, '')
  if (!line.ok) return line
  const isWrapped = line.value['spec'] !== undefined
  const spec = specOfInput(isWrapped ? line.value['spec'] : input)
  if (!spec.ok) return isWrapped ? fail(spec.problem.map((problem) => under('spec', problem))) : spec
  return ok({ spec: spec.value, asked: isWrapped ? line.value : {}, prefix: isWrapped ? 'spec' : '' })
}

/** A document out of anything. Labels that can't be are refused here too, so that no run silently counts without them. */
export function specOfInput(input: unknown): Result<Spec, readonly Problem[]> {
  const spec = validateSpec(input)
  if (!spec.ok) return spec
  const problems = deriveLabelProblems(spec.value)
  return problems.length > 0 ? fail(problems) : spec
}

/** What to say of a document beside its answer; spread into that, it adds a key only where there is anything. */
export function specNotices(
  spec: Spec,
  prefix: '' | 'spec' = '',
  also: readonly Problem[] = [],
): { readonly notices?: readonly (Notice | Problem)[] } {
  const notices = [...also, ...bodyNotices(spec, prefix)]
  return notices.length > 0 ? { notices } : {}
}
