import { ok } from '../../base/index.ts'
import { deriveOpening, deriveUpkeep } from '../../derive/index.ts'
import { validateSpec } from '../../document/index.ts'
import type { Verb } from '../verb.ts'

export const plan: Verb = {
  id: 'plan',
  summary: 'SPEC → {"systems": [{"id", "opening", "upkeep"}]}',
  run: (input, options) => {
    const spec = validateSpec(input)
    if (!spec.ok) return spec
    const systems: unknown[] = []
    for (const { id } of spec.value.systems) {
      const opening = deriveOpening(spec.value, id, options.nowMs)
      if (!opening.ok) return opening
      const upkeep = deriveUpkeep(spec.value, id, options.nowMs)
      systems.push({ id, opening: opening.value, upkeep: upkeep.ok ? upkeep.value : { problem: upkeep.problem } })
    }
    return ok({ systems })
  },
}
