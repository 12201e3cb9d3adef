import { fail, ok, type Result } from './result.ts'

export interface Root {
  readonly x: number
  /** f(x) at the returned x. */
  readonly residual: number
  readonly iterations: number
}

export interface RootFailure {
  readonly reason: 'not-bracketed' | 'not-finite' | 'too-many-iterations'
  readonly x: number
  readonly residual: number
}

/**
 * The root of a continuous function inside a bracket.
 * Equation: f(x) = 0 on [lo, hi] with f(lo) f(hi) ≤ 0.
 * Valid for: any continuous f.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), ch. 4, procedure zero (from memory).
 * Accuracy: |x − root| ≤ xTolerance + 4ε|x|; the residual is returned. Where values about the root are one rounding all over,
 *   every second step halves the bracket: from the whole of it down to a rounding that takes some 110 of the steps allowed.
 */
export function bracketedRoot(
  f: (x: number) => number,
  lo: number,
  hi: number,
  xTolerance: number,
  maxIterations = 200,
): Result<Root, RootFailure> {
  let a = lo
  let b = hi
  let fa = f(a)
  let fb = f(b)
  if (!Number.isFinite(fa) || !Number.isFinite(fb)) return fail({ reason: 'not-finite', x: a, residual: fa })
  if (fa === 0) return ok({ x: a, residual: 0, iterations: 0 })
  if (fb === 0) return ok({ x: b, residual: 0, iterations: 0 })
  if (fa > 0 === fb > 0) return fail({ reason: 'not-bracketed', x: b, residual: fb })
  let c = a
  let fc = fa
  let d = b - a
  let e = d
  for (let i = 1; i <= maxIterations; i++) {
    if (fb > 0 === fc > 0) {
      c = a
      fc = fa
      d = b - a
      e = d
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b
      b = c
      c = a
      fa = fb
      fb = fc
      fc = fa
    }
    const tolerance = 2 * Number.EPSILON * Math.abs(b) + 0.5 * xTolerance
    const half = 0.5 * (c - b)
    if (Math.abs(half) <= tolerance || fb === 0) return ok({ x: b, residual: fb, iterations: i })
    if (Math.abs(e) >= tolerance && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa
      let p: number
      let q: number
      if (a === c) {
        p = 2 * half * s
        q = 1 - s
      } else {
        const r = fb / fc
        const t = fa / fc
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1))
        q = (t - 1) * (r - 1) * (s - 1)
      }
      if (p > 0) q = -q
      else p = -p
      if (2 * p < Math.min(3 * half * q - Math.abs(tolerance * q), Math.abs(e * q))) {
        e = d
        d = p / q
      } else {
        d = half
        e = d
      }
    } else {
      d = half
      e = d
    }
    a = b
    fa = fb
    b += Math.abs(d) > tolerance ? d : half > 0 ? tolerance : -tolerance
    fb = f(b)
    if (!Number.isFinite(fb)) return fail({ reason: 'not-finite', x: b, residual: fb })
  }
  return fail({ reason: 'too-many-iterations', x: b, residual: fb })
}
