import { evaluate, newJet } from './curve.ts'
import { type Linear, zerosAlong } from './curve-linear.ts'
import { lengthMoments } from './edge-integrals.ts'
import type { Edge, Partition } from './partition-types.ts'
import { integratePattern, mark } from './pattern-integral.ts'
import { type Shore, shoresOf } from './shores.ts'
import { depthIn } from './surface-depth.ts'
import { footSlack } from './tolerance.ts'
import type { Plane } from './types.ts'
import type { WetEdge } from './wet-edge.ts'

const jet = newJet()

/**
 * Wall over a cove [m²] and shore on it [m]: the wall ends at min(feature, max(f − r, min(f, 0))).
 * Accuracy: rounding; on cubics adaptive quadrature.
 */
export function wallOverCove(p: Partition, shore: Shore, r: number, levelM: number): WetEdge {
  const cell = p.cells[shore.cell]!
  const f = linear(p.floor.pieces[cell.strip]!.plane)
  const k = cell.part === 'feature' ? linear(cell.plane) : undefined
  const plus = (a: Linear, c: number): Linear => ({ c: a.c + c, gx: a.gx, gy: a.gy })
  const lines = [plus(f, -r), f, plus(f, levelM - r), plus(f, levelM)]
  if (k) lines.push(k, plus(k, levelM), { c: k.c - f.c + r, gx: k.gx - f.gx, gy: k.gy - f.gy }, minus(k, f))
  const breaks = lines.flatMap((line) => zerosAlong(shore.curve, shore.t0, shore.t1, line)).sort((a, b) => a - b)
  const out = { faceM2: 0, shoreM: 0 }
  for (let i = 0; i <= breaks.length; i++) {
    const ta = i === 0 ? shore.t0 : breaks[i - 1]!
    const tb = i === breaks.length ? shore.t1 : breaks[i]!
    if (!(tb > ta)) continue
    evaluate(shore.curve, (ta + tb) / 2, jet)
    const at = (line: Linear): number => line.c + line.gx * jet.x + line.gy * jet.y
    const floor = at(f)
    let foot: Linear = floor > r ? plus(f, -r) : floor > 0 ? { c: 0, gx: 0, gy: 0 } : f
    if (k && at(k) < at(foot)) foot = k
    const wet = plus(foot, levelM)
    // Water that just reaches the foot has its shore there; the cove's own shore begins where that can be told from it.
    const isFoot = floor > r && foot !== k
    if (!(at(wet) > (isFoot ? -footSlack(r) : 0))) continue
    const piece = breaks.length === 0 ? p.edges[shore.edge]! : lengthMoments(shore.curve, ta, tb)
    if (at(wet) > 0) out.faceM2 += wet.c * piece.length + wet.gx * piece.lengthX + wet.gy * piece.lengthY
    out.shoreM += piece.length
  }
  return out
}

function linear(plane: Plane): Linear {
  return { c: plane.atOrigin, gx: plane.dx, gy: plane.dy }
}

function minus(a: Linear, b: Linear): Linear {
  return { c: a.c - b.c, gx: a.gx - b.gx, gy: a.gy - b.gy }
}

/** True where an edge between cells with a step comes within r of a shore, so that the cove changes its face. */
export function isStepInCove(p: Partition, edge: Edge, r: number): boolean {
  if (edge.left < 0 || edge.right < 0) return false
  const left = p.cells[edge.left]!
  const right = p.cells[edge.right]!
  if (left.part === 'floor' && right.part === 'floor') return false
  const minX = Math.min(p.nodeX[edge.from]!, p.nodeX[edge.to]!) - r
  const maxX = Math.max(p.nodeX[edge.from]!, p.nodeX[edge.to]!) + r
  const minY = Math.min(p.nodeY[edge.from]!, p.nodeY[edge.to]!) - r
  const maxY = Math.max(p.nodeY[edge.from]!, p.nodeY[edge.to]!) + r
  return shoresOf(p).some((s) => s.minX < maxX && s.maxX > minX && s.minY < maxY && s.maxY > minY)
}

/** Face and shore along an edge between cells where a cove may lie on either side, by quadrature along it. */
export function stepInCove(p: Partition, edge: Edge, r: number, levelM: number): WetEdge {
  const left = p.cells[edge.left]!
  const right = p.cells[edge.right]!
  const sums = new Float64Array(2)
  const place = newJet()
  integratePattern(
    (t, out) => {
      evaluate(edge.curve, t, place)
      const a = depthIn(p, left, place.x, place.y)
      const b = depthIn(p, right, place.x, place.y)
      const sa = Math.max(0, a.depthM + levelM)
      const sb = Math.max(0, b.depthM + levelM)
      if (out) {
        const speed = Math.hypot(place.dx, place.dy)
        out[0] = speed * Math.abs(sa - sb)
        out[1] = sa > 0 !== sb > 0 ? speed : 0
      }
      const sides = [a.depthM <= 0, b.depthM <= 0, sa > 0, sb > 0].reduce((bits, is) => 2 * bits + (is ? 1 : 0), 0)
      const higher = Math.sign(Math.round((sa - sb) / p.grainM))
      return [a.coved ? a.by : -9, b.coved ? b.by : -9, sides, higher].reduce(mark, 0)
    },
    edge.t0,
    edge.t1,
    Math.min(1000, 12 + Math.ceil((4 * edge.length) / r)),
    [r * r, r],
    sums,
  )
  return { faceM2: sums[0]!, shoreM: sums[1]! }
}
