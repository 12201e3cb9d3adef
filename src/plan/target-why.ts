import { type Constants, type Delta, MG_CACO3_PER_EQ, type Totals } from '../water/index.ts'
import { readingChange } from './effect.ts'
import { amountsFor, type ExactTarget } from './target-solve.ts'
import { TARGET_LABELS } from './targets.ts'
import type { TargetKey } from './types.ts'

const few = (value: number): string => String(Number(value.toPrecision(3)))
const named = (key: TargetKey): string => TARGET_LABELS[key].replace(/^[A-Z](?![A-Z])/, (c) => c.toLowerCase())
const SAME_MG_PER_L = 1e-6

/**
 * What stands in the way of a target, in words: a reading that nothing moves that way, else the smallest number of
 * readings that cannot be had together.
 */
export function whyUnreachable(
  start: Totals,
  target: ExactTarget,
  means: readonly Delta[],
  constants: Constants,
): string {
  const keys = (Object.keys(target) as TargetKey[]).filter((key) => target[key] !== undefined)
  const alone = keys.filter((key) => !amountsFor(start, { [key]: target[key] }, means, constants))
  if (alone.length > 0) return alone.map((key) => lackOf(key, start, target, means)).join('; ')
  for (const [at, one] of keys.entries())
    for (const other of keys.slice(at + 1))
      if (!amountsFor(start, { [one]: target[one], [other]: target[other] }, means, constants))
        return `${named(one)} and ${named(other)} can each be had, but not both at once`
  return `${keys.map(named).join(', ')} can be had in pairs, but not all at once`
}

/** One reading's way there and that nothing goes it. */
function lackOf(key: TargetKey, start: Totals, target: ExactTarget, means: readonly Delta[]): string {
  if (key === 'pH') return `none of them brings pH to ${few(target.pH ?? 0)}`
  const now = key === 'ta_mg_per_L_as_CaCO3' ? start.alkalinityEq * MG_CACO3_PER_EQ : readingChange(start, key)
  const wanted = target[key] ?? 0
  const way = wanted > now ? 'rise' : 'fall'
  const does = wanted > now ? 'raises' : 'lowers'
  const moved = means.some((mean) => Math.abs(readingChange(mean, key)) > SAME_MG_PER_L)
  const because = moved && way === 'fall' ? 'they only raise it' : moved ? 'they only lower it' : `none ${does} it`
  return `${named(key)} has to ${way} from ${few(now)} to ${few(wanted)} mg/L, and ${because}`
}
