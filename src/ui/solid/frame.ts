import type { SolidModel } from './model.ts'
import { isOverBasin } from './probe.ts'
import type { Vector } from './turntable.ts'

/** Points of the outline that the fit looks at: enough for a smooth curve, few enough for every frame. */
const MOST_POINTS = 96

/** The points that must stay in the picture: the rim with a margin of ground around it. */
export function frameOfRim(model: SolidModel, marginM: number): Vector[] {
  const ring = model.mesh.rings[0]
  if (!ring) return []
  const points: Vector[] = []
  const step = 2 * Math.max(1, Math.ceil(ring.length / 2 / MOST_POINTS))
  for (let i = 0; i < ring.length; i += step) {
    const [x, y, z] = [ring[i]!, ring[i + 1]!, model.rimM]
    points.push([x + marginM, y, z], [x - marginM, y, z], [x, y + marginM, z], [x, y - marginM, z])
  }
  return points
}

/** A place over the water to begin at: the outline's middle, or the place nearest to it beside a corner. */
export function placeOverWater(model: SolidModel): readonly [x: number, y: number] | undefined {
  const { rings } = model.mesh
  const ring = rings[0]
  if (!ring || ring.length === 0) return undefined
  const count = ring.length / 2
  let [midX, midY] = [0, 0]
  for (let i = 0; i < ring.length; i += 2) {
    midX += ring[i]! / count
    midY += ring[i + 1]! / count
  }
  // From the middle out toward each corner, a little at a time, so that a bent basin is met near its middle too.
  for (let share = 0; share < 1; share += 0.04)
    for (let i = 0; i < ring.length; i += 2) {
      const [x, y] = [midX + (ring[i]! - midX) * share, midY + (ring[i + 1]! - midY) * share]
      if (isOverBasin(rings, x, y)) return [x, y]
    }
  return undefined
}
