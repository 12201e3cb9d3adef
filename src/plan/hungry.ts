import type { Balance } from './balance.ts'
import type { SolvedWater } from './solved.ts'
import type { OpeningInput, Purpose } from './types.ts'

/** Below this calcite SI water slowly takes calcium from plaster and grout (common practice, no source). */
export const HUNGRY_SI = -0.3
/** Doses that move the balance of the water; chlorine or salt alone is no reason to touch it. */
const MOVES_BALANCE: readonly Purpose[] = ['calcium', 'stabiliser', 'borate']

/** What such water eats of this pool, where that can be told. */
export function eatenOf(input: OpeningInput): 'plaster' | 'grout' | undefined {
  if (input.start.ch_mg_per_L_as_CaCO3 === undefined) return undefined
  return input.surface === 'plaster' ? 'plaster' : input.surface === 'tile' ? 'grout' : undefined
}

/** Whether a plan sees to it that the water doesn't end hungry; water that was so and in its bands is let be. */
export function feeds(
  start: SolvedWater,
  balance: Balance,
  purposes: readonly Purpose[],
  input: OpeningInput,
): boolean {
  if (eatenOf(input) === undefined) return false
  const balances = Object.values(balance).some((amount) => amount > 0)
  return (
    start.equilibrium.calciteSI >= HUNGRY_SI || balances || purposes.some((purpose) => MOVES_BALANCE.includes(purpose))
  )
}
