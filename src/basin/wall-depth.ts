import { floorDepth, floorGradient } from './cell-depth.ts'
import { evaluate, newJet } from './curve.ts'
import type { Cell, Partition } from './partition-types.ts'
import { planeAt } from './planes.ts'
import { nearestShore } from './shore-distance.ts'
import { shoresOf } from './shores.ts'
import type { Foot } from './span.ts'
import { wallWidth } from './wall-width.ts'
import { wallLaw } from './walls.ts'

export interface WallSample {
  readonly depthM: number
  readonly slope: number
  readonly part: 'floor' | 'wall'
  /** The stretch of shore that it stands at, and how far that is [m]. */
  readonly by: number
  readonly n: number
  /** A vector square to its surface, toward the water; z up. */
  readonly normal: readonly [number, number, number]
}

const jet = newJet()
const near: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** Depth and slope where the wall rules over the floor and the features; nothing elsewhere. */
export function wallAt(p: Partition, cell: Cell, x: number, y: number): WallSample | undefined {
  const law = wallLaw(p.shape.wall)
  if (!law) return undefined
  const by = nearestShore(p, x, y, wallWidth(p), near)
  if (by < 0) return undefined
  const n = near.distance
  const f = floorDepth(p, cell, x, y)
  const allowed = law.allowedM(f, n)
  if (allowed === f || (cell.patch >= 0 && allowed >= planeAt(cell.plane, x, y))) return undefined
  const part = law.part
  const lean = law.leanAt(f, n)
  if (lean === 0) return { depthM: allowed, slope: 0, part, by, n, normal: [0, 0, 1] }
  const [ux, uy] = inward(p, by, x, y)
  // At the shore itself a cove is upright: the vector is scaled so that none of it is infinite.
  const up = 1 / Math.sqrt(1 + lean * lean)
  const along = Number.isFinite(lean) ? lean * up : 1
  const isOver = law.followsFloor(f, n) ? up : 0
  const [fx, fy] = floorGradient(p, cell, x, y)
  const gx = fx * isOver + along * ux
  const gy = fy * isOver + along * uy
  return { depthM: allowed, slope: Math.hypot(gx, gy) / up, part, by, n, normal: [gx, gy, up] }
}

/** The way from the shore to a place; at the shore itself, square to it. */
function inward(p: Partition, by: number, x: number, y: number): [number, number] {
  if (near.distance > p.grainM) return [(x - near.x) / near.distance, (y - near.y) / near.distance]
  const { curve, side } = shoresOf(p)[by]!
  evaluate(curve, near.t, jet)
  const speed = Math.hypot(jet.dx, jet.dy) || 1
  return [(-side * jet.dy) / speed, (side * jet.dx) / speed]
}
