import { type BasinShape, flatten } from '../../src/basin/index.ts'

const CHORD_M = 3e-4

/**
 * Water at the middles of small squares straight from the definition of a wall: floor along x, features by even-odd on
 * flattened paths, distance to the nearest chord of the shores. Shares nothing with the kernel but the flattening.
 */
export function countedByDefinition(
  s: BasinShape,
  levelsM: readonly number[],
  n: number,
  [x0, y0]: readonly [number, number],
  sizeM: number,
): { volume: number; area: number }[] {
  const shores = [s.outline, ...s.islands].map((path) => flatten(path, CHORD_M))
  const patches = s.patches.map(({ path, except, plane }) => ({
    ring: flatten(path, CHORD_M),
    except: except && flatten(except, CHORD_M),
    plane,
  }))
  const h = sizeM / n
  const sums = levelsM.map(() => ({ volume: 0, area: 0 }))
  for (let i = 0; i < n; i++)
    for (let k = 0; k < n; k++) {
      const x = x0 + (i + 0.5) * h
      const y = y0 + (k + 0.5) * h
      if (shores.some((ring, index) => isInside(ring, x, y) !== (index === 0))) continue
      const floor = floorAt(s, x, y)
      let depth = floor
      for (const { ring, except, plane } of patches)
        if (isInside(ring, x, y) && !(except && isInside(except, x, y)))
          depth = Math.min(depth, plane.atOrigin + plane.dx * x + plane.dy * y)
      const away = Math.min(...shores.map((ring) => distance(ring, x, y)))
      if (s.wall.kind === 'battered') depth = Math.min(depth, away / s.wall.run)
      if (s.wall.kind === 'cove' && away < s.wall.radiusM) {
        const r = s.wall.radiusM
        depth = Math.min(depth, Math.max(floor - r + Math.sqrt(r * r - (r - away) ** 2), Math.min(floor, 0)))
      }
      levelsM.forEach((levelM, at) => {
        if (depth + levelM <= 0) return
        sums[at]!.volume += h * h * (depth + levelM)
        sums[at]!.area += h * h
      })
    }
  return sums
}

/** Depth of a flat floor, of one that falls along x, or of a dish. */
function floorAt({ floor }: BasinShape, x: number, y: number): number {
  if (floor.kind === 'flat') return floor.depthM
  if (floor.kind === 'dish') {
    const rho = Math.hypot(x - floor.centre[0], y - floor.centre[1])
    const rise = floor.edgeDepthM - floor.depthM
    if (rho >= floor.radiusM) return floor.edgeDepthM
    if (floor.form === 'cone') return floor.depthM + (rise * rho) / floor.radiusM
    const sphere = (floor.radiusM ** 2 + rise ** 2) / (2 * Math.abs(rise))
    return floor.depthM + Math.sign(rise) * (sphere - Math.sqrt(sphere ** 2 - rho ** 2))
  }
  if (floor.kind !== 'profile') throw new Error('not for this floor')
  const s = x - floor.axis.from[0]
  const [first] = floor.stations
  let last = first!
  if (s <= last[0]) return last[1]
  for (const station of floor.stations) {
    if (s <= station[0] && station[0] > last[0])
      return last[1] + ((station[1] - last[1]) * (s - last[0])) / (station[0] - last[0])
    last = station
  }
  return last[1]
}

type Ring = readonly (readonly [number, number])[]

function isInside(ring: Ring, x: number, y: number): boolean {
  let inside = false
  for (let i = 0; i < ring.length; i++) {
    const [xa, ya] = ring[i]!
    const [xb, yb] = ring[(i + 1) % ring.length]!
    if (ya > y !== yb > y && x < xa + ((xb - xa) * (y - ya)) / (yb - ya)) inside = !inside
  }
  return inside
}

function distance(ring: Ring, x: number, y: number): number {
  let best = Infinity
  for (let i = 0; i < ring.length; i++) {
    const [xa, ya] = ring[i]!
    const [xb, yb] = ring[(i + 1) % ring.length]!
    const ex = xb - xa
    const ey = yb - ya
    const t = Math.min(1, Math.max(0, ((x - xa) * ex + (y - ya) * ey) / (ex * ex + ey * ey || 1)))
    best = Math.min(best, Math.hypot(x - xa - t * ex, y - ya - t * ey))
  }
  return best
}
