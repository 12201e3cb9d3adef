import type { Problem } from '../base/index.ts'
import { cellDepth, floorDepth } from './cell-depth.ts'
import type { Partition } from './partition-types.ts'
import { wallLeavesNone } from './problems.ts'
import { stripOf } from './strip.ts'
import { deepestUnderWall } from './strip-deepest.ts'
import { newStripRay, rayIn } from './strip-ray.ts'
import { HAIR } from './tolerance.ts'
import { wallLaw } from './walls.ts'

/** A wall that leaves less than this share of the depth is what takes the water; else the level is low. */
const LEFT = 0.1

/** Rays of each piece that are looked at for the place furthest from all shores. */
const LOOKS = 8

const ray = newStripRay()

/**
 * The complaint that it is the wall which leaves no water at a level, nothing where there is none without it either
 * or where the wall leaves plenty further down. It names the reach of the shores and the greatest size of the wall that is sure to leave some: by the ends of rays, so the
 * true ones may be a little greater.
 */
export function wallTakesAll(p: Partition, levelM: number): Problem | undefined {
  const law = wallLaw(p.shape.wall)
  const bareM = p.cells.reduce((most, cell) => Math.max(most, cell.maxDepthM), 0)
  if (!law || !(bareM + levelM > 0) || deepestUnderWall(p) > LEFT * bareM) return undefined
  let reachM = 0
  let most = 0
  let x = Number.NaN
  let y = Number.NaN
  for (const piece of stripOf(p).pieces)
    for (let i = 0; i <= LOOKS; i++) {
      const share = Math.min(Math.max(i / LOOKS, HAIR), 1 - HAIR)
      rayIn(p, piece, piece.t0 + share * (piece.t1 - piece.t0), ray)
      reachM = Math.max(reachM, ray.end)
      const cell = p.cells[piece.cells[piece.cells.length - 1]!]
      const endX = ray.x + ray.end * ray.nx
      const endY = ray.y + ray.end * ray.ny
      if (!cell || !(cellDepth(cell, endX, endY) + levelM > 0)) continue
      const size = law.drySize(floorDepth(p, cell, endX, endY), ray.end, levelM)
      if (!(size > most) || size >= law.size.value) continue
      most = size
      x = endX
      y = endY
    }
  if (!(most > 0)) return undefined
  return wallLeavesNone(law.size, most, reachM, [x + p.originX, y + p.originY])
}
