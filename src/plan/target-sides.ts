import type { Constants, Delta, Totals } from '../water/index.ts'
import { type LinearKey, readingChange } from './effect.ts'
import { subsets } from './linear.ts'
import { type AmountScore, amountsFor, dosesSum, type ExactTarget } from './target-solve.ts'

/** What bathers or a shell feel, and what nobody takes back with ease: it stays where it is unless it is asked for. */
export const SIDES = [
  'fc_mg_per_L_as_Cl2',
  'cya_mg_per_L',
  'borate_mg_per_L_as_B',
  'ch_mg_per_L_as_CaCO3',
] as const satisfies readonly LinearKey[]

type SideKey = (typeof SIDES)[number]

/** How far a reading that has no target goes along [mg/L]. */
interface SideMove {
  readonly from: number
  readonly to: number
  readonly by: number
}

export type SideMoves = { readonly [K in SideKey]?: SideMove }

/** Below this nothing moves [mg/L]. */
const STILL_MG_PER_L = 1e-3
/** Below this a unit of a dose moves nothing [mg/L]. */
const STILL_PER_UNIT = 1e-9

/**
 * Amounts as `amountsFor` finds them, of doses that leave chlorine, stabiliser, borate and calcium alone where these have no
 * target; where none such reach it, with one of them moved, then with two, and so on. What moves does so as little as can
 * be, unless something else is to be least. Undefined where no doses reach the target at all.
 */
export function quietAmounts(
  start: Totals,
  target: ExactTarget,
  means: readonly Delta[],
  constants: Constants,
  score?: AmountScore,
): readonly number[] | undefined {
  const moves = (mean: Delta, key: SideKey) => Math.abs(readingChange(mean, key)) > STILL_PER_UNIT
  const loud = SIDES.filter((key) => target[key] === undefined && means.some((mean) => moves(mean, key)))
  for (let size = 0; size <= loud.length; size++)
    for (const chosen of subsets(loud.length, size)) {
      const held = loud.filter((_, index) => !chosen.includes(index))
      // what goes one way only has to stay out; a pair that takes it up and down again may still be one
      const bothWays = held.filter((key) => isBothWays(means, key))
      const quiet = [...means.keys()].filter(
        (index) => !held.some((key) => !bothWays.includes(key) && moves(means[index]!, key)),
      )
      const deltas = quiet.map((index) => means[index]!)
      const stays = Object.fromEntries(bothWays.map((key) => [key, Math.max(0, readingChange(start, key))]))
      const whole = (amounts: readonly number[]) =>
        means.map((_, index) => (quiet.includes(index) ? amounts[quiet.indexOf(index)]! : 0))
      const least: AmountScore | undefined =
        size === 0
          ? undefined
          : (amounts) =>
              chosen.reduce((sum, at) => sum + Math.abs(readingChange(dosesSum(deltas, amounts), loud[at]!)), 0)
      const worth = score ? (amounts: readonly number[]) => score(whole(amounts)) : least
      const found = amountsFor(start, { ...target, ...stays }, deltas, constants, worth)
      if (found) return whole(found)
    }
  return undefined
}

function isBothWays(means: readonly Delta[], key: SideKey): boolean {
  const changes = means.map((mean) => readingChange(mean, key))
  return changes.some((change) => change > STILL_PER_UNIT) && changes.some((change) => change < -STILL_PER_UNIT)
}

/** What has no target and moves all the same; undefined where nothing does. */
export function sideMoves(start: Totals, target: ExactTarget, sum: Delta): SideMoves | undefined {
  const moved = SIDES.flatMap((key): [SideKey, SideMove][] => {
    const by = readingChange(sum, key)
    if (target[key] !== undefined || Math.abs(by) < STILL_MG_PER_L) return []
    const from = readingChange(start, key)
    return [[key, { from, to: from + by, by }]]
  })
  return moved.length > 0 ? Object.fromEntries(moved) : undefined
}
