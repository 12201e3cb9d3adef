import { evaluate, newJet } from './curve.ts'
import type { PieceCorner } from './floor-kind.ts'
import type { Edge, Partition } from './partition-types.ts'
import { DRAWN_TURN, HAIR, SMOOTH_BREAK } from './tolerance.ts'

const jet = newJet()

/**
 * Whether the surface has an edge worth ink where two of its cells meet without a step. A profile breaks where it says so,
 * and what features leave or meet is always drawn. A triangulated floor bends at every side of its triangles, most of
 * which only stand for a curve: of those between depth lines none is drawn but the lines themselves, of those between
 * soundings the ones that join soundings, or one of them and a straight wall's corner, where the floor turns visibly.
 */
export function isInkedBreak(p: Partition, edge: Edge): boolean {
  const a = p.cells[edge.left]!
  const b = p.cells[edge.right]!
  // Within a hollow all is one surface; at its rim the floor turns.
  if (a.law || b.law) return a.law === undefined || b.law === undefined
  const { plane: u } = a
  const { plane: v } = b
  if (Math.hypot(u.dx - v.dx, u.dy - v.dy) <= SMOOTH_BREAK) return false
  if (a.patch >= 0 || b.patch >= 0) return true
  const { floor } = p.shape
  if (floor.kind === 'contours') return floor.rings.some(({ depthM }) => liesAt(p, edge, depthM))
  if (floor.kind !== 'soundings') return true
  const cosine = (1 + u.dx * v.dx + u.dy * v.dy) / Math.hypot(1, u.dx, u.dy) / Math.hypot(1, v.dx, v.dy)
  return cosine < Math.cos(DRAWN_TURN) && !isFan(p, edge)
}

/** Whether all of a straight edge has one depth. */
function liesAt(p: Partition, { curve, t0, t1, left }: Edge, depthM: number): boolean {
  const { atOrigin, dx, dy } = p.cells[left]!.plane
  return [t0, t1].every((t) => {
    evaluate(curve, t, jet)
    return Math.abs(atOrigin + dx * jet.x + dy * jet.y - depthM) <= HAIR * p.extentM
  })
}

/** Whether a side of the triangles between soundings ends on a curved shore, where there are as many as it has chords. */
function isFan(p: Partition, { curve, t0, t1, left, right }: Edge): boolean {
  const corners = p.floor.pieces[p.cells[left]!.strip]?.corners ?? p.floor.pieces[p.cells[right]!.strip]?.corners ?? []
  evaluate(curve, t0, jet)
  const { x, y } = jet
  evaluate(curve, t1, jet)
  const length = Math.hypot(jet.x - x, jet.y - y)
  const aside = (corner: PieceCorner): number =>
    Math.abs((corner.x - x) * (jet.y - y) - (corner.y - y) * (jet.x - x)) / length
  const ends = [...corners].sort((c, d) => aside(c) - aside(d)).slice(0, 2)
  return ends.some(({ on }) => on !== undefined && on.curve.kind !== 'line')
}
