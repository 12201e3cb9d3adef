import { evaluate, newJet } from './curve.ts'
import { zerosAlong } from './curve-linear.ts'
import { type DishGradient, dishGradient } from './dish-gradient.ts'
import { ruleFor } from './edge-integrals.ts'
import { addFloorMoves } from './floor-moves.ts'
import { integrateHollowFoot } from './hollow-shore.ts'
import { Memory } from './memory.ts'
import type { Partition } from './partition-types.ts'
import { alongLaw } from './radial-integrals.ts'
import { addForce, SLOTS, shoreCurvesOf } from './shore-moves.ts'
import { type Shore, shoresOf } from './shores.ts'
import { addFootprintMoves, type FootprintShare } from './volume-gradient-footprints.ts'
import { footAt, wallFoot } from './wall-foot.ts'
import { addWallGradient } from './wall-gradient.ts'
import { wallLaw } from './walls.ts'
import { wetCell } from './wet-cell.ts'

/** First derivatives of the volume by what shapes it, in the partition's own terms. */
export interface VolumeGradient {
  /** By the numbers of each shore curve, SLOTS for each (shore-moves.ts) [m³/m]. */
  readonly slots: Float64Array
  /** Wet area whose depth a piece of the floor makes, and its first moments: three for each piece [m², m³]. */
  readonly floor: Float64Array
  /** The same for each patch. */
  readonly patches: Float64Array
  /** By the wall's own number, a radius [m³/m] or a run [m³]. */
  wall: number
  /** By what a dish states of its hollow. */
  dish: DishGradient | undefined
  /** By the level, which is the water surface [m²]. */
  level: number
  /** ∫ n ∂d/∂n over the water that the wall's law rules: what a wall that isn't scaled takes from 2 V [m³]. */
  unscaled: number
  /** By what the edges of features are measured with. */
  footprints: readonly FootprintShare[]
}

const jet = newJet()
const known = new Memory<Partition, { readonly levelM: number; readonly g: VolumeGradient }>()

/** The derivatives at a level, integrated to the end; the last level's are remembered, for more than one figure asks for them. */
export function exactGradient(p: Partition, levelM: number): VolumeGradient {
  let last = known.get(p)
  if (last?.levelM !== levelM) {
    last = { levelM, g: volumeGradient(p, levelM, false) }
    known.set(p, last)
  }
  return last.g
}

/**
 * The derivatives of the volume at a level.
 * Equation: V = ∫ s⁺ dA. Where the shore moves outward by δ(l), dV = ∫ δ [s⁺(0) + ∫ (∂d/∂n)(1 − κn) dn] dl, the inner
 *   integral over the wet part of the ray where the wall's law makes the depth; by a depth that weighs w(x, y) in the
 *   floor, dV = ∫ w dA where the floor makes the depth and it is wet.
 * Symbols: s⁺ wet depth, s⁺(0) at the shore; n plan distance from the shore, κ its curvature toward the water.
 * Valid for: first order. Depth goes on without a jump where two shores are equally near, so moving that line adds nothing.
 * Source: transport theorem; own derivation.
 * Accuracy: rounding with upright walls; 1e-9 with others, 1e-2 of the wall's share where only `roughly` is asked for.
 */
export function volumeGradient(p: Partition, levelM: number, roughly: boolean): VolumeGradient {
  const g: VolumeGradient = {
    slots: new Float64Array(SLOTS * shoreCurvesOf(p).of.size),
    floor: new Float64Array(3 * p.floor.pieces.length),
    patches: new Float64Array(3 * p.shape.patches.length),
    wall: 0,
    dish: dishGradient(p, levelM),
    level: 0,
    unscaled: 0,
    footprints: [],
  }
  for (const cell of p.cells) {
    const wet = wetCell(cell, p.edges, levelM, p.extentM)
    if (wet.areaM2 === 0) continue
    const [sums, at] = cell.patch >= 0 ? [g.patches, 3 * cell.patch] : [g.floor, 3 * cell.strip]
    sums[at]! += wet.areaM2
    sums[at + 1]! += wet.areaX
    sums[at + 2]! += wet.areaY
    g.level += wet.areaM2
  }
  const { of } = shoreCurvesOf(p)
  for (const shore of shoresOf(p)) {
    const number = of.get(shore.curve)
    if (number !== undefined) addShore(p, shore, levelM, g.slots, SLOTS * number)
  }
  const law = wallLaw(p.shape.wall)
  if (law) addWallGradient(p, law, levelM, roughly, g)
  addFloorMoves(p, g)
  g.footprints = addFootprintMoves(p, levelM, roughly, g.slots)
  return g
}

/** What moving a stretch of shore does by the water that stands right at it: ∫ s⁺(0) n dl, shared out. */
function addShore(p: Partition, shore: Shore, levelM: number, slots: Float64Array, at: number): void {
  const { curve, t0, t1, side } = shore
  const cell = p.cells[shore.cell]!
  const law = wallLaw(p.shape.wall)
  if (law && p.floor.pieces[cell.strip]!.law) {
    const sums = integrateHollowFoot(p, law, shore, levelM, SLOTS, (t, dx, dy, wet, out) =>
      addForce(curve, t, side * wet * dy, -side * wet * dx, out, 0),
    )
    for (let k = 0; k < SLOTS; k++) slots[at + k]! += sums[k]!
    return
  }
  if (cell.law !== undefined) {
    alongLaw(
      cell,
      cell.law,
      curve,
      t0,
      t1,
      levelM,
      (t, weight) => {
        addForce(curve, t, side * weight * jet.dy, -side * weight * jet.dx, slots, at)
      },
      jet,
    )
    return
  }
  const foot = wallFoot(p, shore)
  const rule = ruleFor(curve)
  const breaks = [t0, t1]
  // Most shores stand deep in the water, and nothing changes along them.
  const { wall } = p.shape
  const leastM = wall.kind === 'cove' ? cell.minDepthM - wall.radiusM : cell.minDepthM
  if (!(leastM > 0 && leastM + levelM > 0 && (cell.patch < 0 || foot.turns.length === 0))) {
    for (const line of foot.turns) breaks.push(...zerosAlong(curve, t0, t1, line))
    for (const { c, gx, gy } of foot.lines) breaks.push(...zerosAlong(curve, t0, t1, { c: c + levelM, gx, gy }))
    breaks.sort(ascending)
  }
  for (let i = 1; i < breaks.length; i++) {
    const ta = breaks[i - 1]!
    const h = breaks[i]! - ta
    if (!(h > 0)) continue
    evaluate(curve, ta + h / 2, jet)
    const { c, gx, gy } = footAt(foot, jet.x, jet.y)
    if (!(c + levelM + gx * jet.x + gy * jet.y > 0)) continue
    for (let k = 0; k < rule.at.length; k++) {
      const t = ta + h * rule.at[k]!
      evaluate(curve, t, jet)
      const weight = rule.weight[k]! * h * side * (c + levelM + gx * jet.x + gy * jet.y)
      addForce(curve, t, weight * jet.dy, -weight * jet.dx, slots, at)
    }
  }
}

function ascending(a: number, b: number): number {
  return a - b
}
