/**
 * Where a function that falls and then rises is least between two places.
 * Equation: min f(x) on [lo, hi].
 * Valid for: any f; where it has several least places, one of them.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), ch. 5, procedure localmin (from memory).
 * Accuracy: x to 3 times the tolerance where f tells that much (√ε of x where it is smooth), f by the square of that.
 */
export function leastBetween(
  f: (x: number) => number,
  lo: number,
  hi: number,
  xTolerance: number,
): { x: number; value: number } {
  let a = lo
  let b = hi
  let x = a + GOLDEN * (b - a)
  // The second and third best so far.
  let w = x
  let v = x
  let fx = f(x)
  let fw = fx
  let fv = fx
  let d = 0
  let e = 0
  for (let i = 0; i < MOST_STEPS; i++) {
    const middle = (a + b) / 2
    const tolerance = xTolerance + Number.EPSILON * Math.abs(x)
    if (Math.abs(x - middle) <= 2 * tolerance - (b - a) / 2) break
    // The lowest place of a parabola through three points, or a golden share of the longer side.
    let isParabola = false
    if (Math.abs(e) > tolerance) {
      const r = (x - w) * (fx - fv)
      let q = (x - v) * (fx - fw)
      let p = (x - v) * q - (x - w) * r
      q = 2 * (q - r)
      if (q > 0) p = -p
      else q = -q
      if (Math.abs(p) < Math.abs((q * e) / 2) && p > q * (a - x) && p < q * (b - x)) {
        isParabola = true
        e = d
        d = p / q
        if (x + d - a < 2 * tolerance || b - (x + d) < 2 * tolerance) d = x < middle ? tolerance : -tolerance
      }
    }
    if (!isParabola) {
      e = x < middle ? b - x : a - x
      d = GOLDEN * e
    }
    const u = x + (Math.abs(d) >= tolerance ? d : d > 0 ? tolerance : -tolerance)
    const fu = f(u)
    if (fu <= fx) {
      if (u < x) b = x
      else a = x
      v = w
      fv = fw
      w = x
      fw = fx
      x = u
      fx = fu
      continue
    }
    if (u < x) a = u
    else b = u
    if (fu <= fw || w === x) {
      v = w
      fv = fw
      w = u
      fw = fu
    } else if (fu <= fv || v === x || v === w) {
      v = u
      fv = fu
    }
  }
  return { x, value: fx }
}

/** The smaller part of a golden section. */
const GOLDEN = (3 - Math.sqrt(5)) / 2
const MOST_STEPS = 100
