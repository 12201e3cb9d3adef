import type { ShellPoints } from './mesh-levels.ts'
import { Room } from './room.ts'

const pointRoom = new Room(Int32Array)
const normalRoom = new Room(Float32Array)
const indexRoom = new Room(Uint32Array)
const partRoom = new Room(Uint8Array)
const inkRoom = new Room(Int32Array)

const firstRoom = new Room(Int32Array)
const nextRoom = new Room(Int32Array)
const otherRoom = new Room(Int32Array)
const netRoom = new Room(Int8Array)

/**
 * Collects the vertices, triangles and inked lines of a shell. A vertex is a point of the shell with a normal. It works in
 * room that the next one takes over, so only one is in use at a time; what `finish` gives is the caller's own.
 */
export class MeshBuilder {
  private readonly points: ShellPoints
  private vertices = 0
  private point: Int32Array
  private normal: Float32Array
  private triangles = 0
  private index: Uint32Array
  private part: Uint8Array
  private inkEnds = 0
  private ends: Int32Array

  /** For a shell of about so many triangles. */
  constructor(points: ShellPoints, triangles: number) {
    this.points = points
    const count = 2 * triangles + 64
    this.point = pointRoom.atLeast(count)
    this.normal = normalRoom.atLeast(3 * count)
    this.index = indexRoom.atLeast(3 * count)
    this.part = partRoom.atLeast(count)
    this.ends = inkRoom.atLeast(count)
  }

  /** A vertex with its normal, which need not have length 1. */
  vertex(point: number, nx: number, ny: number, nz: number): number {
    const made = this.vertices++
    if (made >= this.point.length || 3 * made + 3 > this.normal.length) {
      this.point = pointRoom.grown(made + 1)
      this.normal = normalRoom.grown(3 * made + 3)
    }
    const scale = 1 / (Math.sqrt(nx * nx + ny * ny + nz * nz) || 1)
    this.point[made] = point
    this.normal[3 * made] = nx * scale
    this.normal[3 * made + 1] = ny * scale
    this.normal[3 * made + 2] = nz * scale
    return made
  }

  /** A triangle of three vertices; `part` is an index into PARTS. */
  triangle(a: number, b: number, c: number, part: number): void {
    const made = this.triangles++
    if (made >= this.part.length || 3 * made + 3 > this.index.length) {
      this.part = partRoom.grown(made + 1)
      this.index = indexRoom.grown(3 * made + 3)
    }
    this.index[3 * made] = a
    this.index[3 * made + 1] = b
    this.index[3 * made + 2] = c
    this.part[made] = part
  }

  /** A line to ink between two points. */
  ink(a: number, b: number): void {
    const made = this.inkEnds
    this.inkEnds += 2
    if (this.inkEnds > this.ends.length) this.ends = inkRoom.grown(this.inkEnds)
    this.ends[made] = a
    this.ends[made + 1] = b
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
    // Each side hangs on the lesser of its points, with how much more often it is passed one way.
    const first = firstRoom.filled(count, -1)
    const next = nextRoom.atLeast(corners)
    const other = otherRoom.atLeast(corners)
    const net = netRoom.atLeast(corners)
    let sides = 0
    let open = 0
    for (let i = 0; i < corners; i++) {
      const a = point[index[i]!]!
      const b = point[index[i % 3 === 2 ? i - 2 : i + 1]!]!
      if (a === b || (depth[a] === rimDepthM && depth[b] === rimDepthM)) continue
      const u = Math.min(a, b)
      const v = Math.max(a, b)
      let k = first[u]!
      while (k >= 0 && other[k] !== v) k = next[k]!
      if (k < 0) {
        k = sides++
        other[k] = v
        net[k] = 0
        next[k] = first[u]!
        first[u] = k
      }
      const before = net[k]!
      const after = before + (a < b ? 1 : -1)
      net[k] = after
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
        const v = vertex[q]!
        out[3 * i] = x[v]! + originX
        out[3 * i + 1] = y[v]! + originY
        out[3 * i + 2] = -depth[q]!
      }
      return out
    }
    return {
      positions: put(new Float32Array(3 * this.vertices), this.point, this.vertices),
      normals: this.normal.slice(0, 3 * this.vertices),
      indices: this.index.slice(0, 3 * this.triangles),
      parts: this.part.slice(0, this.triangles),
      edges: put(new Float32Array(3 * this.inkEnds), this.ends, this.inkEnds),
      rings,
    }
  }
}
