import type { BasinMesh, ContourLine, Part } from '../../basin/index.ts'

/** Contour lines as pairs of end points; each lies level at its depth. */
export function contourSegments(lines: readonly ContourLine[]): Float32Array {
  const out: number[] = []
  for (const { depthM, closed, points } of lines) {
    const count = closed ? points.length : points.length - 1
    for (let i = 0; i < count; i++) {
      const [a, b] = [points[i]!, points[(i + 1) % points.length]!]
      out.push(a[0], a[1], -depthM, b[0], b[1], -depthM)
    }
  }
  return new Float32Array(out)
}

/** The rim's rings as pairs of end points. */
export function rimSegments(rings: BasinMesh['rings'], rimM: number): Float32Array {
  const out: number[] = []
  for (const ring of rings)
    for (let i = 0; i < ring.length; i += 2) {
      const next = (i + 2) % ring.length
      out.push(ring[i]!, ring[i + 1]!, rimM, ring[next]!, ring[next + 1]!, rimM)
    }
  return new Float32Array(out)
}

export interface InnerEdges {
  /** Edges of treads and shelves. */
  readonly steps: Float32Array
  /** Where the floor or its cove changes its slope. */
  readonly breaks: Float32Array
}

type Sample = (x: number, y: number) => { readonly depthM: number; readonly part: Part } | undefined

/** How far to the sides of an edge the parts beside it are looked up [m]. */
const ASIDE_M = 0.002

/** The sharp lines below the rim, told apart by what lies on their two sides. The rim itself is drawn from its rings. */
export function innerEdges(edges: Float32Array, rimM: number, sampleAt: Sample): InnerEdges {
  const near = 1e-3
  const steps: number[] = []
  const breaks: number[] = []
  for (let i = 0; i + 5 < edges.length; i += 6) {
    const [ax, ay, az, bx, by, bz] = [...edges.subarray(i, i + 6)] as [number, number, number, number, number, number]
    if (Math.abs(az - rimM) < near && Math.abs(bz - rimM) < near) continue
    const run = Math.hypot(bx - ax, by - ay)
    const [nx, ny] = run > 0 ? [((ay - by) / run) * ASIDE_M, ((bx - ax) / run) * ASIDE_M] : [0, 0]
    const [x, y] = [(ax + bx) / 2, (ay + by) / 2]
    const sides = [sampleAt(x + nx, y + ny), sampleAt(x - nx, y - ny)]
    const isBreak = run > 0 && sides.every((side) => side !== undefined && side.part !== 'feature')
    ;(isBreak ? breaks : steps).push(ax, ay, az, bx, by, bz)
  }
  return { steps: new Float32Array(steps), breaks: new Float32Array(breaks) }
}
