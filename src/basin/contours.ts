import { type DepthGrid, depthGrid } from './depth-grid.ts'
import type { Partition } from './partition-types.ts'
import { defaultChord, planMesh } from './plan-mesh.ts'
import type { ContourLine, Point } from './types.ts'

/**
 * Lines of equal depth on the floor, the treads and the shelves; upright faces make none. A line that ends at an upright
 * face is open. A level stretch has no line at its own depth but its border.
 */
export function contoursOf(p: Partition, depthsM: readonly number[]): ContourLine[] {
  const grid = depthGrid(p, planMesh(p, defaultChord(p)))
  return depthsM.flatMap((depthM) => linesAt(p, grid, depthM))
}

function linesAt(p: Partition, grid: DepthGrid, depthM: number): ContourLine[] {
  const { triangles, depths, x, y } = grid
  const points = new Map<string, Point>()
  const links = new Map<string, string[]>()
  const link = (a: string, b: string): void => {
    if (a === b) return
    for (const [from, to] of [[a, b] as const, [b, a] as const]) {
      const list = links.get(from)
      if (list) list.push(to)
      else links.set(from, [to])
    }
  }
  for (let i = 0; i < triangles.length; i += 3) {
    const ends: string[] = []
    for (let k = 0; k < 3; k++) {
      const m = (k + 1) % 3
      const a = triangles[i + k]!
      const b = triangles[i + m]!
      const da = depths[i + k]! - depthM
      const db = depths[i + m]! - depthM
      // A corner at the very depth counts as deeper, so that each line passes a triangle by two sides.
      if (da >= 0 === db >= 0) continue
      const [u, v, du, dv] = a < b ? [a, b, da, db] : [b, a, db, da]
      const key = `${u} ${v} ${grid.sheet[i / 3]!}`
      const t = du / (du - dv)
      points.set(key, [x[u]! + t * (x[v]! - x[u]!) + p.originX, y[u]! + t * (y[v]! - y[u]!) + p.originY])
      ends.push(key)
    }
    if (ends.length === 2) link(ends[0]!, ends[1]!)
  }
  return chained(points, links).map(({ keys, closed }) => ({
    depthM,
    closed,
    points: spaced(
      keys.map((k) => points.get(k)!),
      p.grainM,
    ),
  }))
}

/** Points without those that fall on the one before. */
function spaced(points: readonly Point[], grainM: number): Point[] {
  return points.filter((q, i) => {
    const last = points[i - 1]
    return !last || Math.hypot(q[0] - last[0], q[1] - last[1]) > 4 * grainM
  })
}

/** Links between keys as lines, each walked from an end where it has one. */
function chained(
  points: ReadonlyMap<string, Point>,
  links: ReadonlyMap<string, string[]>,
): { keys: string[]; closed: boolean }[] {
  const seen = new Set<string>()
  const lines: { keys: string[]; closed: boolean }[] = []
  const walk = (start: string): string[] => {
    const keys = [start]
    seen.add(start)
    for (let at = start; ; ) {
      const next = links.get(at)!.find((k) => !seen.has(k))
      if (next === undefined) return keys
      seen.add(next)
      keys.push(next)
      at = next
    }
  }
  for (const key of points.keys())
    if (!seen.has(key) && links.get(key)?.length === 1) lines.push({ keys: walk(key), closed: false })
  for (const key of points.keys()) if (!seen.has(key) && links.has(key)) lines.push({ keys: walk(key), closed: true })
  return lines
}
