import { IsoPlaces, type IsoSides, isoSides } from './iso-sides.ts'
import type { Partition } from './partition-types.ts'
import { defaultChord, type PlanMesh, planMesh } from './plan-mesh.ts'
import type { DepthBand, Point } from './types.ts'

/**
 * The regions between neighbouring depths of a rising list, as rings to fill by the even-odd rule. What is shallower than
 * the first or deeper than the last depth is left out: give ±Infinity to have it.
 */
export function bandsOf(p: Partition, depthsM: readonly number[], chordM = defaultChord(p)): DepthBand[] {
  const plan = planMesh(p, chordM)
  const sides = isoSides(p, plan)
  const places = new IsoPlaces(p, plan, sides)
  const bands: DepthBand[] = []
  for (let i = 0; i + 1 < depthsM.length; i++) {
    const fromM = depthsM[i]!
    const toM = depthsM[i + 1]!
    if (!(toM > fromM)) continue
    bands.push({ fromM, toM, rings: ringsBetween(p, plan, sides, places, fromM, toM, i + 2 === depthsM.length) })
  }
  return bands
}

/**
 * Border of what lies in a band: lines at its two depths, and parts of the sides where the plan or a step ends. A node of
 * it is a vertex, or the place on a side where it passes one of the depths.
 */
function ringsBetween(
  p: Partition,
  plan: PlanMesh,
  sides: IsoSides,
  places: IsoPlaces,
  fromM: number,
  toM: number,
  isLast: boolean,
): Point[][] {
  const { sideAt, depthAt, uses } = sides
  const { triangles, points } = plan
  const vertices = points.x.length
  const first = new Int32Array(vertices + 2 * sides.count).fill(-1)
  const goal: number[] = []
  const next: number[] = []
  const starts: number[] = []
  const border = (from: number, to: number): void => {
    if (first[from]! < 0) starts.push(from)
    goal.push(to)
    next.push(first[from]!)
    first[from] = goal.length - 1
  }
  // What is level at the border of two bands, but for rounding, belongs to the deeper one.
  const lowM = fromM - points.mergeM
  const highM = isLast ? toM + points.mergeM : toM - points.mergeM
  const classOf = (d: number): number => (d < lowM ? 0 : d < highM ? 1 : 2)
  const node: number[] = []
  const onSide: number[] = []
  for (let i = 0; i < triangles.length; i += 3) {
    const a = classOf(depthAt[i]!)
    const b = classOf(depthAt[i + 1]!)
    const c = classOf(depthAt[i + 2]!)
    if (a === b && b === c && a !== 1) continue
    node.length = 0
    onSide.length = 0
    // The triangle's part within the band, corner by corner; onSide tells which side leads on from each, −1 for a depth line.
    for (let k = 0; k < 3; k++) {
      const here = k === 0 ? a : k === 1 ? b : c
      const there = k === 0 ? b : k === 1 ? c : a
      const side = sideAt[i + k]!
      const low = vertices + 2 * side
      if (here === 1) {
        node.push(triangles[i + k]!)
        onSide.push(side)
      }
      if (here === there) continue
      const rises = here < there
      const leaves = rises ? low + 1 : low
      const enters = rises ? low : low + 1
      if ((rises && here === 0) || (!rises && here === 2)) {
        node.push(enters)
        onSide.push(side)
      }
      if ((rises && there === 2) || (!rises && there === 0)) {
        node.push(leaves)
        onSide.push(-1)
      }
    }
    for (let k = 0; k < node.length; k++) {
      const side = onSide[k]!
      if (side >= 0 && uses[side] === 2) continue
      border(node[k]!, node[k + 1 < node.length ? k + 1 : 0]!)
    }
  }
  const placeOf = (n: number): Point => {
    if (n < vertices) return [points.x[n]! + p.originX, points.y[n]! + p.originY]
    const place: [number, number] = [0, 0]
    places.at((n - vertices) >> 1, (n - vertices) & 1 ? toM : fromM, place)
    return place
  }
  const rings: Point[][] = []
  const pop = (n: number): number => {
    const step = first[n]!
    if (step < 0) return -1
    first[n] = next[step]!
    return goal[step]!
  }
  for (const start of starts)
    for (let at = pop(start); at >= 0; at = pop(start)) {
      const ring: Point[] = [placeOf(start)]
      while (at >= 0 && at !== start) {
        ring.push(placeOf(at))
        at = pop(at)
      }
      if (ring.length > 2) rings.push(ring)
    }
  return rings
}
