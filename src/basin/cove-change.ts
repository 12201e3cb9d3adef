import { type Fans, fansOf } from './cove-fan.ts'
import { COVE_SUMS } from './cove-inner.ts'
import { type FanPlan, planFan, sumFan } from './cove-outer.ts'
import { sumPlainFan } from './cove-plain.ts'
import type { Partition } from './partition-types.ts'

/** What a cove changes in the figures of a basin at a level. */
export interface CoveChange {
  readonly volumeM3: number
  readonly areaM2: number
  readonly areaX: number
  readonly areaY: number
  readonly floorM2: number
  readonly featureM2: number
  /** Shore on the cove; the shore that it took away is told by cell (cove-shore.ts). */
  readonly shoreM: number
  readonly errorM3: number
}

const plans = new WeakMap<Partition, { fans: Fans; plans: FanPlan[] }>()

/** Sum of what the cove changes over all of the shore; areas and volumes come out negative where it takes. */
export function coveChange(p: Partition, r: number, levelM: number, wetted: boolean): CoveChange {
  let known = plans.get(p)
  if (!known) {
    const fans = fansOf(p)
    known = { fans, plans: fans.fans.map((fan) => planFan(p, fans, fan, r)) }
    plans.set(p, known)
  }
  const sums = new Float64Array(COVE_SUMS.length)
  let errorM3 = 0
  for (const plan of known.plans)
    if (isWet(p, plan, levelM) && !sumPlainFan(p, known.fans, plan, r, levelM, wetted, sums))
      errorM3 += sumFan(p, known.fans, plan, r, levelM, wetted, sums)
  const [volume, area, areaX, areaY, floorBefore, floorAfter, featureBefore, shore] = sums as unknown as number[]
  return {
    volumeM3: -volume!,
    areaM2: -area!,
    areaX: -areaX!,
    areaY: -areaY!,
    floorM2: floorAfter! - floorBefore!,
    featureM2: -featureBefore!,
    shoreM: shore!,
    errorM3,
  }
}

/** False where no cell that rays of a fan can reach holds water, so that a cove changes nothing. */
function isWet(p: Partition, { fan, near }: FanPlan, levelM: number): boolean {
  if (fan.cell < 0) return true
  const holds = (cell: number): boolean => cell >= 0 && p.cells[cell]!.maxDepthM + levelM > 0
  return holds(fan.cell) || near.some((e) => holds(p.edges[e]!.left) || holds(p.edges[e]!.right))
}
