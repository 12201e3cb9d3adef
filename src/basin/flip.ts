import { incircle, orient2d } from 'robust-predicates'

/**
 * Turns the triangles of one region into its constrained Delaunay triangulation in place, by flipping shared sides.
 * Source: C. L. Lawson, Software for C¹ surface interpolation (1977); the border is never flipped.
 */
export function flipToDelaunay(triangles: number[], x: ArrayLike<number>, y: ArrayLike<number>): void {
  // Corner c of triangle t faces the side from its next to the one after; `across` is the corner on the other side.
  const across = new Int32Array(triangles.length).fill(-1)
  const open = new Map<number, number>()
  let top = 0
  for (const v of triangles) top = Math.max(top, v + 1)
  for (let c = 0; c < triangles.length; c++) {
    const u = triangles[next(c)]!
    const v = triangles[next(next(c))]!
    const twin = open.get(v * top + u)
    if (twin === undefined) open.set(u * top + v, c)
    else {
      across[c] = twin
      across[twin] = c
      open.delete(v * top + u)
    }
  }
  const stack: number[] = []
  for (let c = 0; c < triangles.length; c++) if (across[c]! > c) stack.push(c)
  // Lawson's flips end; the budget only guards against a fault of this code.
  let budget = 64 * triangles.length
  while (stack.length > 0 && budget-- > 0) {
    const c = stack.pop()!
    const d = across[c]!
    if (d < 0) continue
    const p = triangles[c]!
    const u = triangles[next(c)]!
    const v = triangles[next(next(c))]!
    const q = triangles[d]!
    if (incircle(x[p]!, y[p]!, x[u]!, y[u]!, x[v]!, y[v]!, x[q]!, y[q]!) <= 0) continue
    if (
      orient2d(x[p]!, y[p]!, x[u]!, y[u]!, x[q]!, y[q]!) >= 0 ||
      orient2d(x[q]!, y[q]!, x[v]!, y[v]!, x[p]!, y[p]!) >= 0
    )
      continue
    // p u v and q v u become p u q and q v p.
    const cu = next(c)
    const cv = next(cu)
    const du = next(next(d))
    const dv = next(d)
    const besideU = across[dv]!
    const besideV = across[cu]!
    triangles[cv] = q
    triangles[du] = p
    link(across, c, besideU)
    link(across, d, besideV)
    link(across, cu, dv)
    for (const corner of [c, d, cv, du]) if (across[corner]! >= 0) stack.push(corner)
  }
}

function next(c: number): number {
  return c % 3 === 2 ? c - 2 : c + 1
}

function link(across: Int32Array, a: number, b: number): void {
  across[a] = b
  if (b >= 0) across[b] = a
}
