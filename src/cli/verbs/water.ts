import { ok } from '../../base/index.ts'
import { deriveWater } from '../../derive/index.ts'
import { specNotices, specOfInput } from '../spec-input.ts'
import type { Verb } from '../verb.ts'

/** What the last readings of each system say; times that never end, as of chlorine that isn't there, are null in JSON. */
export const water: Verb = {
  id: 'water',
  summary:
    'SPEC → {"systems": [{"id", "told", "clashes", "indices", "sanitation", "targets", …}]}: what the last readings say',
  run: (input, options) => {
    const spec = specOfInput(input)
    if (!spec.ok) return spec
    return ok({
      systems: spec.value.systems.map(({ id }) => {
        const { latest, solved, ...rest } = deriveWater(spec.value, id, options.nowMs, options.constantsId)
        return {
          id,
          measuredAt: latest?.at,
          ...rest,
          ...(solved && (solved.ok ? { equilibrium: solved.value.equilibrium } : { problem: solved.problem })),
        }
      }),
      ...specNotices(spec.value),
    })
  },
}
