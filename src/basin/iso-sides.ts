import { cellDepth } from './cell-depth.ts'
import { Memory } from './memory.ts'
import type { Partition } from './partition-types.ts'
import { PlanDepth } from './plan-depth.ts'
import type { PlanMesh } from './plan-mesh.ts'
import { shellCorners } from './shell-corners.ts'
import { NEARLY, ROUNDING } from './tolerance.ts'
import { wallLaw } from './walls.ts'

/** The sides of a plan's triangles with the depths at their ends. Triangles on both sides of a step don't share theirs. */
export interface IsoSides {
  /** Side of each corner of each triangle, from it to the next one. */
  readonly sideAt: Int32Array
  /** Depth of each corner [m]. */
  readonly depthAt: Float64Array
  readonly count: number
  /** A corner that each side begins at, and how many triangles it has. */
  readonly cornerOf: Int32Array
  readonly uses: Uint8Array
}

const known = new Memory<PlanMesh, IsoSides>()

/** Sides and depths of a plan mesh. Remembered for each mesh. */
export function isoSides(p: Partition, plan: PlanMesh): IsoSides {
  let sides = known.get(plan)
  if (!sides) {
    sides = build(p, plan)
    known.set(plan, sides)
  }
  return sides
}

function build(p: Partition, plan: PlanMesh): IsoSides {
  const { points, pointAt } = shellCorners(p, plan)
  const corners = pointAt.length
  const sideAt = new Int32Array(corners)
  const depthAt = new Float64Array(corners)
  const cornerOf = new Int32Array(corners)
  const uses = new Uint8Array(corners)
  let size = 1024
  while (size < 2 * corners) size *= 2
  const slots = new Int32Array(size).fill(-1)
  let count = 0
  for (let i = 0; i < corners; i++) {
    const a = pointAt[i]!
    const b = pointAt[i % 3 === 2 ? i - 2 : i + 1]!
    depthAt[i] = points.depth[a]!
    const u = Math.min(a, b)
    const v = Math.max(a, b)
    let slot = Math.imul(u, 0x9e3779b1) ^ Math.imul(v, 0x85ebca6b)
    slot = (slot ^ (slot >>> 15)) & (size - 1)
    for (;;) {
      const side = slots[slot]!
      if (side < 0) break
      const k = cornerOf[side]!
      const c = pointAt[k]!
      const d = pointAt[k % 3 === 2 ? k - 2 : k + 1]!
      // Only two that pass it in opposite ways, so that whatever lies doubled stays apart.
      if (c === b && d === a && uses[side] === 1) break
      slot = (slot + 1) & (size - 1)
    }
    let side = slots[slot]!
    if (side < 0) {
      side = count++
      slots[slot] = side
      cornerOf[side] = i
    }
    uses[side]!++
    sideAt[i] = side
  }
  return { sideAt, depthAt, count, cornerOf, uses }
}

/** Finds places at a depth on the sides of a plan mesh. */
export class IsoPlaces {
  private readonly p: Partition
  private readonly plan: PlanMesh
  private readonly sides: IsoSides
  private readonly depth: PlanDepth
  private readonly isWalled: boolean

  constructor(p: Partition, plan: PlanMesh, sides: IsoSides) {
    this.p = p
    this.plan = plan
    this.sides = sides
    this.depth = new PlanDepth(p, plan)
    this.isWalled = wallLaw(p.shape.wall) !== undefined
  }

  /**
   * Writes the place on a side where it passes a depth, in the plan's own frame. Between two rays the distance from the
   * shore is taken as linear, so that a line at one distance runs as the chords of the shore do.
   */
  at(side: number, depthM: number, out: [number, number]): void {
    const { triangles, cellOf, points } = this.plan
    const i = this.sides.cornerOf[side]!
    const k = i % 3 === 2 ? i - 2 : i + 1
    const u = triangles[i]!
    const v = triangles[k]!
    const da = this.sides.depthAt[i]! - depthM
    const db = this.sides.depthAt[k]! - depthM
    const cell = cellOf[(i / 3) | 0]!
    let s = da / (da - db)
    // An end that lies at the depth but for rounding is the place.
    if (da > 0 === db > 0) s = Math.abs(da) < Math.abs(db) ? 0 : 1
    else {
      const isBent = this.isWalled && points.n[u]! >= 0 && points.n[v]! >= 0
      if (isBent || this.p.cells[cell]!.law) s = this.root(cell, u, v, isBent, depthM, da, db, s)
    }
    out[0] = points.x[u]! + s * (points.x[v]! - points.x[u]!) + this.p.originX
    out[1] = points.y[u]! + s * (points.y[v]! - points.y[u]!) + this.p.originY
  }

  private root(
    cell: number,
    u: number,
    v: number,
    isBent: boolean,
    depthM: number,
    da: number,
    db: number,
    first: number,
  ): number {
    const { points } = this.plan
    let a = 0
    let b = 1
    let fa = da
    let fb = db
    let side = 0
    let s = first
    for (let i = 0; i < 60 && b - a > 4 * ROUNDING; i++) {
      const x = points.x[u]! + s * (points.x[v]! - points.x[u]!)
      const y = points.y[u]! + s * (points.y[v]! - points.y[u]!)
      const f =
        (isBent
          ? this.depth.atDistance(cell, x, y, points.n[u]! + s * (points.n[v]! - points.n[u]!))
          : cellDepth(this.p.cells[cell]!, x, y)) - depthM
      if (Math.abs(f) <= NEARLY * this.p.extentM) return s
      if (f > 0 === fa > 0) {
        a = s
        fa = f
        if (side === 1) fb /= 2
        side = 1
      } else {
        b = s
        fb = f
        if (side === -1) fa /= 2
        side = -1
      }
      s = (a * fb - b * fa) / (fb - fa)
      if (!(s > a && s < b)) s = (a + b) / 2
    }
    return s
  }
}
