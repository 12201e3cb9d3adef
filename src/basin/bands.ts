import { type DepthGrid, depthGrid } from './depth-grid.ts'
import type { Partition } from './partition-types.ts'
import { defaultChord, planMesh } from './plan-mesh.ts'
import type { DepthBand, Point } from './types.ts'

/**
 * The regions between neighbouring depths of a rising list, as rings to fill by the even-odd rule. What is shallower than
 * the first or deeper than the last depth is left out: give ±Infinity to have it.
 */
export function bandsOf(p: Partition, depthsM: readonly number[]): DepthBand[] {
  const grid = depthGrid(p, planMesh(p, defaultChord(p)))
  const bands: DepthBand[] = []
  for (let i = 0; i + 1 < depthsM.length; i++) {
    const fromM = depthsM[i]!
    const toM = depthsM[i + 1]!
    if (toM > fromM) bands.push({ fromM, toM, rings: ringsBetween(p, grid, fromM, toM, i + 2 === depthsM.length) })
  }
  return bands
}

interface Corner {
  readonly key: string
  readonly x: number
  readonly y: number
  readonly depth: number
}

/** Border of the union of all triangles' parts in a band: sides that two parts share cancel out. */
function ringsBetween(p: Partition, grid: DepthGrid, fromM: number, toM: number, isLast: boolean): Point[][] {
  const places = new Map<string, Point>()
  const sides = new Map<string, [string, string]>()
  const { triangles, depths, x, y } = grid
  for (let i = 0; i < triangles.length; i += 3) {
    let polygon: Corner[] = [0, 1, 2].map((k) => {
      const v = triangles[i + k]!
      return { key: `${v}`, x: x[v]!, y: y[v]!, depth: depths[i + k]! }
    })
    // What is level at the border of two bands belongs to the deeper one.
    if (!isLast && polygon.every((c) => c.depth === toM)) continue
    polygon = clip(clip(polygon, fromM, 1), toM, -1)
    if (polygon.length < 3) continue
    polygon.forEach((a, k) => {
      const b = polygon[(k + 1) % polygon.length]!
      if (a.key === b.key) return
      places.set(a.key, [a.x + p.originX, a.y + p.originY])
      const opposite = `${b.key}|${a.key}`
      if (sides.has(opposite)) sides.delete(opposite)
      else sides.set(`${a.key}|${b.key}`, [a.key, b.key])
    })
  }
  const from = new Map<string, string[]>()
  for (const [a, b] of sides.values()) {
    const list = from.get(a)
    if (list) list.push(b)
    else from.set(a, [b])
  }
  const rings: Point[][] = []
  for (const start of from.keys()) {
    for (let next = from.get(start)!.pop(); next !== undefined; next = from.get(start)!.pop()) {
      const ring: Point[] = [places.get(start)!]
      for (let at: string | undefined = next; at !== undefined && at !== start; at = from.get(at)?.pop())
        ring.push(places.get(at)!)
      if (ring.length > 2) rings.push(ring)
    }
  }
  return rings
}

/** The part of a polygon on one side of a depth; new corners are named by the side that they lie on and the depth. */
function clip(polygon: readonly Corner[], depthM: number, side: 1 | -1): Corner[] {
  if (!Number.isFinite(depthM)) return [...polygon]
  const kept: Corner[] = []
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!
    const inA = side * (a.depth - depthM) >= 0
    const inB = side * (b.depth - depthM) >= 0
    if (inA) kept.push(a)
    if (inA === inB) return
    const [u, v] = a.key < b.key ? [a, b] : [b, a]
    const t = (depthM - u.depth) / (v.depth - u.depth)
    kept.push({
      key: `${u.key},${v.key}@${depthM}`,
      x: u.x + t * (v.x - u.x),
      y: u.y + t * (v.y - u.y),
      depth: depthM,
    })
  })
  return kept
}
