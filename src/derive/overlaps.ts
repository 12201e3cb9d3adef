import type { Problem } from '../base/index.ts'
import { boundsOf, overlapOf } from '../basin/index.ts'
import type { Body, Spec } from '../document/index.ts'
import { memoLast } from './memo.ts'

/** Shared area below this share of the smaller body is a slip of the hand along a common edge, not water counted twice. */
const SLIVER = 1e-3

/** Notices about bodies that lie on one another: their water is counted twice. Nothing is withheld for it. */
export const deriveOverlaps = memoLast((spec: Spec): readonly Problem[] => {
  const notices: Problem[] = []
  for (const [i, body] of spec.bodies.entries())
    for (const [k, other] of spec.bodies.entries()) {
      if (k >= i || !sharesWater(body, other)) continue
      notices.push({
        code: 'bodies-overlap',
        path: `bodies[${i}].outline`,
        what: `${body.name} lies on ${other.name}.`,
        why: 'The water where they overlap is counted in both.',
        hint: 'Move one of them, or draw the inner one as an island or a feature of the outer one.',
      })
    }
  return notices
})

function sharesWater(body: Body, other: Body): boolean {
  // A body that stands on an island of the other takes none of its water.
  const onIsland = (a: Body, b: Body): number =>
    b.islands.reduce((sum, island) => {
      const area = overlapOf(a.outline, island)
      return sum + (area.ok ? area.value : 0)
    }, 0)
  const common = overlapOf(body.outline, other.outline)
  if (!common.ok) return false
  const sharedM2 = common.value - onIsland(body, other) - onIsland(other, body)
  return sharedM2 > SLIVER * Math.min(boxAreaOf(body), boxAreaOf(other))
}

function boxAreaOf({ outline }: Body): number {
  const { minX, minY, maxX, maxY } = boundsOf(outline)
  return (maxX - minX) * (maxY - minY)
}
