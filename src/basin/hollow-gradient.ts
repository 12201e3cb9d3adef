import { alongHollow, ruleOnHollow } from './hollow-span.ts'
import { hollowFall, hollowShares } from './ray-hollow.ts'
import {
  BY_WALL,
  FLOOR_MOMENTS,
  HOLLOW_MOMENTS,
  LEAN,
  LEVEL,
  PATCH_MOMENTS,
  type Sheaf,
  UNSCALED,
} from './wall-gradient-span.ts'
import { floorOn, type RaySpan, type WallLaw } from './wall-kind.ts'

/**
 * What a wall changes of the derivatives along a stretch of a ray over a hollow; returns a number for the pattern of its
 * pieces. As wall-gradient-cove.ts and wall-gradient-battered.ts, by a short rule between the breaks.
 */
export function addHollowGradient(
  law: WallLaw,
  sheaf: Sheaf,
  span: RaySpan,
  levelM: number,
  sums: Float64Array,
): number {
  return alongHollow(law, span, levelM, (a, b, { wetBefore, wetAfter }) =>
    ruleOnHollow(law, span, a, b, (n, dn) => {
      const w = dn * (sheaf.h0 + sheaf.h1 * n)
      if (wetBefore) {
        sums[LEVEL]! -= w
        if (span.isFeature) addWeight(PATCH_MOMENTS, n, -w, sums)
        else addHollow(span, n, -w, sums)
      }
      if (!wetAfter) return
      sums[LEVEL]! += w
      const f = floorOn(span, n)
      const lean = law.leanAt(f, n)
      if (!(lean > 0)) return
      sums[LEAN]! += lean * w
      sums[UNSCALED]! += n * lean * w
      sums[BY_WALL]! += law.byNumber(f, n) * w
      if (law.followsFloor(f, n)) addHollow(span, n, w, sums)
    }),
  )
}

function addWeight(at: number, n: number, w: number, sums: Float64Array): void {
  sums[at]! += w
  sums[at + 1]! += w * n
}

/** Water whose depth the hollow makes, by each of its own numbers. */
function addHollow(span: RaySpan, n: number, w: number, sums: Float64Array): void {
  addWeight(FLOOR_MOMENTS, n, w, sums)
  const hollow = span.hollow!
  const [centre, radius] = hollowShares(hollow, n)
  const [along, across] = hollowFall(hollow, n)
  sums[HOLLOW_MOMENTS]! += w * centre
  sums[HOLLOW_MOMENTS + 1]! += w * (1 - centre)
  sums[HOLLOW_MOMENTS + 2]! += w * radius
  sums[HOLLOW_MOMENTS + 3]! -= w * along
  sums[HOLLOW_MOMENTS + 4]! -= w * across
}
