import { fail, ok, type Problem, under } from '../../base/index.ts'
import { deriveDeckCard } from '../../derive/index.ts'
import { specNotices, specOfInput } from '../spec-input.ts'
import type { Verb } from '../verb.ts'

export const card: Verb = {
  id: 'card',
  summary:
    'SPEC → {"systems": [{"id", "card"}]}: reading → dose in the pool’s own volume; {"id", "problem"} without one',
  run: (input, options) => {
    const spec = specOfInput(input)
    if (!spec.ok) return spec
    const problems: Problem[] = []
    const systems = spec.value.systems.map(({ id }, i) => {
      const made = deriveDeckCard(spec.value, id, options.nowMs, undefined, options.constantsId)
      if (made.ok) return { id, card: made.value }
      problems.push(under(`systems[${i}]`, { ...made.problem, path: '' }))
      return { id, problem: made.problem }
    })
    return problems.length > 0 && problems.length === systems.length
      ? fail(problems)
      : ok({ systems, ...specNotices(spec.value) })
  },
}
