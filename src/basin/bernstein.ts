/**
 * The zeros of a polynomial in Bernstein form strictly inside (0, 1), ascending; touches without a change of sign are left out.
 * Method: de Casteljau halving until the control values change sign once, then bisection. The number of changes bounds the
 * number of zeros, for the curve of the values crosses no line more often than its control polygon does.
 * Accuracy: to the last bits of t where the zero is simple.
 */
export function bernsteinZeros(values: readonly number[]): number[] {
  const zeros: number[] = []
  isolate(values, 0, 1, 0, values, zeros)
  return zeros
}

function isolate(
  part: readonly number[],
  t0: number,
  t1: number,
  depth: number,
  whole: readonly number[],
  out: number[],
): void {
  let changes = 0
  for (let i = 1; i < part.length; i++) if (part[i - 1]! > 0 !== part[i]! > 0) changes++
  if (changes === 0) return
  if (changes === 1 || depth >= 44) {
    if (part[0]! > 0 === part[part.length - 1]! > 0) return
    const t = bisect(whole, t0, t1)
    if (t > 0 && t < 1) out.push(t)
    return
  }
  const left: number[] = []
  const right = [...part]
  for (let k = part.length - 1; k >= 0; k--) {
    left.push(right[0]!)
    for (let i = 0; i < k; i++) right[i] = (right[i]! + right[i + 1]!) / 2
  }
  // What is left of the triangle's lower edge is the second half.
  const middle = (t0 + t1) / 2
  isolate(left, t0, middle, depth + 1, whole, out)
  isolate(right, middle, t1, depth + 1, whole, out)
}

function bisect(values: readonly number[], t0: number, t1: number): number {
  let lo = t0
  let hi = t1
  const rising = !(bernsteinAt(values, lo) > 0)
  for (let i = 0; i < 60 && hi - lo > 0; i++) {
    const t = (lo + hi) / 2
    if (t === lo || t === hi) break
    if (bernsteinAt(values, t) > 0 === rising) hi = t
    else lo = t
  }
  return (lo + hi) / 2
}

/** Value of a polynomial in Bernstein form at t. */
function bernsteinAt(values: readonly number[], t: number): number {
  const b = [...values]
  for (let k = b.length - 1; k > 0; k--) for (let i = 0; i < k; i++) b[i] = b[i]! + t * (b[i + 1]! - b[i]!)
  return b[0]!
}
