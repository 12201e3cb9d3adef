import { cellDepth, cellGradient, floorDepth, floorGradient } from './cell-depth.ts'
import type { Cell, Partition } from './partition-types.ts'
import { meshedLaw, type PlanMesh } from './plan-mesh.ts'
import { type WallWork, wallWork } from './strip-rings.ts'
import { depthIn } from './surface-depth.ts'
import type { WallLaw } from './wall-kind.ts'

/** Depths and normals at the vertices of a plan mesh, by their distance from the shore where a ray tells it. */
export class PlanDepth {
  private readonly p: Partition
  private readonly plan: PlanMesh
  private readonly law: WallLaw | undefined
  /** What the wall does in each cell, as far as that was asked. */
  private readonly works: WallWork[] = []

  constructor(p: Partition, plan: PlanMesh) {
    this.p = p
    this.plan = plan
    this.law = meshedLaw(p)
  }

  /** Depth at a vertex, taken as a point of a cell [m]. */
  at(index: number, v: number): number {
    const { points } = this.plan
    const cell = this.p.cells[index]!
    const x = points.x[v]!
    const y = points.y[v]!
    if (!this.law || this.workIn(index) === 'none') return cellDepth(cell, x, y)
    const n = points.n[v]!
    return n >= 0 ? this.atDistance(index, x, y, n) : depthIn(this.p, cell, x, y).depthM
  }

  /** Depth at a place of a cell that lies so far from the shore [m]. */
  atDistance(index: number, x: number, y: number, n: number): number {
    const cell = this.p.cells[index]!
    const ruling = cellDepth(cell, x, y)
    if (!this.law) return ruling
    const floor = this.floorAt(cell, x, y)
    const allowed = this.law.allowedM(floor, n)
    if (cell.patch >= 0) return Math.min(allowed, ruling)
    return allowed < floor ? allowed : ruling
  }

  /** True where the wall makes the depth at a vertex, or just meets what does. */
  isOnWall(index: number, v: number): boolean {
    const { points } = this.plan
    const n = points.n[v]!
    if (!this.law || !(n >= 0)) return false
    const cell = this.p.cells[index]!
    const x = points.x[v]!
    const y = points.y[v]!
    const floor = this.floorAt(cell, x, y)
    const allowed = this.law.allowedM(floor, n)
    // It allows no more than the floor has: where it just has that, a little more room tells if it makes the difference.
    const ruling = Math.min(floor, cellDepth(cell, x, y))
    return allowed <= ruling + points.mergeM && this.law.leanAt(floor + 4 * points.mergeM, n) > 0
  }

  /** True where the wall makes the depth in the middle of a triangle of the strip. */
  isWalled(i: number): boolean {
    const { law } = this
    if (!law) return false
    const { points, triangles, cellOf } = this.plan
    const work = this.workIn(cellOf[i / 3]!)
    if (work !== 'creased') return work === 'plain'
    const a = triangles[i]!
    const b = triangles[i + 1]!
    const c = triangles[i + 2]!
    const n = (points.n[a]! + points.n[b]! + points.n[c]!) / 3
    if (!(n >= 0)) return false
    const cell = this.p.cells[cellOf[i / 3]!]!
    const x = (points.x[a]! + points.x[b]! + points.x[c]!) / 3
    const y = (points.y[a]! + points.y[b]! + points.y[c]!) / 3
    const floor = this.floorAt(cell, x, y)
    const allowed = law.allowedM(floor, n)
    return allowed < floor && (cell.patch < 0 || allowed < cellDepth(cell, x, y))
  }

  /** A vector square to the surface at a vertex, toward the water, z up; on the wall's face where a ray's direction is given. */
  normal(
    index: number,
    v: number,
    ray: { readonly ux: number; readonly uy: number } | undefined,
    out: Float64Array,
  ): void {
    const { points } = this.plan
    const cell = this.p.cells[index]!
    const x = points.x[v]!
    const y = points.y[v]!
    const n = points.n[v]!
    if (!ray || !this.law || !(n >= 0)) {
      const gradient = cell.law ? cellGradient(cell, x, y) : undefined
      out[0] = gradient ? gradient[0] : cell.plane.dx
      out[1] = gradient ? gradient[1] : cell.plane.dy
      out[2] = 1
      return
    }
    const floor = this.floorAt(cell, x, y)
    const lean = this.law.leanAt(floor, n)
    // At the shore itself a cove is upright: the vector is scaled so that none of it is infinite.
    const up = 1 / Math.sqrt(1 + lean * lean)
    const along = Number.isFinite(lean) ? lean * up : 1
    out[0] = along * ray.ux
    out[1] = along * ray.uy
    if (this.law.followsFloor(floor, n)) {
      const [fx, fy] = floorGradient(this.p, cell, x, y)
      out[0] += fx * up
      out[1] += fy * up
    }
    out[2] = up
  }

  private workIn(index: number): WallWork {
    let work = this.works[index]
    if (work === undefined) {
      work = wallWork(this.p, this.p.cells[index]!)
      this.works[index] = work
    }
    return work
  }

  private floorAt(cell: Cell, x: number, y: number): number {
    return floorDepth(this.p, cell, x, y)
  }
}
