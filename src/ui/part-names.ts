import type { Problem } from '../base/index.ts'
import type { Body, Spec } from '../document/index.ts'
import { FEATURES } from '../features/index.ts'

type Named = Pick<Body, 'features'>

/** What the ledger calls the parts of a body that there may be several of, by where they stand in the document. */
const PARTS: readonly (readonly [RegExp, (index: number, body: Named) => string])[] = [
  [/^features\[(\d+)\]/, (i, { features }) => `${FEATURES.get(features[i]?.kind ?? '')?.label ?? 'Feature'} ${i + 1}`],
  [/^floor\.points\[(\d+)\]/, (i) => `Sounding ${i + 1}`],
  [/^floor\.rings\[(\d+)\]/, (i) => `Depth line ${i + 1}`],
  [/^floor\.stations\[(\d+)\]/, (i) => `Station ${i + 1}`],
  [/^islands\[(\d+)\]/, (i) => `Island ${i + 1}`],
]

/** The name of a part of a body; undefined where there is only one of its kind. */
function partName(path: string, body: Named): string | undefined {
  for (const [pattern, name] of PARTS) {
    const index = pattern.exec(path)?.[1]
    if (index !== undefined) return name(Number(index), body)
  }
  return undefined
}

/** A complaint of a body that says which of several parts it means: "Steps 2: no part of this lies inside …". */
export function namedProblem<P extends Problem>(problem: P, body: Named): P {
  const name = partName(problem.path, body)
  if (name === undefined) return problem
  return { ...problem, what: `${name}: ${problem.what.charAt(0).toLowerCase()}${problem.what.slice(1)}` }
}

/** The same for a complaint of the whole document, whose path begins with the body. */
export function namedInSpec<P extends Problem>(problem: P, { bodies }: Pick<Spec, 'bodies'>): P {
  const [, index, path] = /^bodies\[(\d+)\]\.(.*)$/.exec(problem.path) ?? []
  const body = index === undefined ? undefined : bodies[Number(index)]
  return body && path !== undefined ? { ...problem, what: namedProblem({ ...problem, path }, body).what } : problem
}
