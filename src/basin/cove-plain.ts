import { type Fans, type Ray, rayAt } from './cove-fan.ts'
import { addCovePiece, COVE_SUMS } from './cove-inner.ts'
import type { FanPlan } from './cove-outer.ts'
import { rangeAlong } from './curve-linear.ts'
import { GAUSS_ARC } from './gauss.ts'
import type { Partition } from './partition-types.ts'
import { slopeOf } from './planes.ts'

const ray: Ray = { x: 0, y: 0, nx: 0, ny: 0, h0: 0, h1: 0 }
const VOLUME = COVE_SUMS.indexOf('volume')
const BEFORE = COVE_SUMS.indexOf('floorBefore')
const AFTER = COVE_SUMS.indexOf('floorAfter')

/**
 * The cove along a line or arc with nothing in its way: no other shore, no edge of a cell within r, floor deeper than the
 * cove is high, all of it under water. Then the tube formula holds on any floor; returns whether it did.
 * Equation: ΔV = P M0 − K M1, M0 = r²(1 − π/4), M1 = r³(5/6 − π/4); P length, K turn toward the water.
 *   Wetted on a level floor: P r π/2 − K r²(π/2 − 1) instead of P r − K r²/2.
 * Source: Steiner's formula for parallel curves.
 * Accuracy: rounding.
 */
export function sumPlainFan(
  p: Partition,
  fans: Fans,
  plan: FanPlan,
  r: number,
  levelM: number,
  wetted: boolean,
  sums: Float64Array,
): boolean {
  const { fan } = plan
  if (fan.shore < 0 || plan.rivals.length > 0 || plan.near.length > 0) return false
  const { curve, t0, t1, side, edge } = fans.shores[fan.shore]!
  if (curve.kind === 'cubic' || fans.bend[fan.shore]! * r > 1) return false
  const cell = p.cells[fan.cell]!
  if (cell.part !== 'floor') return false
  const { plane } = cell
  const [lo] = rangeAlong(curve, t0, t1, { c: plane.atOrigin, gx: plane.dx, gy: plane.dy })
  const shallowest = lo - slopeOf(plane) * r
  if (shallowest < r || shallowest - r + levelM < 0) return false
  const length = p.edges[edge]!.length
  const turn = curve.kind === 'arc' ? side * curve.turn * (t1 - t0) : 0
  sums[VOLUME]! += length * r * r * (1 - Math.PI / 4) - turn * r * r * r * (5 / 6 - Math.PI / 4)
  if (!wetted) return true
  if (plane.dx === 0 && plane.dy === 0) {
    sums[BEFORE]! += length * r - (turn * r * r) / 2
    sums[AFTER]! += (length * r * Math.PI) / 2 - turn * r * r * (Math.PI / 2 - 1)
    return true
  }
  const one = new Float64Array(COVE_SUMS.length)
  const whole = { from: 0, to: r, floor: plane, ruling: plane, isFeature: false }
  for (let i = 0; i < GAUSS_ARC.at.length; i++) {
    rayAt(fans, fan, t0 + (t1 - t0) * GAUSS_ARC.at[i]!, ray)
    addCovePiece(ray, whole, r, levelM, true, one.fill(0))
    const weight = GAUSS_ARC.weight[i]! * (t1 - t0)
    sums[BEFORE]! += weight * one[BEFORE]!
    sums[AFTER]! += weight * one[AFTER]!
  }
  return true
}
