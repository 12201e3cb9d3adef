import { IsoPlaces, type IsoSides, isoSides } from './iso-sides.ts'
import type { Partition } from './partition-types.ts'
import { defaultChord, planMesh } from './plan-mesh.ts'
import { areaWithin, lengthAlong } from './polyline.ts'
import type { ContourLine, Point } from './types.ts'

/**
 * Lines of equal depth on the floor, the treads, the shelves and sloping walls; upright faces make none. A line that ends
 * at an upright face is open. A level stretch has no line at its own depth but its border.
 */
export function contoursOf(p: Partition, depthsM: readonly number[], chordM = defaultChord(p)): ContourLine[] {
  const plan = planMesh(p, chordM)
  const sides = isoSides(p, plan)
  const places = new IsoPlaces(p, plan, sides)
  return depthsM.flatMap((depthM) => linesAt(p, sides, places, depthM, plan.points.mergeM))
}

function linesAt(p: Partition, sides: IsoSides, places: IsoPlaces, depthM: number, tieM: number): ContourLine[] {
  const { sideAt, depthAt, count } = sides
  const leastM = depthM - tieM
  // The sides that each side's place is joined to, through the triangles that it has.
  const links = new Int32Array(2 * count).fill(-1)
  const crossed: number[] = []
  const join = (from: number, to: number): void => {
    if (links[2 * from]! < 0) {
      crossed.push(from)
      links[2 * from] = to
    } else links[2 * from + 1] = to
  }
  for (let i = 0; i < depthAt.length; i += 3) {
    // A corner at the very depth, or off it by rounding, counts as deeper, so that each line passes a triangle by two sides.
    const a = depthAt[i]! >= leastM
    const b = depthAt[i + 1]! >= leastM
    const c = depthAt[i + 2]! >= leastM
    if (a === b && b === c) continue
    const one = a !== b ? sideAt[i]! : sideAt[i + 1]!
    const other = c !== a ? sideAt[i + 2]! : sideAt[i + 1]!
    if (one === other) continue
    join(one, other)
    join(other, one)
  }
  const seen = new Uint8Array(count)
  const lines: ContourLine[] = []
  const place: [number, number] = [0, 0]
  const walk = (start: number, closed: boolean): void => {
    const points: Point[] = []
    for (let at = start; at >= 0 && !seen[at]; ) {
      seen[at] = 1
      places.at(at, depthM, place)
      const last = points[points.length - 1]
      if (!last || Math.hypot(place[0] - last[0], place[1] - last[1]) > 4 * p.grainM) points.push([place[0], place[1]])
      const next = links[2 * at]!
      at = next >= 0 && !seen[next] ? next : links[2 * at + 1]!
    }
    // Round triangles without width, which close the mesh where the strip beside a wall meets a floor's edge, there runs no line.
    if (!closed || Math.abs(areaWithin(points)) > tieM * lengthAlong(points)) lines.push({ depthM, closed, points })
  }
  for (const side of crossed) if (!seen[side] && links[2 * side + 1]! < 0) walk(side, false)
  for (const side of crossed) if (!seen[side]) walk(side, true)
  return lines
}
