import { ROUNDING } from './tolerance.ts'

/** Gauss–Legendre points on [0, 1] with their weights: exact for polynomials up to degree 2n − 1. */
export interface GaussRule {
  readonly at: Float64Array
  readonly weight: Float64Array
}

/**
 * A Gauss–Legendre rule on [0, 1].
 * Method: Newton on the Legendre polynomial from cos(π (i − ¼)/(n + ½)).
 * Source: Abramowitz and Stegun 25.4.29 and 22.16.6 (from memory).
 * Accuracy: last bits.
 */
export function gaussRule(n: number): GaussRule {
  const at = new Float64Array(n)
  const weight = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5))
    let slope = 1
    for (let k = 0; k < 20; k++) {
      let p0 = 1
      let p1 = x
      for (let j = 2; j <= n; j++) [p0, p1] = [p1, ((2 * j - 1) * x * p1 - (j - 1) * p0) / j]
      slope = (n * (x * p1 - p0)) / (x * x - 1)
      const step = p1 / slope
      x -= step
      if (Math.abs(step) < 1e-16) break
    }
    at[n - 1 - i] = (1 + x) / 2
    weight[n - 1 - i] = 1 / ((1 - x * x) * slope * slope)
  }
  return { at, weight }
}

/** Lines carry polynomials up to degree 5 here, cubics up to degree 9; an arc of a quarter turn is done to the last bits. */
export const GAUSS_LINE = gaussRule(3)
export const GAUSS_CUBIC = gaussRule(6)
export const GAUSS_ARC = gaussRule(12)
/** For integrands that are only smooth. */
export const GAUSS_FINE = gaussRule(16)

/** Rules for one integral at most: a function that rounding makes rough would be halved without end. */
const MOST_RULES = 4000
let rulesLeft = 0
/** ∫|f| of the last rule, by which its rounding is judged. */
let magnitude = 0

/**
 * ∫ f dt over [t0, t1] by a 16-point rule, halved until two halves agree with their whole, or differ by rounding only.
 * Accuracy: the returned estimate is within about `tolerance` for f that is smooth but for some points.
 */
export function integrate(f: (t: number) => number, t0: number, t1: number, tolerance: number, halvings = 40): number {
  rulesLeft = MOST_RULES
  return refine(f, t0, t1, fine(f, t0, t1), tolerance, halvings)
}

function fine(f: (t: number) => number, t0: number, t1: number): number {
  let sum = 0
  let size = 0
  const h = t1 - t0
  for (let i = 0; i < 16; i++) {
    const part = GAUSS_FINE.weight[i]! * f(t0 + h * GAUSS_FINE.at[i]!)
    sum += part
    size += Math.abs(part)
  }
  rulesLeft--
  magnitude = size * Math.abs(h)
  return sum * h
}

function refine(
  f: (t: number) => number,
  t0: number,
  t1: number,
  whole: number,
  tolerance: number,
  depth: number,
): number {
  const middle = (t0 + t1) / 2
  const left = fine(f, t0, middle)
  let size = magnitude
  const right = fine(f, middle, t1)
  size += magnitude
  const off = Math.abs(left + right - whole)
  if (off <= tolerance || off <= 16 * ROUNDING * size || depth === 0 || rulesLeft <= 0) return left + right
  return refine(f, t0, middle, left, tolerance / 2, depth - 1) + refine(f, middle, t1, right, tolerance / 2, depth - 1)
}
