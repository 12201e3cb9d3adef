import { evaluate, newJet } from './curve.ts'
import { type Linear, rangeAlong, zerosAlong } from './curve-linear.ts'
import { lengthMoments } from './edge-integrals.ts'
import type { Cell, Edge, Partition } from './partition-types.ts'
import { planeAt } from './planes.ts'
import { depthAtRadius, lawGradient } from './radial-law.ts'
import { arcAbout } from './radius-along.ts'
import { ROUNDING } from './tolerance.ts'
import { wetAlongLaw } from './wet-radial.ts'

/** What water touches along one edge: the vertical face there [m²] and how much of the edge is shore [m]. */
export interface WetEdge {
  faceM2: number
  shoreM: number
}

const jet = newJet()

/**
 * Vertical face ∫|s⁺_left − s⁺_right| dl [m²] and shore length [m] along an edge at a level; dry land has s⁺ = 0.
 * Accuracy: rounding on lines and arcs; adaptive quadrature on cubics (edge-integrals.ts).
 */
export function wetEdge(p: Partition, edge: Edge, levelM: number): WetEdge {
  const left = edge.left < 0 ? undefined : p.cells[edge.left]!
  const right = edge.right < 0 ? undefined : p.cells[edge.right]!
  if (left && right) return betweenCells(edge, left, right, levelM)
  const cell = left ?? right
  return cell ? onWall(edge, cell, levelM) : { faceM2: 0, shoreM: 0 }
}

function depthOf(cell: Cell, levelM: number): Linear {
  return { c: cell.plane.atOrigin + levelM, gx: cell.plane.dx, gy: cell.plane.dy }
}

function onWall(edge: Edge, cell: Cell, levelM: number): WetEdge {
  if (cell.law !== undefined) return wetAlongLaw(edge, cell, cell.law, levelM)
  const s = depthOf(cell, levelM)
  if (cell.maxDepthM + levelM <= 0) return { faceM2: 0, shoreM: 0 }
  // A cell that is all wet has no shore inside (wet-cell.ts): where its floor comes up to the level, its edge has it.
  if (cell.minDepthM + levelM >= 0) return { faceM2: weighed(edge, s), shoreM: edge.length }
  const out = { faceM2: 0, shoreM: 0 }
  forPieces(edge, zerosAlong(edge.curve, edge.t0, edge.t1, s), (x, y, piece) => {
    if (!(valueAt(s, x, y) > 0)) return
    out.faceM2 += weighed(piece(), s)
    out.shoreM += piece().length
  })
  return out
}

function betweenCells(edge: Edge, left: Cell, right: Cell, levelM: number): WetEdge {
  if (left.law !== undefined || right.law !== undefined) return besideLaw(edge, left, right, levelM)
  if (left.plane === right.plane) return { faceM2: 0, shoreM: 0 }
  if (left.maxDepthM + levelM <= 0 && right.maxDepthM + levelM <= 0) return { faceM2: 0, shoreM: 0 }
  const a = depthOf(left, levelM)
  const b = depthOf(right, levelM)
  const step: Linear = { c: a.c - b.c, gx: a.gx - b.gx, gy: a.gy - b.gy }
  const [lo, hi] = rangeAlong(edge.curve, edge.t0, edge.t1, step)
  const noise = 256 * ROUNDING * (Math.abs(left.maxDepthM) + Math.abs(left.minDepthM) + Math.abs(a.c) + Math.abs(b.c))
  const same = Math.max(Math.abs(lo), Math.abs(hi)) <= noise
  const allWet = left.minDepthM + levelM >= 0 && right.minDepthM + levelM >= 0
  if (same && allWet) return { faceM2: 0, shoreM: 0 }
  if (allWet && (lo >= 0 || hi <= 0)) {
    // A floor that just touches the surface along here is a shore on the side that is deeper.
    return { faceM2: Math.abs(weighed(edge, step)), shoreM: 0 }
  }
  if (same) return { faceM2: 0, shoreM: 0 }
  const { curve, t0, t1 } = edge
  const breaks = [...zerosAlong(curve, t0, t1, a), ...zerosAlong(curve, t0, t1, b), ...zerosAlong(curve, t0, t1, step)]
  breaks.sort((p, q) => p - q)
  const out = { faceM2: 0, shoreM: 0 }
  forPieces(edge, breaks, (x, y, piece) => {
    const wetA = valueAt(a, x, y) > 0
    const wetB = valueAt(b, x, y) > 0
    if (!wetA && !wetB) return
    if (wetA && wetB) out.faceM2 += Math.abs(weighed(piece(), step))
    else {
      out.faceM2 += weighed(piece(), wetA ? a : b)
      out.shoreM += piece().length
    }
  })
  return out
}

/**
 * Between a floor whose depth hangs on the distance from a centre and what is beside it: more of the same floor, its own
 * rim, or a feature, which is shallower all along, else the floor would rule there.
 */
function besideLaw(edge: Edge, left: Cell, right: Cell, levelM: number): WetEdge {
  if (left.law === right.law) return { faceM2: 0, shoreM: 0 }
  const [floor, other] = left.law !== undefined ? [left, right] : [right, left]
  const law = floor.law!
  const about = arcAbout(edge.curve, law.x, law.y)
  if (about) {
    const rho = Math.abs(about.radius)
    // Where the two cross there is no face and no shore, whatever rounding says.
    const isLevelThere = other.plane.dx === 0 && other.plane.dy === 0
    const off = Math.abs(depthAtRadius(law, rho) - planeAt(other.plane, about.x0, about.y0))
    const steepness = 1 + Math.hypot(...lawGradient(law, law.x + rho, law.y))
    const noise = 256 * ROUNDING * (Math.abs(law.depthM) + Math.abs(law.edgeDepthM) + law.radiusM) * steepness
    if (isLevelThere && off <= noise) return { faceM2: 0, shoreM: 0 }
  }
  const below = onWall(edge, floor, levelM)
  const above = onWall(edge, other, levelM)
  return { faceM2: Math.max(0, below.faceM2 - above.faceM2), shoreM: Math.max(0, below.shoreM - above.shoreM) }
}

function valueAt(s: Linear, x: number, y: number): number {
  return s.c + s.gx * x + s.gy * y
}

function weighed(piece: { length: number; lengthX: number; lengthY: number }, s: Linear): number {
  return s.c * piece.length + s.gx * piece.lengthX + s.gy * piece.lengthY
}

type Piece = { length: number; lengthX: number; lengthY: number }

/** Calls `visit` with the middle of each stretch between breaks, and a way to its length moments. */
function forPieces(
  edge: Edge,
  breaks: readonly number[],
  visit: (x: number, y: number, piece: () => Piece) => void,
): void {
  for (let i = 0; i <= breaks.length; i++) {
    const ta = i === 0 ? edge.t0 : breaks[i - 1]!
    const tb = i === breaks.length ? edge.t1 : breaks[i]!
    if (!(tb > ta)) continue
    evaluate(edge.curve, (ta + tb) / 2, jet)
    let known: Piece | undefined
    visit(jet.x, jet.y, () => {
      known ??= breaks.length === 0 ? edge : lengthMoments(edge.curve, ta, tb)
      return known
    })
  }
}
