import type { BasinMesh, ContourLine } from '../../basin/index.ts'

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

/** The sharp lines below the rim: treads, shelves and breaks of the floor. The rim itself is drawn from its rings. */
export function innerEdges(edges: Float32Array, rimM: number): Float32Array {
  const near = 1e-3
  const out: number[] = []
  for (let i = 0; i + 5 < edges.length; i += 6) {
    if (Math.abs(edges[i + 2]! - rimM) < near && Math.abs(edges[i + 5]! - rimM) < near) continue
    for (let k = 0; k < 6; k++) out.push(edges[i + k]!)
  }
  return new Float32Array(out)
}
