/** Trouble that a person or a file caused: a value, never a throw. Worded in one place per layer. */
export interface Problem {
  /** Stable kebab-case name, e.g. `outline-crosses-itself`. */
  readonly code: string
  /** Where in the document, e.g. `bodies[0].outline.segments[3]`; empty for the whole. */
  readonly path: string
  /** What is wrong, one plain sentence. */
  readonly what: string
  /** Why that matters. */
  readonly why: string
  /** How to mend it. */
  readonly hint: string
  /** Places in the plan that show the trouble, where there are any [m]. */
  readonly at?: readonly (readonly [number, number])[]
}

export type Result<T, E = Problem> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: E }

/** Wraps a good value. */
export function ok<T>(value: T): Result<T, never> {
  return { ok: true, value }
}

/** Wraps a problem. */
export function fail<E>(problem: E): Result<never, E> {
  return { ok: false, problem }
}

/** The same problem, its path prefixed by where the caller found the part. */
export function under(prefix: string, problem: Problem): Problem {
  if (prefix === '') return problem
  const joint = problem.path === '' || problem.path.startsWith('[') ? '' : '.'
  return { ...problem, path: `${prefix}${joint}${problem.path}` }
}
