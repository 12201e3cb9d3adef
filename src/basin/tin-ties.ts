import { incircle } from 'robust-predicates'
import { last, next } from './tin.ts'
import { depthOfShares, type WetTin } from './tin-types.ts'
import { NEARLY } from './tolerance.ts'

/**
 * Where four points lie on one circle within the grain, either diagonal is Delaunay, and rounding would choose. Then the
 * diagonal stays that joins the two depths nearer to each other, as contours run; of two alike the shallower one, so that
 * the volume is rather too small; where they join the same two depths, the one with the node that was stated first. So a
 * plan that is moved or turned keeps its floor.
 */
export function settleTies({ tin, isWet, shares, order }: WetTin, depths: readonly number[], grainM: number): void {
  const { x, y, corners, across, fixed } = tin
  const z = shares.map((of) => depthOfShares(of, depths))
  const far = (a: number, b: number): number => Math.hypot(x[a]! - x[b]!, y[a]! - y[b]!)
  const pending: number[] = []
  for (let e = 0; e < corners.length; e++)
    if (across[e]! > e && fixed[e] === 0 && isWet[(e / 3) | 0] === 1) pending.push(e)
  // Each flip lowers the sum of the diagonals' falls, of their depths or of their first nodes; the budget only guards against a fault.
  for (let budget = 64 * corners.length; pending.length > 0 && budget > 0; budget--) {
    const e = pending.pop()!
    const twin = across[e]!
    if (fixed[e] !== 0) continue
    const [u, v, p, q] = [corners[e]!, corners[next(e)]!, corners[last(e)]!, corners[last(twin)]!]
    const fall = Math.abs(z[u]! - z[v]!)
    const other = Math.abs(z[p]! - z[q]!)
    const scale = NEARLY * (fall + other + Math.abs(z[u]!) + Math.abs(z[p]!))
    if (other > fall + scale) continue
    if (other > fall - scale) {
      const deeper = z[p]! + z[q]! - z[u]! - z[v]!
      if (deeper > scale) continue
      if (deeper > -scale && Math.min(order[p]!, order[q]!) > Math.min(order[u]!, order[v]!)) continue
    }
    // The determinant is twice the triangle's area times R² − d²; the triangle's sides multiply to four times area and R.
    const off = incircle(x[u]!, y[u]!, x[v]!, y[v]!, x[p]!, y[p]!, x[q]!, y[q]!)
    if (Math.abs(off) > 4 * grainM * far(u, v) * far(v, p) * far(p, u)) continue
    if (!(tin.left(q, v, x[p]!, y[p]!) > 0 && tin.left(p, u, x[q]!, y[q]!) > 0)) continue
    tin.flip(e)
    pending.push(e, next(e), twin, next(twin))
  }
}
