import type { ShellPoints } from './mesh-levels.ts'
import { PARTS } from './parts.ts'
import type { Part } from './types.ts'

/** Collects the vertices, triangles and inked lines of a shell. A vertex is a point of the shell with a normal. */
export class MeshBuilder {
  private readonly points: ShellPoints
  private vertices = 0
  private point: Int32Array
  private normal: Float32Array
  private triangles = 0
  private index: Uint32Array
  private part: Uint8Array
  private readonly inked: number[] = []

  /** For a shell of about so many triangles. */
  constructor(points: ShellPoints, triangles: number) {
    this.points = points
    const room = 2 * triangles + 64
    this.point = new Int32Array(room)
    this.normal = new Float32Array(3 * room)
    this.index = new Uint32Array(3 * room)
    this.part = new Uint8Array(room)
  }

  /** A vertex with its normal, which need not have length 1. */
  vertex(point: number, nx: number, ny: number, nz: number): number {
    const made = this.vertices++
    if (made === this.point.length) {
      this.point = withRoom(this.point, new Int32Array(2 * made))
      this.normal = withRoom(this.normal, new Float32Array(6 * made))
    }
    const scale = 1 / (Math.sqrt(nx * nx + ny * ny + nz * nz) || 1)
    this.point[made] = point
    this.normal[3 * made] = nx * scale
    this.normal[3 * made + 1] = ny * scale
    this.normal[3 * made + 2] = nz * scale
    return made
  }

  triangle(a: number, b: number, c: number, part: Part): void {
    const made = this.triangles++
    if (made === this.part.length) {
      this.part = withRoom(this.part, new Uint8Array(2 * made))
      this.index = withRoom(this.index, new Uint32Array(6 * made))
    }
    this.index[3 * made] = a
    this.index[3 * made + 1] = b
    this.index[3 * made + 2] = c
    this.part[made] = PARTS.indexOf(part)
  }

  /** A line to ink between two points. */
  ink(a: number, b: number): void {
    this.inked.push(a, b)
  }

  /** Volume between the shell and the level plane at a depth [m³], as the sum of the tetrahedra from a place of that plane. */
  volumeBelow(depthM: number): number {
    const { depth, vertex, plan } = this.points
    const { x, y } = plan
    const { point, index } = this
    const ox = x[0] ?? 0
    const oy = y[0] ?? 0
    let six = 0
    for (let i = 0; i < 3 * this.triangles; i += 3) {
      const a = point[index[i]!]!
      const b = point[index[i + 1]!]!
      const c = point[index[i + 2]!]!
      const ax = x[vertex[a]!]! - ox
      const ay = y[vertex[a]!]! - oy
      const az = depth[a]! - depthM
      const bx = x[vertex[b]!]! - ox
      const by = y[vertex[b]!]! - oy
      const bz = depth[b]! - depthM
      const cx = x[vertex[c]!]! - ox
      const cy = y[vertex[c]!]! - oy
      const cz = depth[c]! - depthM
      six += ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx)
    }
    return six / 6
  }

  /** How many sides, up to the plane at a depth, aren't passed as often one way as the other. A shell without leaks has none. */
  openSides(rimDepthM: number): number {
    const { depth, count } = this.points
    const { point, index } = this
    const corners = 3 * this.triangles
    let size = 1024
    while (size < corners) size *= 2
    // Each side is kept once, by both its points in one number; where they all cancel, none is passed more often one way.
    const key = new Float64Array(size)
    const net = new Int8Array(size)
    let open = 0
    for (let i = 0; i < corners; i++) {
      const a = point[index[i]!]!
      const b = point[index[i % 3 === 2 ? i - 2 : i + 1]!]!
      if (a === b || (depth[a] === rimDepthM && depth[b] === rimDepthM)) continue
      const u = Math.min(a, b)
      const v = Math.max(a, b)
      const side = u * count + v
      let slot = Math.imul(u, 0x9e3779b1) ^ Math.imul(v, 0x85ebca6b)
      slot = (slot ^ (slot >>> 15)) & (size - 1)
      while (key[slot] !== 0 && key[slot] !== side) slot = (slot + 1) & (size - 1)
      key[slot] = side
      const before = net[slot]!
      const after = before + (a < b ? 1 : -1)
      net[slot] = after
      if (before === 0) open++
      else if (after === 0) open--
    }
    return open
  }

  /** Arrays for drawing, in the plan's own frame. */
  finish(originX: number, originY: number, rings: readonly Float64Array[]) {
    const { vertex, depth, plan } = this.points
    const { x, y } = plan
    const put = (out: Float32Array, points: ArrayLike<number>, count: number): Float32Array => {
      for (let i = 0; i < count; i++) {
        const q = points[i]!
        out[3 * i] = x[vertex[q]!]! + originX
        out[3 * i + 1] = y[vertex[q]!]! + originY
        out[3 * i + 2] = -depth[q]!
      }
      return out
    }
    return {
      positions: put(new Float32Array(3 * this.vertices), this.point, this.vertices),
      normals: this.normal.slice(0, 3 * this.vertices),
      indices: this.index.slice(0, 3 * this.triangles),
      parts: this.part.slice(0, this.triangles),
      edges: put(new Float32Array(3 * this.inked.length), this.inked, this.inked.length),
      rings,
    }
  }
}

function withRoom<T extends Int32Array | Uint32Array | Uint8Array | Float32Array>(old: T, fresh: T): T {
  fresh.set(old)
  return fresh
}
