import { rangeAlong } from './curve-linear.ts'
import { cellAt } from './depth-at.ts'
import type { Partition } from './partition-types.ts'
import { depthAtRadius } from './radial-law.ts'
import { radiusRange } from './radius-along.ts'
import { depthIn } from './surface-depth.ts'
import { pushWallBreakDepths } from './wall-break-depths.ts'
import { wallLaw } from './walls.ts'

/**
 * Levels [m above the datum], ascending, at which the volume is no smooth function of the level or the wet region changes
 * its outline: where the water reaches a corner of the floor or a feature, a level stretch, the highest or lowest point of a
 * curved edge, of the foot or the edge of a cove, of the line where a batter meets the floor, or a wall's top at the datum.
 * Method: depth is smooth but for those places, so the level curve is smooth but for their depths; some of them may be smooth
 *   all the same, none is left out.
 * Accuracy: rounding with upright walls; 1e-9 of the basin's extent with others.
 */
export function levelBreaks(p: Partition): readonly number[] {
  const depths: number[] = []
  const law = wallLaw(p.shape.wall)
  for (const cell of p.cells) {
    // A hollow may have its deepest place inside.
    if (cell.law) depths.push(cell.minDepthM, cell.maxDepthM)
    for (const loop of cell.loops)
      for (const half of loop) {
        const edge = p.edges[half >> 1]!
        const node = half & 1 ? edge.to : edge.from
        depths.push(depthIn(p, cell, p.nodeX[node]!, p.nodeY[node]!).depthM)
        if (cell.law) {
          for (const radius of radiusRange(edge.curve, edge.t0, edge.t1, cell.law.x, cell.law.y))
            depths.push(depthAtRadius(cell.law, radius))
          continue
        }
        if (edge.curve.kind === 'line') continue
        const { atOrigin, dx, dy } = cell.plane
        depths.push(...rangeAlong(edge.curve, edge.t0, edge.t1, { c: atOrigin, gx: dx, gy: dy }))
      }
  }
  if (law) depths.push(0)
  const searchedFrom = depths.length
  if (law) pushWallBreakDepths(p, law, depths)
  const searchedTo = depths.length
  // The tip of a hollow may lie under a wall.
  const hollow = p.floor.pieces[1]?.law
  const at = law && hollow ? cellAt(p, hollow.x, hollow.y) : -1
  if (hollow && at >= 0) depths.push(depthIn(p, p.cells[at]!, hollow.x, hollow.y).depthM)
  const order = Array.from(depths.keys()).sort((a, b) => depths[b]! - depths[a]!)
  const apart = 8 * p.grainM
  const levels: number[] = []
  let isSearched = false
  for (let i = 0; i < order.length; i++) {
    const depth = depths[order[i]!]!
    const wasSearched: boolean = isSearched
    isSearched = order[i]! >= searchedFrom && order[i]! < searchedTo
    if (i === 0 || depths[order[i - 1]!]! - depth > apart) levels.push(-depth)
    // Of levels that are one but for rounding the one that was not searched for along a wall is the nearer.
    else if (wasSearched && !isSearched) levels[levels.length - 1] = -depth
    else isSearched &&= wasSearched
  }
  return levels
}
