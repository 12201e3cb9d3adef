import type { Problem } from '../../base/index.ts'
import { START_INPUTS, type StartInput } from '../../plan/index.ts'
import { problem } from '../problems.ts'

/** What is wrong with values for a start: one that it doesn't ask for, or one outside of what can be. */
export function startValuesTrouble(modeId: string, values: { readonly [key: string]: number }): Problem | undefined {
  const inputs: readonly StartInput[] = Object.entries(START_INPUTS).find(([id]) => id === modeId)?.[1] ?? []
  for (const [key, value] of Object.entries(values)) {
    const path = `values.${key}`
    const input = inputs.find((each) => each.key === key)
    if (!input) {
      const expected = inputs.map((each) => each.key).join(', ') || 'nothing'
      return problem('start-value-unknown', path, { detail: key, expected })
    }
    const { low, high, label } = input
    if (!(value >= low && value <= high)) {
      return problem('start-value-out', path, { detail: label, received: value, low, high })
    }
  }
  return undefined
}
