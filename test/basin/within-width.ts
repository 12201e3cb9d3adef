import { expect } from 'vitest'
import { boundsOf, depthAt, nearestOn, type Partition, type Path } from '../../src/basin/index.ts'

/** Nearer to a width than this a place may be on either side of it [m]. */
const AT_WIDTH_M = 1e-5

/** Holds a bench all round an outline to what it is, at places of a grid: where the wall is within its width. Returns how many. */
export function expectWithinWidth(p: Partition, outline: Path, widthM: number): number {
  const { minX, minY, maxX, maxY } = boundsOf(outline)
  const [across, up] = [60, 54]
  let checked = 0
  for (let i = 0; i < across; i++)
    for (let k = 0; k < up; k++) {
      const x = minX + ((maxX - minX) * (i + 0.5)) / across
      const y = minY + ((maxY - minY) * (k + 0.5)) / up
      const here = depthAt(p, x, y)
      const { distanceM } = nearestOn(outline, x, y)
      if (!here || Math.abs(distanceM - widthM) < AT_WIDTH_M) continue
      checked++
      expect([x, y, here.part]).toEqual([x, y, distanceM < widthM ? 'feature' : 'floor'])
    }
  return checked
}
