/** Value at t of a cubic in Bernstein form. */
export function cubicAt(b0: number, b1: number, b2: number, b3: number, t: number): number {
  const u = 1 - t
  return u * u * u * b0 + 3 * u * u * t * b1 + 3 * u * t * t * b2 + t * t * t * b3
}

/**
 * The roots of a cubic in Bernstein form on (0, 1), ascending, without those at the ends.
 * Method: the intervals between the roots of the derivative are monotone, each bracketed and bisected by safeguarded Newton.
 * Accuracy: to the last bits of t where the root is simple.
 */
export function cubicRoots(b0: number, b1: number, b2: number, b3: number): number[] {
  const roots: number[] = []
  if ((b0 > 0 && b1 > 0 && b2 > 0 && b3 > 0) || (b0 < 0 && b1 < 0 && b2 < 0 && b3 < 0)) return roots
  const turns = quadraticRoots(b1 - b0, b2 - b1, b3 - b2)
  let from = 0
  for (let i = 0; i <= turns.length; i++) {
    const to = i < turns.length ? turns[i]! : 1
    const root = monotoneRoot(b0, b1, b2, b3, from, to)
    if (root > 0 && root < 1 && (roots.length === 0 || root > roots[roots.length - 1]!)) roots.push(root)
    from = to
  }
  return roots
}

/** The roots of a quadratic in Bernstein form strictly inside (0, 1), ascending. */
export function quadraticRoots(b0: number, b1: number, b2: number): number[] {
  const a = b0 - 2 * b1 + b2
  const half = b1 - b0
  if (a === 0) {
    if (half === 0) return []
    const t = -b0 / (2 * half)
    return t > 0 && t < 1 ? [t] : []
  }
  const disc = half * half - a * b0
  if (disc < 0) return []
  const q = -(half + (half < 0 ? -1 : 1) * Math.sqrt(disc))
  const roots: number[] = []
  if (q === 0) return roots
  const lesser = Math.min(q / a, b0 / q)
  const greater = Math.max(q / a, b0 / q)
  if (lesser > 0 && lesser < 1) roots.push(lesser)
  if (greater > 0 && greater < 1 && greater !== lesser) roots.push(greater)
  return roots
}

function monotoneRoot(b0: number, b1: number, b2: number, b3: number, from: number, to: number): number {
  const value = (t: number): number => {
    const u = 1 - t
    return u * u * (u * b0 + 3 * t * b1) + t * t * (3 * u * b2 + t * b3)
  }
  let lo = from
  let hi = to
  const f0 = value(lo)
  const f1 = value(hi)
  if (f0 === 0) return lo
  if (f1 === 0) return hi
  if (f0 > 0 === f1 > 0) return -1
  let t = lo + ((hi - lo) * f0) / (f0 - f1)
  for (let i = 0; i < 80 && hi - lo > 0; i++) {
    const f = value(t)
    if (f === 0) return t
    if (f > 0 === f0 > 0) lo = t
    else hi = t
    const u = 1 - t
    const slope = 3 * (u * u * (b1 - b0) + 2 * u * t * (b2 - b1) + t * t * (b3 - b2))
    let next = t - f / slope
    if (!(next > lo && next < hi)) next = 0.5 * (lo + hi)
    if (next === t || next === lo || next === hi) return next
    t = next
  }
  return t
}
