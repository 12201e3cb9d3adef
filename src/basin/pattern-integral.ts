import { gaussRule } from './gauss.ts'
import { NEARLY } from './tolerance.ts'

const GAUSS = gaussRule(16)
/** A cut is found to 2⁻³⁴ of a sample's step: at most cuts the functions are continuous, and the slip counts by its square. */
const HALVINGS = 34
/**
 * More changes than this within one sample's step are rounding that makes two equal depths take turns: the functions don't
 * jump there, so the search may stop.
 */
const CUTS = 6
const AGREE = 1e-8

/**
 * Several integrands at once: writes their values at t into `out` and numbers the pattern that they follow there. Without
 * `out` only the pattern is asked for.
 */
export type Patterned = (t: number, out: Float64Array | undefined) => number

/** Goes on with a pattern's number by one more mark (a multiplicative hash of 32 bits). */
export function mark(pattern: number, next: number): number {
  return (Math.imul(pattern ^ (next + 0x9e37), 0x01000193) + next) | 0
}

/**
 * ∫ of several functions over [t0, t1], added to `sums`; returns the estimate of the first one's error.
 * Method: t is cut where the pattern changes (sampled, then halved); between cuts the functions are
 *   smooth but for square roots at the cuts, which t = a + (b − a)(3τ² − 2τ³) takes away; 16-point Gauss, halved until
 *   halves and whole agree to 1e-8 of `scales`; the halves that are kept are then good to about the square of that.
 */
export function integratePattern(
  f: Patterned,
  t0: number,
  t1: number,
  samples: number,
  scales: readonly number[],
  sums: Float64Array,
): number {
  const patternAt = (t: number): number => f(t, undefined)
  const cuts = [t0, ...changes(patternAt, t0, t1, samples), t1]
  let error = 0
  for (let i = 1; i < cuts.length; i++) error += smooth(f, cuts[i - 1]!, cuts[i]!, scales, sums)
  return error
}

/** Where the number of a pattern changes in (t0, t1): sampled, then halved. */
export function changes(patternAt: (t: number) => number, t0: number, t1: number, samples: number): number[] {
  const found: number[] = []
  const hair = (t1 - t0) * NEARLY
  let budget = 0
  const search = (a: number, pa: number, b: number, pb: number, depth: number): void => {
    if (pa === pb || budget <= 0) return
    const m = (a + b) / 2
    if (depth === 0 || m === a || m === b) {
      found.push(m)
      budget--
      return
    }
    const pm = patternAt(m)
    search(a, pa, m, pm, depth - 1)
    search(m, pm, b, pb, depth - 1)
  }
  let a = t0 + hair
  let pa = patternAt(a)
  for (let i = 1; i <= samples; i++) {
    const b = i === samples ? t1 - hair : t0 + ((t1 - t0) * i) / samples
    const pb = patternAt(b)
    budget = CUTS
    search(a, pa, b, pb, HALVINGS)
    a = b
    pa = pb
  }
  return found.filter((t, i) => i === 0 || t - found[i - 1]! > 1e-13 * (t1 - t0))
}

function smooth(f: Patterned, a: number, b: number, scales: readonly number[], sums: Float64Array): number {
  const count = sums.length
  const point = new Float64Array(count)
  const part = (u: number, v: number): Float64Array => {
    const out = new Float64Array(count)
    for (let i = 0; i < GAUSS.at.length; i++) {
      const tau = u + (v - u) * GAUSS.at[i]!
      f(a + (b - a) * tau * tau * (3 - 2 * tau), point.fill(0))
      const weight = GAUSS.weight[i]! * (v - u) * (b - a) * 6 * tau * (1 - tau)
      for (let k = 0; k < count; k++) out[k]! += weight * point[k]!
    }
    return out
  }
  let error = 0
  const refine = (u: number, v: number, whole: Float64Array, depth: number): void => {
    const m = (u + v) / 2
    const left = part(u, m)
    const right = part(m, v)
    let off = 0
    for (let k = 0; k < count; k++) {
      const scale = Math.max(scales[k]!, Math.abs(whole[k]!))
      off = Math.max(off, Math.abs(left[k]! + right[k]! - whole[k]!) / scale)
    }
    if (off <= AGREE || depth === 0) {
      for (let k = 0; k < count; k++) sums[k]! += left[k]! + right[k]!
      error += Math.abs(left[0]! + right[0]! - whole[0]!)
      return
    }
    refine(u, m, left, depth - 1)
    refine(m, v, right, depth - 1)
  }
  refine(0, 1, part(0, 1), 10)
  return error
}
