import { type Problem, under } from '../base/index.ts'
import { type OwnProduct, productsWith } from '../chemicals/index.ts'
import { problem } from './problems.ts'
import type { LabelledProduct, System } from './types.ts'

/** The label as the table of chemicals wants it, fresh: how old it is depends on the day that it is asked on. */
export function freshLabel({ id, label, like, strength, basis, densityKgPerL, packages }: LabelledProduct): OwnProduct {
  return { id, label, like, strength, basis, densityKgPerL, packages }
}

/** What is wrong with an owner's products and devices that a schema can't see: strengths that can't be, and ids used twice. */
export function ownerProblems(system: System, path: string): readonly Problem[] {
  const own = productsWith((system.ownProducts ?? []).map(freshLabel)).problems
  return [
    ...own.map((each) => under(path, each)),
    ...twice(
      (system.equipment.devices ?? []).map(({ id }) => id),
      (i) => `${path}.equipment.devices[${i}].id`,
    ),
  ]
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
