import { BoxGrid } from './box-grid.ts'
import { Memory } from './memory.ts'
import type { Partition } from './partition-types.ts'
import { boxDistance2, type Shore, shoresOf } from './shores.ts'
import { type Foot, footOn } from './span.ts'
import { NEARLY } from './tolerance.ts'

const known = new Memory<Partition, BoxGrid>()
const found: number[] = []
const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** The boxes of all stretches of shore, to look up those near a place. Remembered for each partition. */
export function shoreGrid(p: Partition): BoxGrid {
  let grid = known.get(p)
  if (!grid) {
    grid = new BoxGrid(shoresOf(p))
    known.set(p, grid)
  }
  return grid
}

/** The stretch of outline or island nearest to a place, −1 where none is nearer than a reach; writes the foot on it. */
export function nearestShore(p: Partition, x: number, y: number, reachM: number, out: Foot): number {
  const shores = shoresOf(p)
  found.length = 0
  // Who asks goes on from the last place mostly: nothing further away than what was nearest there needs looking at.
  const last = shores.length >= MANY_SHORES && shores === lastShores ? shores[lastBy] : undefined
  let roomM = reachM
  if (last) roomM = Math.min(reachM, (1 + NEARLY) * footOn(last.curve, last.t0, last.t1, x, y, foot).distance)
  shoreGrid(p).near(x - roomM, y - roomM, x + roomM, y + roomM, found)
  let best = reachM
  let by = -1
  // The one whose box is nearest first: most of the others then needn't be looked at.
  let first = 0
  let nearest = Infinity
  for (let k = 0; k < found.length; k++) {
    const d = boxDistance2(shores[found[k]!]!, x, y)
    if (d < nearest) {
      nearest = d
      first = k
    }
  }
  for (let k = 0; k < found.length; k++) {
    const i = found[k === 0 ? first : k === first ? 0 : k]!
    const shore = shores[i]!
    if (boxDistance2(shore, x, y) > best * best) continue
    footOn(shore.curve, shore.t0, shore.t1, x, y, foot)
    // Of two stretches that meet at the foot the first in order has it, whatever the order they are looked at.
    if (foot.distance < best || (foot.distance === best && i < by)) {
      best = foot.distance
      by = i
      out.t = foot.t
      out.x = foot.x
      out.y = foot.y
      out.distance = foot.distance
    }
  }
  lastShores = shores
  lastBy = by
  return by
}

/** From so many stretches on it pays to begin with the one that was nearest to the last place. */
const MANY_SHORES = 16
let lastShores: readonly Shore[] | undefined
let lastBy = -1

/** The stretches of shore whose boxes are nearer to a place than a reach [m]; the list is written over by the next. */
export function shoresNear(p: Partition, x: number, y: number, reachM: number): readonly number[] {
  const shores = shoresOf(p)
  found.length = 0
  shoreGrid(p).near(x - reachM, y - reachM, x + reachM, y + reachM, found)
  let count = 0
  for (const i of found) if (boxDistance2(shores[i]!, x, y) < reachM * reachM) found[count++] = i
  found.length = count
  return found
}
