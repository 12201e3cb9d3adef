import type { SolidModel } from './model.ts'
import { isOverBasin } from './probe.ts'
import type { Vector } from './turntable.ts'

/** In how many directions the outline's farthest point is sought: its corners among them, however few points its sides have. */
const DIRECTIONS = 48

/** The points that must stay in the picture: the rim with a margin of ground around it. */
export function frameOfRim(model: SolidModel, marginM: number): Vector[] {
  const ring = model.mesh.rings[0]
  if (!ring) return []
  const farthest = new Set<number>()
  for (let k = 0; k < DIRECTIONS; k++) {
    const [ux, uy] = [Math.cos((2 * Math.PI * k) / DIRECTIONS), Math.sin((2 * Math.PI * k) / DIRECTIONS)]
    let best = 0
    for (let i = 2; i < ring.length; i += 2)
      if (ring[i]! * ux + ring[i + 1]! * uy > ring[best]! * ux + ring[best + 1]! * uy) best = i
    farthest.add(best)
  }
  return [...farthest].flatMap((i): Vector[] => {
    const [x, y, z] = [ring[i]!, ring[i + 1]!, model.rimM]
    return [
      [x + marginM, y, z],
      [x - marginM, y, z],
      [x, y + marginM, z],
      [x, y - marginM, z],
    ]
  })
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
