import type { Problem } from '../../../base/index.ts'
import type { OutlineParameter, StartingOutline } from '../../../basin/index.ts'
import { formatForEntry, type UnitSystem } from '../../../units/index.ts'
import { limitWords } from '../../fields/index.ts'
import type { OutlineValues } from './start-values.ts'

/** Values of a measure that are tried, from its least to its greatest; then the ends are halved for so often. */
const TRIES = 200
const HALVINGS = 40

interface Range {
  readonly lowM: number
  readonly highM: number
}

/** The values of one measure with which an outline closes, the others as they are; those nearest to the one at hand. */
export function rangeOf(kind: StartingOutline, values: OutlineValues, parameter: OutlineParameter): Range | undefined {
  const { id, minM, maxM, defaultM } = parameter
  const closes = (m: number) => kind.make({ ...values, [id]: m }).ok
  const now = values[id] ?? defaultM
  // Close together where pools are, and a value that may be the only one: none at all.
  const lowest = Math.max(minM, 0.01)
  const tried = [minM, ...Array.from({ length: TRIES + 1 }, (_, i) => lowest * (maxM / lowest) ** (i / TRIES))]
  const good = tried.filter(closes)
  const nearest = good.reduce<number | undefined>(
    (best, m) => (best === undefined || Math.abs(m - now) < Math.abs(best - now) ? m : best),
    undefined,
  )
  if (nearest === undefined) return undefined
  const end = (to: number) => {
    const beyond = (to > nearest ? tried : tried.toReversed()).find(
      (m) => (m - nearest) * (to - nearest) > 0 && !closes(m),
    )
    if (beyond === undefined) return to
    let [inside, outside] = [nearest, beyond]
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (inside + outside) / 2
      if (closes(middle)) inside = middle
      else outside = middle
    }
    return inside
  }
  return { lowM: end(minM), highM: end(maxM) }
}

/** Why an outline doesn't close, by the measure that would mend it: the one typed last, else another, with its range. */
export function measureProblem(
  kind: StartingOutline,
  values: OutlineValues,
  typedIds: readonly string[],
  problem: Problem,
  units: UnitSystem,
): Problem {
  const lastFirst = [...kind.parameters].sort((a, b) => typedIds.indexOf(b.id) - typedIds.indexOf(a.id))
  for (const parameter of lastFirst) {
    const range = rangeOf(kind, values, parameter)
    if (!range) continue
    const { label, id, defaultM } = parameter
    const low = limitWords('length', range.lowM, units, 'low')
    const high = limitWords('length', range.highM, units, 'high')
    return {
      ...problem,
      path: id,
      what: `“${label}” can’t be ${formatForEntry('length', values[id] ?? defaultM, units)} here.`,
      hint: `With the other measures as they are, keep it between ${low} and ${high}.`,
    }
  }
  return { ...problem, hint: 'No one measure mends it: change two, or take the usual measures.' }
}
