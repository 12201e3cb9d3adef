import { Memory } from './memory.ts'
import type { Partition } from './partition-types.ts'
import { wallLaw } from './walls.ts'

const known = new Memory<Partition, number>()

/** Plan distance from the shore beyond which the wall changes nothing; 0 where it is upright [m]. Remembered for each partition. */
export function wallWidth(p: Partition): number {
  let width = known.get(p)
  if (width === undefined) {
    width = find(p)
    known.set(p, width)
  }
  return width
}

function find(p: Partition): number {
  const law = wallLaw(p.shape.wall)
  if (!law) return 0
  const deepest = p.cells.reduce((most, cell) => Math.max(most, cell.maxDepthM), 0)
  // No place is further from the shore than the basin is wide.
  return Math.min(law.widthM(deepest), p.extentM)
}

const knownReach = new Memory<Partition, number>()

/** A distance that no place of the water is further than from the shore, where a wall leans so far; else the wall's width [m]. */
export function wallReach(p: Partition): number {
  let reach = knownReach.get(p)
  if (reach === undefined) {
    // No circle in the water is larger than the water.
    const waterM2 = p.cells.reduce((sum, { areaM2 }) => sum + areaM2, 0)
    reach = Math.min(wallWidth(p), Math.sqrt(waterM2 / Math.PI))
    knownReach.set(p, reach)
  }
  return reach
}
