import { fail, ok, type Problem, under } from '../../base/index.ts'
import { deriveExcess, deriveOpening, deriveStart, deriveUpkeep } from '../../derive/index.ts'
import { specNotices, specOfInput } from '../spec-input.ts'
import type { Verb } from '../verb.ts'

export const plan: Verb = {
  id: 'plan',
  summary:
    'SPEC → {"systems": [{"id", "opening", "upkeep", "start"?, "alarm"?}]}, "start" where one is under way, "alarm" where chlorine is so high that everyone keeps out; a system without a volume has {"id", "problem"}',
  run: (input, options) => {
    const spec = specOfInput(input)
    if (!spec.ok) return spec
    const problems: Problem[] = []
    const systems = spec.value.systems.map(({ id }, i) => {
      const opening = deriveOpening(spec.value, id, options.nowMs, undefined, options.constantsId)
      const upkeep = deriveUpkeep(spec.value, id, options.nowMs, options.constantsId)
      const problem = !opening.ok ? opening.problem : !upkeep.ok ? upkeep.problem : undefined
      if (problem) problems.push(under(`systems[${i}]`, { ...problem, path: '' }))
      if (!opening.ok) return { id, problem: opening.problem }
      const start = deriveStart(spec.value, id, options.nowMs, options.constantsId)
      const alarm = deriveExcess(spec.value, id, options.nowMs)
      return {
        id,
        ...(alarm ? { alarm } : {}),
        opening: opening.value,
        upkeep: upkeep.ok ? upkeep.value : { problem: upkeep.problem },
        ...(start ? { start: start.ok ? start.value : { problem: start.problem } } : {}),
      }
    })
    // One system that can't be planned doesn't take the others' plans away; with none left there is no answer.
    return problems.length > 0 && problems.length === systems.length
      ? fail(problems)
      : ok({ systems, ...specNotices(spec.value) })
  },
}
