import { deepestOnHollow } from './hollow-breaks.ts'
import { addHollowSpan } from './hollow-span.ts'
import { mark } from './pattern-integral.ts'
import { problem } from './problems.ts'
import { MIN_LENGTH_M } from './tolerance.ts'
import type { BatteredWall } from './types.ts'
import {
  AREA,
  AREA_X,
  AREA_Y,
  DATUM,
  FEATURE,
  FLOOR,
  type RayFrame,
  type RaySpan,
  rulingOn,
  SHORE,
  VOLUME,
  WALL,
  type WallKind,
  type WallLaw,
} from './wall-kind.ts'

export const BATTERED: WallKind<BatteredWall> = {
  id: 'battered',
  check: ({ run }) => {
    if (!Number.isFinite(run)) return problem('not-a-number', 'wall.run')
    return run >= 0 ? undefined : problem('run-negative', 'wall.run')
  },
  // A wall that leans by less than can be told is upright.
  law: ({ run }) => (run > MIN_LENGTH_M ? lawOf(run) : undefined),
}

function lawOf(run: number): WallLaw {
  const made: WallLaw = {
    part: 'wall',
    size: { path: 'wall.run', name: 'run', unit: '', value: run },
    drySize: (_, n, levelM) => (levelM < 0 ? n / -levelM : Infinity),
    widthM: (deepestM) => run * Math.max(0, deepestM),
    allowedM: (floorM, n) => Math.min(floorM, n / run),
    leanAt: (floorM, n) => (n / run < floorM ? 1 / run : 0),
    followsFloor: (floorM, n) => n / run >= floorM,
    byNumber: (floorM, n) => (n / run < floorM ? -n / (run * run) : 0),
    isSteepAtShore: false,
    meetsDatumAtShore: true,
    footOf: (floor, floorM) => (floorM > 0 ? DATUM : floor),
    footBreaks: (floor) => [floor],
    footSlackM: (floorM) => (floorM > 0 ? 0 : -Number.MIN_VALUE),
    addSpan: (ray, span, levelM, sums) =>
      span.hollow && !span.isFeature
        ? addHollowSpan(made, ray, span, levelM, sums)
        : addSpan(run, ray, span, levelM, sums),
    eventsAt: (span, n, levelM, out, from) => {
      const k = rulingOn(span, n)
      out[from] = k - n / run
      out[from + 1] = k + levelM
      out[from + 2] = n / run + levelM
      // Whether wall or floor keeps the water from the shore.
      out[from + 3] = rulingOn(span, Math.min(Math.max(-levelM * run, span.from), span.to)) + levelM
      return 4
    },
    deepestAt: (span) => {
      if (span.hollow && !span.isFeature) return deepestOnHollow(made, span)
      const { from, to, k0, k1 } = span
      // The batter falls away from the shore; what rules may rise again.
      if (k1 >= 0) return to
      const meet = k0 / (1 / run - k1)
      return Math.min(Math.max(meet, from), to)
    },
  }
  return made
}

const stops = new Float64Array(5)

/**
 * What a batter changes along one stretch of a ray.
 * Equation: depth before k(n), after min(k, n/run), both linear, each times h0 + h1 n; its surface is √(1 + 1/run²) of plan.
 * Accuracy: rounding (closed form between exact break points).
 */
function addSpan(run: number, ray: RayFrame, span: RaySpan, levelM: number, sums: Float64Array | undefined): number {
  const { from, to, k0, k1 } = span
  // Where it meets what rules; where that is awash; where it is awash itself.
  let count = 0
  stops[count++] = from
  const meet = k0 / (1 / run - k1)
  if (meet > from && meet < to) stops[count++] = meet
  const ashore = k1 === 0 ? from : -(k0 + levelM) / k1
  if (ashore > from && ashore < to) stops[count++] = ashore
  const foot = -levelM * run
  if (foot > from && foot < to) stops[count++] = foot
  stops[count++] = to
  for (let i = 2; i < count - 1; i++)
    for (let k = i; k > 1 && stops[k - 1]! > stops[k]!; k--) {
      const swap = stops[k]!
      stops[k] = stops[k - 1]!
      stops[k - 1] = swap
    }
  let name = 0
  let code = -1
  for (let i = 1; i < count; i++) {
    const a = stops[i - 1]!
    const b = stops[i]!
    if (!(b > a)) continue
    const middle = (a + b) / 2
    const k = k0 + k1 * middle
    const rules = k > middle / run
    const wetBefore = k + levelM > 0
    const wetAfter = rules && middle / run + levelM > 0
    // Stretches are told apart only by what is summed over them.
    const next = rules && wetBefore ? (wetAfter ? 2 : 1) : 0
    if (next !== code) name = mark(name, next)
    code = next
    if (!sums || !rules || !wetBefore) continue
    const d1 = b - a
    const d2 = (b * b - a * a) / 2
    const d3 = (b * b * b - a * a * a) / 3
    const area = ray.h0 * d1 + ray.h1 * d2
    const lever = ray.h0 * d2 + ray.h1 * d3
    if (wetAfter) {
      sums[VOLUME]! += (1 / run - k1) * lever - k0 * area
      sums[WALL]! += area * Math.sqrt(1 + 1 / (run * run))
    } else {
      sums[VOLUME]! -= (k0 + levelM) * area + k1 * lever
      sums[AREA]! -= area
      sums[AREA_X]! -= ray.x * area + ray.nx * lever
      sums[AREA_Y]! -= ray.y * area + ray.ny * lever
    }
    sums[span.isFeature ? FEATURE : FLOOR]! -= area * Math.sqrt(1 + k1 * k1 + span.kAcross * span.kAcross)
  }
  // The shore on the batter: water begins here wherever what rules lies deeper.
  if (sums && levelM < 0 && foot >= from && foot < to && k0 + k1 * foot + levelM > 0)
    sums[SHORE]! += ray.h0 + ray.h1 * foot
  return name
}
