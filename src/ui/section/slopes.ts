import { formatSlope } from '../../units/index.ts'

/**
 * Usual limits of a residential floor's slope: up to 5 ft of depth not steeper than 1 : 7, beyond it not steeper than
 * 1 : 3. Source: ISPSC chapter 8 (805, 807), residential in-ground pools, from memory; a municipal code that follows
 * it (Palos Heights IL § 154.16) has 1 : 7 to 4.5 ft and 1 : 3 beyond. A hint, not a verdict: the local code rules.
 */
const BREAK_DEPTH_M = 1.5
const SHALLOW_LIMIT = 1 / 7
const DEEP_LIMIT = 1 / 3

export interface Run {
  readonly fromM: number
  readonly toM: number
  readonly fromDepthM: number
  readonly toDepthM: number
  /** Fall per run, always positive; 0 where level. */
  readonly slope: number
  /** n of the limit 1 : n that the run passes, where it does. */
  readonly usualLimit: 7 | 3 | undefined
}

/** The runs of the floor between stations, each with its slope and the usual limit that it passes. */
export function runsOf(stations: readonly (readonly [sM: number, depthM: number])[]): Run[] {
  const runs: Run[] = []
  for (let i = 1; i < stations.length; i++) {
    const a = stations[i - 1]
    const b = stations[i]
    if (!a || !b || !(b[0] > a[0])) continue
    const slope = Math.abs(b[1] - a[1]) / (b[0] - a[0])
    const shallow = Math.min(a[1], b[1])
    // A slope meant to be 1 : 7 and typed in inches is not blamed for its last decimal, nor one that reads the same as the limit.
    const passes = (limit: number) => slope > limit * 1.005 && formatSlope(slope) !== formatSlope(limit)
    const usualLimit =
      passes(DEEP_LIMIT) && shallow >= BREAK_DEPTH_M
        ? 3
        : shallow < BREAK_DEPTH_M && passes(SHALLOW_LIMIT)
          ? 7
          : undefined
    runs.push({ fromM: a[0], toM: b[0], fromDepthM: a[1], toDepthM: b[1], slope, usualLimit })
  }
  return runs
}
