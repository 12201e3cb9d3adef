import { type Problem, under } from '../base/index.ts'
import { idTaken, isGeneric, LIKE_IDS, unlike } from '../chemicals/index.ts'
import { problem } from './problems.ts'
import type { LabelledProduct, System } from './types.ts'

/**
 * What is wrong with an owner's products and devices that a schema can't see: substances that aren't known, and ids used
 * twice. Whether a label's strength can be is for those who reckon with it: a document that holds such a label still opens.
 */
export function ownerProblems(system: System, path: string): readonly Problem[] {
  return [
    ...labelProblems(system.ownProducts ?? [], `${path}.ownProducts`),
    ...twice(
      (system.equipment.devices ?? []).map(({ id }) => id),
      (i) => `${path}.equipment.devices[${i}].id`,
    ),
  ]
}

function labelProblems(own: readonly LabelledProduct[], path: string): readonly Problem[] {
  const seen = new Set<string>()
  return own.flatMap(({ id, like }, i) => {
    const problems: Problem[] = []
    if (isGeneric(id) || seen.has(id)) problems.push(under(`${path}[${i}]`, idTaken(id, isGeneric(id))))
    if (!LIKE_IDS.includes(like)) problems.push(under(`${path}[${i}]`, unlike(like, LIKE_IDS)))
    seen.add(id)
    return problems
  })
}

/** A complaint for each id that stands there already. */
export function twice(ids: readonly string[], path: (index: number) => string): Problem[] {
  const seen = new Set<string>()
  const problems: Problem[] = []
  for (const [index, id] of ids.entries()) {
    if (seen.has(id)) problems.push(problem('same-id', path(index), { received: id }))
    seen.add(id)
  }
  return problems
}
