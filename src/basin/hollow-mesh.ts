import { flipToDelaunay } from './flip.ts'
import type { Cell } from './partition-types.ts'
import type { PlanPoints } from './plan-points.ts'
import type { PlanTriangles } from './plan-triangles.ts'
import type { RadialLaw } from './radial-law.ts'

/** Points of a hollow's rings stay away from its border by this share of their spacing. */
const CLEARANCE = 0.4
const MOST_STEPS = 64
/** Turns each ring against the one before, so that no point falls on a line between two others. */
const TWIST = 0.381966

/** Puts rings of vertices into the triangles of a hollow (of cell `index`), which are the last from `first` on, and joins nearest neighbours. */
export function meshHollow(
  cell: Cell,
  law: RadialLaw,
  index: number,
  first: number,
  chordM: number,
  points: PlanPoints,
  out: PlanTriangles,
): void {
  const own = out.takeFrom(first)
  const { x, y } = points
  const border = borderOf(own)
  const { radiusM } = law
  const rings = Math.max(1, Math.ceil(radiusM / hollowStep(law, chordM)))
  const put = (px: number, py: number, clear: number): void => {
    if (px < cell.minX || px > cell.maxX || py < cell.minY || py > cell.maxY) return
    for (let i = 0; i < border.length; i += 2)
      if (distance2(px, py, x[border[i]!]!, y[border[i]!]!, x[border[i + 1]!]!, y[border[i + 1]!]!) < clear * clear)
        return
    const at = triangleAt(own, x, y, px, py)
    if (at < 0) return
    const v = points.add(px, py)
    const [a, b, c] = [own[at]!, own[at + 1]!, own[at + 2]!]
    own[at + 2] = v
    own.push(b, c, v, c, a, v)
  }
  const spacing = radiusM / rings
  put(law.x, law.y, 0.01 * spacing)
  for (let k = 1; k < rings; k++) {
    const r = (radiusM * k) / rings
    const count = Math.max(6, Math.ceil((2 * Math.PI * r) / spacing))
    for (let i = 0; i < count; i++) {
      const angle = (2 * Math.PI * (i + k * TWIST)) / count
      put(law.x + r * Math.cos(angle), law.y + r * Math.sin(angle), CLEARANCE * spacing)
    }
  }
  flipToDelaunay(own, x, y)
  out.addAll(own, index)
}

/** How far apart vertices in a hollow may lie, so that its chords stay within a height [m]. */
export function hollowStep(law: RadialLaw, chordM: number): number {
  return Math.max(Math.sqrt(8 * curvatureM(law) * chordM), law.radiusM / MOST_STEPS)
}

/** Radius of the sphere that a cap is cut from; of a cone, how it bends along its outer ring [m]. */
function curvatureM({ form, radiusM, depthM, edgeDepthM }: RadialLaw): number {
  if (form === 'cone') return radiusM
  const h = Math.abs(depthM - edgeDepthM)
  return (radiusM * radiusM + h * h) / (2 * h)
}

/** Sides of triangles that have no opposite, as pairs of vertices. */
function borderOf(triangles: readonly number[]): number[] {
  const open = new Map<string, [number, number]>()
  for (let i = 0; i < triangles.length; i++) {
    const a = triangles[i]!
    const b = triangles[i % 3 === 2 ? i - 2 : i + 1]!
    if (!open.delete(`${b} ${a}`)) open.set(`${a} ${b}`, [a, b])
  }
  return [...open.values()].flat()
}

function triangleAt(
  triangles: readonly number[],
  x: readonly number[],
  y: readonly number[],
  px: number,
  py: number,
): number {
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!]
    if (
      turn(x[a]!, y[a]!, x[b]!, y[b]!, px, py) >= 0 &&
      turn(x[b]!, y[b]!, x[c]!, y[c]!, px, py) >= 0 &&
      turn(x[c]!, y[c]!, x[a]!, y[a]!, px, py) >= 0
    )
      return i
  }
  return -1
}

function turn(ax: number, ay: number, bx: number, by: number, px: number, py: number): number {
  return (bx - ax) * (py - ay) - (by - ay) * (px - ax)
}

function distance2(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax
  const dy = by - ay
  const length2 = dx * dx + dy * dy
  const t = length2 > 0 ? Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / length2)) : 0
  return (ax + t * dx - px) ** 2 + (ay + t * dy - py) ** 2
}
