import { Room } from './room.ts'

const cornerRoom = new Room(Int32Array)
const rayRoom = new Room(Int32Array)
const cellRoom = new Room(Int32Array)

/**
 * Triangles of a plan in the making: their corners, counter-clockwise, the ray that each was cut by (−1 beyond the strip) and
 * the cell of each. It works in room that the next one takes over; what `finish` gives stays.
 */
export class PlanTriangles {
  count = 0
  /** Directions of the rays, x and y in turn. */
  readonly rays: number[] = []
  /** Sides where a wall's surface meets another at an angle: two vertices and the cell, in turn. */
  readonly creases: number[] = []
  private corners = cornerRoom.atLeast(0)
  private rayOf = rayRoom.atLeast(0)
  private cellOf = cellRoom.atLeast(0)

  add(a: number, b: number, c: number, rayA: number, rayB: number, rayC: number, cell: number): void {
    const made = this.count++
    const i = 3 * made
    if (i + 3 > this.corners.length || made >= this.cellOf.length) {
      this.corners = cornerRoom.grown(i + 3)
      this.rayOf = rayRoom.grown(i + 3)
      this.cellOf = cellRoom.grown(made + 1)
    }
    this.corners[i] = a
    this.corners[i + 1] = b
    this.corners[i + 2] = c
    this.rayOf[i] = rayA
    this.rayOf[i + 1] = rayB
    this.rayOf[i + 2] = rayC
    this.cellOf[made] = cell
  }

  /** Triangles of a cell beyond the strip, by three corners each. */
  addAll(corners: readonly number[], cell: number): void {
    for (let i = 0; i < corners.length; i += 3)
      this.add(corners[i]!, corners[i + 1]!, corners[i + 2]!, -1, -1, -1, cell)
  }

  /** Takes the last triangles out again, from one on; their corners. */
  takeFrom(first: number): number[] {
    const taken = Array.from(this.corners.subarray(3 * first, 3 * this.count))
    this.count = first
    return taken
  }

  /** 1 for each cell that has a triangle. */
  touched(cells: number): Uint8Array {
    const isTouched = new Uint8Array(cells)
    for (let i = 0; i < this.count; i++) isTouched[this.cellOf[i]!] = 1
    return isTouched
  }

  finish() {
    return {
      triangles: this.corners.slice(0, 3 * this.count),
      rayOf: this.rayOf.slice(0, 3 * this.count),
      cellOf: this.cellOf.slice(0, this.count),
      rays: this.rays,
      creases: this.creases,
    }
  }
}
