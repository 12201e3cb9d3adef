import { leastBetween } from '../base/index.ts'
import { evaluate, newJet } from './curve.ts'
import { turningPoints } from './curve-linear.ts'
import { cellAt } from './depth-at.ts'
import { Memory } from './memory.ts'
import type { Cell, Partition } from './partition-types.ts'
import { planeAt } from './planes.ts'
import type { RadialLaw } from './radial-law.ts'
import { farthestAlong, nearestAlong } from './radius-along.ts'
import { isNarrow } from './strip-broad.ts'
import { newStripRay, rayIn } from './strip-ray.ts'
import { runsOf } from './strip-runs.ts'
import { laySpan } from './strip-span.ts'
import type { StripPiece } from './strip-types.ts'
import { depthIn } from './surface-depth.ts'
import { CLOSE, HAIR, NEARLY, ROUNDING } from './tolerance.ts'
import { floorOn, newSpan, rulingOn, type WallLaw } from './wall-kind.ts'
import { wallLaw } from './walls.ts'

/** What rounding may tell two depths apart by. */
const ROUNDINGS_OF_DEPTH = 16
const MOST_LOOKS = 8

const jet = newJet()
const ray = newStripRay()
const known = new Memory<Partition, number>()

/**
 * Greatest depth below the datum where a wall leans into the water [m].
 * Method: beyond the strip depth is linear in each cell and greatest at a node, where an edge turns back, or where the strip
 *   ends; within it each ray's deepest place is closed form, and along a piece it is searched as if it had one top, where it
 *   could beat the rest.
 * Accuracy: 1e-9 m.
 */
export function deepestUnderWall(p: Partition): number {
  let deepest = known.get(p)
  if (deepest === undefined) {
    deepest = search(p)
    known.set(p, deepest)
  }
  return deepest
}

function search(p: Partition): number {
  const law = wallLaw(p.shape.wall)
  const bare = p.cells.reduce((most, cell) => Math.max(most, cell.maxDepthM), -Infinity)
  if (!law) return bare
  let best = deepestBeyond(p, bare)
  const mostOf = ({ cells }: StripPiece): number => Math.max(...cells.map((i) => p.cells[i]?.maxDepthM ?? -Infinity))
  const slackM = ROUNDINGS_OF_DEPTH * ROUNDING * (Math.abs(bare) + p.extentM)
  if (best >= bare - slackM) return best
  const pieces = runsOf(p).filter((piece) => !isNarrow(piece) && mostOf(piece) > best)
  const tops = pieces.map((piece) => {
    const inset = HAIR * (piece.t1 - piece.t0)
    const values = [piece.t0 + inset, (piece.t0 + piece.t1) / 2, piece.t1 - inset].map((t) =>
      deepestOn(p, law, piece, t),
    )
    const top = Math.max(...values)
    best = Math.max(best, top)
    return { piece, top, spread: top - Math.min(...values) }
  })
  const corners: { cell: Cell; x: number; y: number; depth: number }[] = []
  for (const cell of p.cells) {
    if (cell.maxDepthM <= best) continue
    if (cell.law) {
      best = Math.max(best, deepestInHollow(p, cell, cell.law))
      continue
    }
    const { atOrigin, dx, dy } = cell.plane
    for (const loop of cell.loops)
      for (const half of loop) {
        const { curve, t0, t1 } = p.edges[half >> 1]!
        for (const t of [t0, ...turningPoints(curve, { c: atOrigin, gx: dx, gy: dy })]) {
          if (t < t0 || t > t1) continue
          const { x, y } = evaluate(curve, t, jet)
          corners.push({ cell, x, y, depth: planeAt(cell.plane, x, y) })
        }
      }
  }
  corners.sort((a, b) => b.depth - a.depth)
  for (const { cell, x, y, depth } of corners) {
    if (depth <= best) break
    best = Math.max(best, depthIn(p, cell, x, y).depthM)
  }
  // Along a piece depth rises and falls about as much as it was seen to: those that come near are searched.
  tops.sort((a, b) => b.top - a.top)
  for (const { piece, top, spread } of tops)
    if (top + spread + p.grainM > best && mostOf(piece) > best) best = Math.max(best, refine(p, law, piece))
  return best
}

/** Depth in the middle of the edges of a few cells that hold the deepest place, which often lies beyond the strip. */
function deepestBeyond(p: Partition, bareM: number): number {
  let best = -Infinity
  let looks = 0
  for (const cell of p.cells) {
    if (cell.law || cell.maxDepthM < bareM) continue
    for (const half of cell.loops[0]!) {
      const { curve, t0, t1, left, right } = p.edges[half >> 1]!
      if (left < 0 || right < 0) continue
      if (++looks > MOST_LOOKS) return best
      evaluate(curve, (t0 + t1) / 2, jet)
      best = Math.max(best, depthIn(p, cell, jet.x, jet.y).depthM)
    }
  }
  return best
}

/**
 * Greatest at the places where a hollow alone may be deepest: its centre, its corners, and on each edge where that comes
 * nearest to the centre or is furthest from it. The end of the strip belongs to the rays.
 */
function deepestInHollow(p: Partition, cell: Cell, law: RadialLaw): number {
  let best = -Infinity
  const tryAt = (x: number, y: number): void => {
    best = Math.max(best, depthIn(p, cell, x, y).depthM)
  }
  const at = cellAt(p, law.x, law.y)
  if (at >= 0 && p.cells[at] === cell) tryAt(law.x, law.y)
  for (const loop of cell.loops)
    for (const half of loop) {
      const { curve, t0, t1 } = p.edges[half >> 1]!
      const stops = [
        t0,
        t1,
        nearestAlong(curve, t0, t1, law.x, law.y) ?? t0,
        ...farthestAlong(curve, t0, t1, law.x, law.y),
      ]
      for (const t of stops) {
        evaluate(curve, t, jet)
        tryAt(jet.x, jet.y)
      }
    }
  return best
}

/** Greatest over the rays of a piece: depths there rise to one top and fall. */
function refine(p: Partition, law: WallLaw, piece: StripPiece): number {
  const height = (t: number): number => -deepestOn(p, law, piece, t)
  const inset = NEARLY * (piece.t1 - piece.t0)
  const lo = piece.t0 + inset
  const hi = piece.t1 - inset
  return -Math.min(height(lo), height(hi), leastBetween(height, lo, hi, CLOSE * (hi - lo)).value)
}

const span = newSpan()

/** Greatest depth along one ray, up to its end. */
function deepestOn(p: Partition, law: WallLaw, piece: StripPiece, t: number): number {
  rayIn(p, piece, t, ray)
  let best = -Infinity
  piece.cells.forEach((index, i) => {
    if (!laySpan(p, piece, ray, i, span)) return
    const { maxDepthM } = p.cells[index]!
    // In a sliver a steep plane may be met a hair outside its cell, where it says nothing.
    for (const n of [span.from, law.deepestAt(span), span.to])
      best = Math.max(best, Math.min(maxDepthM, rulingOn(span, n), law.allowedM(floorOn(span, n), n)))
  })
  return best
}
