import { PARTS } from './parts.ts'
import type { Part } from './types.ts'

/** Collects the vertices, triangles and inked lines of a shell. */
export class MeshBuilder {
  private readonly position: number[] = []
  private readonly normal: number[] = []
  private readonly index: number[] = []
  private readonly part: number[] = []
  private readonly edge: number[] = []

  /** A vertex with its normal, which need not have length 1. */
  vertex(x: number, y: number, z: number, nx: number, ny: number, nz: number): number {
    const length = Math.hypot(nx, ny, nz) || 1
    this.position.push(x, y, z)
    this.normal.push(nx / length, ny / length, nz / length)
    return this.position.length / 3 - 1
  }

  triangle(a: number, b: number, c: number, part: Part): void {
    this.index.push(a, b, c)
    this.part.push(PARTS.indexOf(part))
  }

  ink(x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): void {
    this.edge.push(x0, y0, z0, x1, y1, z1)
  }

  /** Volume between the shell and the level plane at height z [m³], as the sum of the tetrahedra from a point of it. */
  volumeBelow(z: number): number {
    const { position: p, index } = this
    let six = 0
    const ox = p[0] ?? 0
    const oy = p[1] ?? 0
    for (let i = 0; i < index.length; i += 3) {
      const a = 3 * index[i]!
      const b = 3 * index[i + 1]!
      const c = 3 * index[i + 2]!
      const ax = p[a]! - ox
      const ay = p[a + 1]! - oy
      const az = p[a + 2]! - z
      const bx = p[b]! - ox
      const by = p[b + 1]! - oy
      const bz = p[b + 2]! - z
      const cx = p[c]! - ox
      const cy = p[c + 1]! - oy
      const cz = p[c + 2]! - z
      six += ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx)
    }
    return -six / 6
  }

  finish(rings: readonly Float64Array[]) {
    return {
      positions: Float32Array.from(this.position),
      normals: Float32Array.from(this.normal),
      indices: Uint32Array.from(this.index),
      parts: Uint8Array.from(this.part),
      edges: Float32Array.from(this.edge),
      rings,
    }
  }
}
