import { fail, ok, type Result } from '../base/index.ts'
import { arithmeticBound, volumeAtLevel, wallBound } from './measure.ts'
import type { Partition } from './partition-types.ts'
import { problem } from './problems.ts'
import { levelsKnown } from './strip-sum.ts'
import { NEARLY, ROUNDING } from './tolerance.ts'
import { wallLaw } from './walls.ts'
import { wetCell } from './wet-cell.ts'

/** Share of a volume that is good enough where a wall is integrated, which is good to a thousand times that. */
const INTEGRATED = 1e-12
/** A bare floor's level is only where to begin: so near is near enough, and so many steps suffice. */
const BARE_ENOUGH = 1e-4
const BARE_STEPS = 12
/** Times the noise of a volume within which a step that doesn't halve what is off is noise. */
const FEW = 8

/**
 * The level [m above the datum] at which the basin holds a volume; for no volume the lowest point of the floor.
 * Method: safeguarded Newton on V(level), whose derivative is the water surface; V rises and is convex. From the second step on
 *   the cubic through the last two levels with their slopes. Under a wall that leans it begins at a level asked for
 *   before, or where the bare floor holds as much.
 * Accuracy: |V(level) − volume| within a few units in the last place of the volume, 1e-9 of it where a wall is integrated, or within that integral's bound where it is worse.
 */
export function levelForVolume(p: Partition, volumeM3: number): Result<number> {
  if (!Number.isFinite(volumeM3) || volumeM3 < 0) return fail(problem('volume-out-of-reach', ''))
  let deepest = -Infinity
  let highest = -Infinity
  let areaM2 = 0
  for (const cell of p.cells) {
    deepest = Math.max(deepest, cell.maxDepthM)
    highest = Math.max(highest, -cell.minDepthM)
    areaM2 += cell.areaM2
  }
  let lo = -deepest
  if (volumeM3 === 0) return ok(lo)
  // What is above this holds enough if no wall takes any; where one does, the first step from below shows how much higher.
  let hi = Math.max(highest, lo) + volumeM3 / areaM2
  let isHiSeen = wallLaw(p.shape.wall) === undefined
  // What sums are off by; those along a wall are integrated, so they jump by a little from one level to the next.
  const noiseM3 = 16 * ROUNDING * areaM2 * (hi - lo) + (isHiSeen ? 0 : NEARLY * volumeM3)
  const enoughM3 = (isHiSeen ? 8 * ROUNDING : INTEGRATED) * volumeM3
  let level = isHiSeen ? (lo + hi) / 2 : (knownLevel(p, volumeM3) ?? bareLevel(p, volumeM3, lo, hi))
  let rise = Math.max(volumeM3 / areaM2, deepest / 16)
  let best = level
  let bestOff = Infinity
  let before: Seen | undefined
  for (let i = 0; i < 200; i++) {
    const { volumeM3: v, waterSurfaceM2: a } = volumeAtLevel(p, level)
    const off = v - volumeM3
    if (Number.isNaN(off)) break
    if (off > 0) {
      hi = level
      isHiSeen = true
    } else lo = level
    if (Math.abs(off) < bestOff) {
      best = level
      bestOff = Math.abs(off)
    }
    if (bestOff <= enoughM3) break
    const seen: Seen = { level, off, slope: a > 0 ? 1 / a : 0 }
    const newton = a > 0 ? level - off / a : Number.NaN
    // So near one more step leaves less than can be told, and needs no looking at; nor where steps no longer help.
    const isNear =
      Math.abs(off) <= noiseM3 || (before && Math.abs(off) <= FEW * noiseM3 && 2 * Math.abs(off) > Math.abs(before.off))
    if (isNear && a > 0) {
      if (Math.abs(off) === bestOff) best = Math.max(isHiSeen ? Math.min(newton, hi) : newton, lo)
      break
    }
    const isInside = (at: number): boolean => at > lo && at < hi
    if (!isHiSeen) {
      // From below: no higher than twice as far as the time before, for where it is all but dry a surface tells little.
      hi = Math.max(hi, level + rise)
      rise *= 2
    }
    let next = before ? levelBetween(before, seen) : newton
    if (!isInside(next)) next = newton
    if (next === level) break
    if (!isInside(next)) next = isHiSeen ? (lo + hi) / 2 : hi
    if (next === lo || (isHiSeen && next === hi)) break
    before = seen
    level = next
  }
  // The bracket is down to neighbouring numbers, or nearly: take it if the volume there is what quadrature can tell.
  const tellM3 = Math.max(arithmeticBound(p, deepest + Math.abs(best)), FEW * noiseM3, wallBound(p, best))
  return bestOff <= NEARLY * volumeM3 + tellM3 ? ok(best) : fail(problem('volume-out-of-reach', ''))
}

/** A level that was looked at, how much more it holds than wanted, and how much it rises for each m³ more. */
interface Seen {
  readonly level: number
  readonly off: number
  readonly slope: number
}

/** Where the cubic of level by volume through two places, with their slopes, has the volume wanted. */
function levelBetween(a: Seen, b: Seen): number {
  const span = b.off - a.off
  if (!(a.slope > 0 && b.slope > 0) || span === 0) return Number.NaN
  const t = -a.off / span
  const u = 1 - t
  return u * u * (1 + 2 * t) * a.level + t * t * (3 - 2 * t) * b.level + t * u * span * (u * a.slope - t * b.slope)
}

/** Of the levels that were asked for before, the one that holds nearest to a volume; nothing where none is known. */
function knownLevel(p: Partition, volumeM3: number): number | undefined {
  let best: number | undefined
  let least = Infinity
  for (const level of levelsKnown(p)) {
    const off = Math.abs(volumeAtLevel(p, level).volumeM3 - volumeM3)
    if (off < least) {
      best = level
      least = off
    }
  }
  return best
}

/** The level at which the bare floor would hold a volume, near enough to go on from. */
function bareLevel(p: Partition, volumeM3: number, from: number, to: number): number {
  let lo = from
  let hi = to
  let level = (lo + hi) / 2
  for (let i = 0; i < BARE_STEPS; i++) {
    let off = -volumeM3
    let a = 0
    for (const cell of p.cells) {
      const wet = wetCell(cell, p.edges, level, p.extentM)
      off += wet.volumeM3
      a += wet.areaM2
    }
    if (off > 0) hi = level
    else lo = level
    if (Math.abs(off) <= BARE_ENOUGH * volumeM3) break
    const next = level - off / a
    level = next > lo && next < hi ? next : (lo + hi) / 2
  }
  return level
}
