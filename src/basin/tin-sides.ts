import { last, next, type Tin } from './tin.ts'

/** The ends of a side. */
export type Side = readonly [from: number, to: number]

/**
 * Makes the way from one point to another a side that must stay, marked; points that lie on it divide it. Where another
 * such side is in the way that is given back, or the way itself where no flips clear it.
 */
export function fixSide(tin: Tin, from: number, to: number, mark: number): Side | undefined {
  let a = from
  while (a !== to) {
    const reached = fixTo(tin, a, to, mark)
    if (typeof reached !== 'number') return reached
    a = reached
  }
  return undefined
}

/** Fixes the way as far as the next point on it, which is given back, or the side that bars it. */
function fixTo(tin: Tin, a: number, b: number, mark: number): number | Side {
  const { x, y, corners, across, fixed } = tin
  const bx = x[b]!
  const by = y[b]!
  let crossed = -1
  for (const e of tin.around(a)) {
    const u = corners[next(e)]!
    if (u === b || (tin.left(a, u, bx, by) === 0 && isAhead(tin, a, u, bx, by))) {
      markSide(tin, e, mark)
      return u
    }
    if (tin.left(a, u, bx, by) > 0 && tin.left(a, corners[last(e)]!, bx, by) < 0) crossed = next(e)
  }
  if (crossed < 0) return [a, b]
  // Sides in the way, as pairs of points: flips renumber half-edges.
  const inTheWay: [number, number][] = []
  let goal = b
  for (let e = crossed; ; ) {
    if (fixed[e] !== 0) return [corners[e]!, corners[next(e)]!]
    inTheWay.push([corners[e]!, corners[next(e)]!])
    const twin = across[e]!
    const w = corners[last(twin)]!
    if (w === b) break
    const side = tin.left(a, b, x[w]!, y[w]!)
    if (side === 0) {
      goal = w
      break
    }
    // The twin runs back along e: its next side leaves e's start, its last one e's end.
    e = side > 0 ? next(twin) : last(twin)
  }
  const fresh: [number, number][] = []
  // Each side gets its turn again after the others: one of them can always be flipped.
  for (let budget = 16 * (inTheWay.length + 4) ** 2; inTheWay.length > 0; budget--) {
    if (budget === 0) return [a, b]
    const [u, v] = inTheWay.shift()!
    const e = tin.between(u, v)
    const p = corners[last(e)]!
    const q = corners[last(across[e]!)]!
    if (!(tin.left(q, v, x[p]!, y[p]!) > 0 && tin.left(p, u, x[q]!, y[q]!) > 0)) {
      inTheWay.push([u, v])
      continue
    }
    tin.flip(e)
    const crosses =
      p !== a &&
      p !== goal &&
      q !== a &&
      q !== goal &&
      tin.left(a, goal, x[p]!, y[p]!) > 0 !== tin.left(a, goal, x[q]!, y[q]!) > 0
    if (crosses) inTheWay.push([p, q])
    else fresh.push([p, q])
  }
  const side = tin.between(a, goal)
  if (side < 0) return [a, b]
  markSide(tin, side, mark)
  tin.settle(fresh.map(([p, q]) => tin.between(p, q)).filter((e) => e >= 0))
  return goal
}

function markSide(tin: Tin, e: number, mark: number): void {
  tin.fixed[e] = mark
  const twin = tin.across[e]!
  if (twin >= 0) tin.fixed[twin] = mark
}

function isAhead(tin: Tin, a: number, u: number, bx: number, by: number): boolean {
  const { x, y } = tin
  return (x[u]! - x[a]!) * (bx - x[a]!) + (y[u]! - y[a]!) * (by - y[a]!) > 0
}
