import { coveLean, coveRise, riseByRadius } from './cove-profile.ts'
import { deepestOnHollow } from './hollow-breaks.ts'
import { addHollowSpan } from './hollow-span.ts'
import { problem } from './problems.ts'
import { footSlack } from './tolerance.ts'
import type { CoveWall } from './types.ts'
import { addCoveSpan } from './wall-cove-sum.ts'
import { DATUM, floorOn, type RaySpan, type WallKind, type WallLaw } from './wall-kind.ts'

export const COVE: WallKind<CoveWall> = {
  id: 'cove',
  check: ({ radiusM }) => {
    if (!Number.isFinite(radiusM)) return problem('not-a-number', 'wall.radiusM')
    return radiusM > 0 ? undefined : problem('radius-not-positive', 'wall.radiusM')
  },
  law: ({ radiusM }) => lawOf(radiusM),
}

function lawOf(r: number): WallLaw {
  const made: WallLaw = {
    part: 'floor',
    size: { path: 'wall.radiusM', name: 'radius', unit: ' m', value: r },
    drySize: (floorM, n, levelM) => dryRadius(floorM + levelM, n),
    widthM: () => r,
    allowedM: (floorM, n) => Math.max(floorM - coveRise(n, r), Math.min(floorM, 0)),
    leanAt: (floorM, n) => (floorM - coveRise(n, r) > 0 ? coveLean(n, r) : 0),
    followsFloor: (floorM, n) => floorM <= 0 || floorM - coveRise(n, r) > 0,
    isSteepAtShore: true,
    meetsDatumAtShore: false,
    footOf: (floor, floorM) => (floorM > r ? { ...floor, c: floor.c - r } : floorM > 0 ? DATUM : floor),
    footBreaks: (floor) => [{ ...floor, c: floor.c - r }, floor],
    footSlackM: (floorM) => (floorM >= r - footSlack(r) ? footSlack(r) : -Number.MIN_VALUE),
    byNumber: (floorM, n) => (floorM - coveRise(n, r) > 0 ? -riseByRadius(n, r) : 0),
    addSpan: (ray, span, levelM, sums) =>
      span.hollow ? addHollowSpan(made, ray, span, levelM, sums) : addCoveSpan(r, ray, span, levelM, sums),
    eventsAt: (span, n, levelM, out, from) => {
      const f = floorOn(span, n)
      const lifted = f - coveRise(n, r)
      out[from] = f
      out[from + 1] = f + levelM
      out[from + 2] = lifted
      out[from + 3] = lifted + levelM
      if (!span.isFeature) return 4
      const k = span.k0 + span.k1 * n
      out[from + 4] = k
      out[from + 5] = k + levelM
      out[from + 6] = lifted - k
      return 7
    },
    deepestAt: (span) => (span.hollow ? deepestOnHollow(made, span) : deepestAt(r, span)),
  }
  return made
}

/** The root above n of rise = s, s being the wet depth without the cove: (r − s)² = 2 r n − n². */
function dryRadius(s: number, n: number): number {
  return s + n + Math.sqrt(2 * s * n)
}

/** Where min(k, f − rise) is greatest: both are concave, so where they meet, or one of them has its top. */
function deepestAt(r: number, span: RaySpan): number {
  const { from, to, f0, f1, k0, k1, isFeature } = span
  // Where the cove's own slope makes up for the floor's: u/√(r² − u²) = −f′.
  const top = f1 < 0 ? r + (r * f1) / Math.sqrt(1 + f1 * f1) : to
  const inside = Math.min(Math.max(top, from), to)
  if (!isFeature) return inside
  const lifted = (n: number): number => f0 + f1 * n - coveRise(n, r)
  const depth = (n: number): number => Math.min(k0 + k1 * n, lifted(n))
  const tops = [from, inside, to]
  let best = tops.reduce((a, b) => (depth(b) > depth(a) ? b : a))
  // Between the tops the two may cross: halve on their difference.
  for (let i = 1; i < tops.length; i++) {
    let lo = tops[i - 1]!
    let hi = tops[i]!
    const over = lifted(lo) > k0 + k1 * lo
    if (over === lifted(hi) > k0 + k1 * hi) continue
    for (let j = 0; j < 48; j++) {
      const m = (lo + hi) / 2
      if (lifted(m) > k0 + k1 * m === over) lo = m
      else hi = m
    }
    if (depth(lo) > depth(best)) best = lo
  }
  return best
}
