import type { ShellPoints } from './mesh-levels.ts'
import { PARTS } from './parts.ts'
import type { Part } from './types.ts'

/** Collects the vertices, triangles and inked lines of a shell. A vertex is a point of the shell with a normal. */
export class MeshBuilder {
  private readonly points: ShellPoints
  private readonly point: number[] = []
  private readonly normal: number[] = []
  private readonly index: number[] = []
  private readonly part: number[] = []
  private readonly inked: number[] = []

  constructor(points: ShellPoints) {
    this.points = points
  }

  /** A vertex with its normal, which need not have length 1. */
  vertex(point: number, nx: number, ny: number, nz: number): number {
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1
    this.point.push(point)
    this.normal.push(nx / length, ny / length, nz / length)
    return this.point.length - 1
  }

  triangle(a: number, b: number, c: number, part: Part): void {
    this.index.push(a, b, c)
    this.part.push(PARTS.indexOf(part))
  }

  /** A line to ink between two points. */
  ink(a: number, b: number): void {
    this.inked.push(a, b)
  }

  /** Volume between the shell and the level plane at a depth [m³], as the sum of the tetrahedra from a place of that plane. */
  volumeBelow(depthM: number): number {
    const { x, y, depth } = this.points
    const { point, index } = this
    const ox = x[0] ?? 0
    const oy = y[0] ?? 0
    let six = 0
    for (let i = 0; i < index.length; i += 3) {
      const a = point[index[i]!]!
      const b = point[index[i + 1]!]!
      const c = point[index[i + 2]!]!
      const ax = x[a]! - ox
      const ay = y[a]! - oy
      const az = depth[a]! - depthM
      const bx = x[b]! - ox
      const by = y[b]! - oy
      const bz = depth[b]! - depthM
      const cx = x[c]! - ox
      const cy = y[c]! - oy
      const cz = depth[c]! - depthM
      six += ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx)
    }
    return six / 6
  }

  /** How many sides, up to the plane at a depth, aren't passed as often one way as the other. A shell without leaks has none. */
  openSides(rimDepthM: number): number {
    const { depth } = this.points
    const { point, index } = this
    let size = 1024
    while (size < 3 * index.length) size *= 2
    const low = new Int32Array(size).fill(-1)
    const high = new Int32Array(size)
    const net = new Int32Array(size)
    let open = 0
    for (let i = 0; i < index.length; i++) {
      const a = point[index[i]!]!
      const b = point[index[i % 3 === 2 ? i - 2 : i + 1]!]!
      if (a === b || (depth[a] === rimDepthM && depth[b] === rimDepthM)) continue
      const u = a < b ? a : b
      const v = a < b ? b : a
      const way = a < b ? 1 : -1
      let slot = (Math.imul(u, 0x9e3779b1) ^ Math.imul(v, 0x85ebca6b)) >>> 0
      slot = (slot ^ (slot >>> 15)) & (size - 1)
      while (low[slot]! >= 0 && (low[slot] !== u || high[slot] !== v)) slot = (slot + 1) & (size - 1)
      if (low[slot]! < 0) {
        low[slot] = u
        high[slot] = v
      }
      const before = net[slot]!
      net[slot] = before + way
      if (before === 0) open++
      else if (before + way === 0) open--
    }
    return open
  }

  /** Arrays for drawing, in the plan's own frame. */
  finish(originX: number, originY: number, rings: readonly Float64Array[]) {
    const { x, y, depth } = this.points
    const put = (out: Float32Array, points: readonly number[]): Float32Array => {
      for (let i = 0; i < points.length; i++) {
        const q = points[i]!
        out[3 * i] = x[q]! + originX
        out[3 * i + 1] = y[q]! + originY
        out[3 * i + 2] = -depth[q]!
      }
      return out
    }
    return {
      positions: put(new Float32Array(3 * this.point.length), this.point),
      normals: Float32Array.from(this.normal),
      indices: Uint32Array.from(this.index),
      parts: Uint8Array.from(this.part),
      edges: put(new Float32Array(3 * this.inked.length), this.inked),
      rings,
    }
  }
}
