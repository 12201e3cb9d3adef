import type { ShellPoints } from './mesh-levels.ts'
import { Room } from './room.ts'
import type { BasinMesh, Point } from './types.ts'

const pointRoom = new Room(Int32Array)
const normalRoom = new Room(Float32Array)
const indexRoom = new Room(Uint32Array)
const partRoom = new Room(Uint8Array)
const inkRoom = new Room(Int32Array)

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
    let sum = 0
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
      // Divided here: an operation after the loop would be the first of its kind each time that the loop is made faster.
      sum += (ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx)) / 6
    }
    return sum
  }

  /**
   * True where each side, up to the plane at a depth, is passed as often one way as the other: the shell has no leaks.
   * Method: each side adds two numbers of 32 bits that its points make, less than nothing the other way. Where all cancel both
   *   sums are zero; where some don't, they both are by one chance in some 2³² only.
   */
  isClosed(rimDepthM: number): boolean {
    const { depth } = this.points
    const { point, index } = this
    let one = 0
    let other = 0
    for (let i = 0; i < 3 * this.triangles; i += 3) {
      let a = point[index[i + 2]!]!
      for (let k = i; k < i + 3; k++) {
        const b = point[index[k]!]!
        if (a !== b && !(depth[a] === rimDepthM && depth[b] === rimDepthM)) {
          const mark = a < b ? sideMark(a, b) : -sideMark(b, a)
          one = (one + mark) | 0
          other = (other + Math.imul(mark, Math.imul(a ^ b, 0x2c1b3c6d) ^ (a + b))) | 0
        }
        a = b
      }
    }
    return one === 0 && other === 0
  }

  /** Arrays for drawing, from the origin of the partition's frame. */
  finish(origin: Point, rings: readonly Float64Array[]): BasinMesh {
    const { vertex, depth, plan } = this.points
    const { x, y } = plan
    const put = (out: Float32Array, points: ArrayLike<number>, count: number): Float32Array => {
      for (let i = 0; i < count; i++) {
        const q = points[i]!
        const v = vertex[q]!
        out[3 * i] = x[v]!
        out[3 * i + 1] = y[v]!
        out[3 * i + 2] = -depth[q]!
      }
      return out
    }
    return {
      origin,
      positions: put(new Float32Array(3 * this.vertices), this.point, this.vertices),
      normals: this.normal.slice(0, 3 * this.vertices),
      indices: this.index.slice(0, 3 * this.triangles),
      parts: this.part.slice(0, this.triangles),
      edges: put(new Float32Array(3 * this.inkEnds), this.ends, this.inkEnds),
      rings,
    }
  }
}

/** A number of 32 bits for two points, the lesser one first; for any two others it is another one, but for chance. */
function sideMark(u: number, v: number): number {
  let mark = Math.imul(u, 0x9e3779b1) ^ Math.imul(v, 0x85ebca6b)
  mark = Math.imul(mark ^ (mark >>> 16), 0x7feb352d)
  mark = Math.imul(mark ^ (mark >>> 15), 0x846ca68b)
  return mark ^ (mark >>> 16)
}
