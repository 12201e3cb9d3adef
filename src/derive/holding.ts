import type { Spec } from '../document/index.ts'
import { chlorineHolding, type Holding } from '../plan/index.ts'
import { memoLast } from './memo.ts'
import { upkeepBasisOf } from './upkeep.ts'

/** Where the upkeep can't be reckoned nothing is known to hold chlorine. */
const NOTHING_KNOWN: Holding = { isHeld: false, perDay: Number.POSITIVE_INFINITY, steadyMgPerLDay: 0 }

/** How this pool uses its chlorine up and whether its floor is held, by the upkeep of the day. */
export const holdingOf = memoLast((spec: Spec, systemId: string, nowMs: number): Holding => {
  const basis = upkeepBasisOf(spec, systemId, nowMs)
  const holding = basis.ok ? chlorineHolding(basis.value.input) : basis
  return holding.ok ? holding.value : NOTHING_KNOWN
})
