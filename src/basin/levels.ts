import { fail, ok, type Result } from '../base/index.ts'
import { arithmeticBound, volumeAtLevel } from './measure.ts'
import type { Partition } from './partition-types.ts'
import { problem } from './problems.ts'
import { NEARLY, ROUNDING } from './tolerance.ts'
import { wallLaw } from './walls.ts'

/** Share of a volume that is good enough where a wall is integrated, which is good to a thousand times that. */
const INTEGRATED = 1e-12

/**
 * The level [m above the datum] at which the basin holds a volume; for no volume the lowest point of the floor.
 * Method: safeguarded Newton on V(level), whose derivative is the water surface; V rises and is convex.
 * Accuracy: |V(level) − volume| within a few units in the last place of the volume, 1e-9 of it where a cove is integrated.
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
  let hi = Math.max(highest, lo) + volumeM3 / areaM2
  // A cove keeps water out that the bare floor would have held: raise the bracket until it holds enough.
  for (let i = 0; i < 64 && volumeAtLevel(p, hi).volumeM3 < volumeM3; i++) hi += (hi - lo) / 2
  // What sums are off by; those along a wall are integrated, so they jump by a little from one level to the next.
  const noiseM3 = 16 * ROUNDING * areaM2 * (hi - lo) + (wallLaw(p.shape.wall) ? NEARLY * volumeM3 : 0)
  const enoughM3 = (wallLaw(p.shape.wall) ? INTEGRATED : 8 * ROUNDING) * volumeM3
  let level = (lo + hi) / 2
  let best = level
  let bestOff = Infinity
  for (let i = 0; i < 200; i++) {
    const { volumeM3: v, waterSurfaceM2: a } = volumeAtLevel(p, level)
    const off = v - volumeM3
    if (off > 0) hi = level
    else lo = level
    if (Math.abs(off) < bestOff) {
      best = level
      bestOff = Math.abs(off)
    }
    if (bestOff <= enoughM3) break
    if (Math.abs(off) <= noiseM3 && a > 0) {
      // So near one more step leaves less than can be told, and needs no looking at.
      best = Math.min(Math.max(level - off / a, lo), hi)
      break
    }
    let next = a > 0 ? level - off / a : (lo + hi) / 2
    if (next === level) break
    if (!(next > lo && next < hi)) next = (lo + hi) / 2
    if (next === lo || next === hi) break
    level = next
  }
  // The bracket is down to neighbouring numbers, or nearly: take it if the volume there is what quadrature can tell.
  return bestOff <= NEARLY * volumeM3 + arithmeticBound(p, deepest + Math.abs(best))
    ? ok(best)
    : fail(problem('volume-out-of-reach', ''))
}
