import { cellDepth, floorDepth } from './cell-depth.ts'
import { evaluate, newJet } from './curve.ts'
import { ruleFor } from './edge-integrals.ts'
import { GAUSS_FINE } from './gauss.ts'
import type { Cell, Edge, Partition } from './partition-types.ts'
import { integratePattern, mark, type Patterned } from './pattern-integral.ts'
import { nearestShore } from './shore-distance.ts'
import type { ShoreRun } from './shore-runs.ts'
import { shoresOf } from './shores.ts'
import { type Foot, footOn } from './span.ts'
import { runsOfSteps } from './strip-steps.ts'
import { HAIR } from './tolerance.ts'
import { newSpan, type WallLaw } from './wall-kind.ts'
import { wallWidth } from './wall-width.ts'
import { wallLaw } from './walls.ts'

/** An edge on which depth steps. */
export interface DepthStep {
  readonly edge: Edge
  readonly left: Cell
  readonly right: Cell
}

/** How it is integrated. */
export interface StepRule {
  /** A few rays under a wall. */
  readonly isRough: boolean
  /** True where what is shared out is no polynomial along the edge. */
  readonly isFine: boolean
  /** Rays that it may take. */
  readonly mostRays?: number
}

/** Adds what a force at the place (x, y), at t of the edge, does by each number that the edge hangs on. */
export type AddShares = (t: number, x: number, y: number, fx: number, fy: number, out: Float64Array) => void

const jet = newJet()
const near: Foot = { t: 0, x: 0, y: 0, distance: 0 }
const span = newSpan()
const signs = new Float64Array(32)
let signCount = 0
let nearestBy = -1
let nearestAs = -1

/** The depth step on an edge, if it has one: between cells that are not of one seat, which goes on without a step. */
export function stepOn(p: Partition, edge: Edge): DepthStep | undefined {
  if (edge.left < 0 || edge.right < 0) return undefined
  const left = p.cells[edge.left]!
  const right = p.cells[edge.right]!
  return left.plane === right.plane || left.patch === right.patch ? undefined : { edge, left, right }
}

/** The patch that ends at a step: the one on its shallower side, −1 where floor is, for that goes on beneath the other. */
export function patchThatEnds({ edge, left, right }: DepthStep): number {
  evaluate(edge.curve, (edge.t0 + edge.t1) / 2, jet)
  return cellDepth(left, jet.x, jet.y) < cellDepth(right, jet.x, jet.y) ? left.patch : right.patch
}

/**
 * Adds ∫ (s⁺_left − s⁺_right) (v_x dy − v_y dx) for each number that moves the places of an edge, v its share of a place's
 * move, as `share` tells.
 * Accuracy: rounding with upright walls, 1e-8 with others.
 */
export function integrateStep(
  p: Partition,
  step: DepthStep,
  levelM: number,
  { isRough, isFine, mostRays }: StepRule,
  sums: Float64Array,
  share: AddShares,
): void {
  const { edge, left, right } = step
  const law = wallLaw(p.shape.wall)
  const isSmooth = !law && left.law === undefined && right.law === undefined
  const isFast = isRough && law !== undefined
  if (isFast || (isSmooth && Math.min(left.minDepthM, right.minDepthM) + levelM > 0)) {
    const rule = isFine && !isFast ? GAUSS_FINE : ruleFor(edge.curve)
    if (point.length !== sums.length) point = new Float64Array(sums.length)
    const h = edge.t1 - edge.t0
    const runs = law && (runsOfSteps(p).get(edge) ?? NOWHERE)
    for (let k = 0; k < rule.at.length; k++) {
      addForceAt(p, law, step, levelM, edge.t0 + h * rule.at[k]!, share, point.fill(0), runs)
      for (let i = 0; i < sums.length; i++) sums[i]! += rule.weight[k]! * h * point[i]!
    }
    return
  }
  const f: Patterned = {
    addAt: (t, out) => {
      addForceAt(p, law, step, levelM, t, share, out)
      let name = law ? nearestAs : 0
      for (let i = 0; i < signCount; i++) name = mark(name, signs[i]! > 0 ? 1 : 0)
      return name
    },
    eventsAt: (t, out) => {
      stepAt(p, law, step, levelM, t)
      for (let i = 0; i < signCount; i++) out[i] = signs[i]!
      return signCount
    },
    scales: new Float64Array(sums.length).fill(p.extentM ** 2 * 1e-2),
    ...(mostRays !== undefined && { mostRays }),
  }
  const isSteep = law?.isSteepAtShore ?? false
  integratePattern(f, edge.t0, edge.t1, isSteep, isSteep, sums)
}

let point = new Float64Array(0)
const NOWHERE: readonly ShoreRun[] = []

function addForceAt(
  p: Partition,
  law: WallLaw | undefined,
  step: DepthStep,
  levelM: number,
  t: number,
  share: AddShares,
  out: Float64Array,
  runs?: readonly ShoreRun[],
): void {
  const force = stepAt(p, law, step, levelM, t, runs)
  if (force !== 0) share(t, jet.x, jet.y, force * jet.dy, -force * jet.dx, out)
}

/**
 * Wet depth on the left less that on the right at t of the edge, whose place `jet` then has. What stretch of shore is nearest
 * is sought, unless it is known where along the edge one is.
 */
function stepAt(
  p: Partition,
  law: WallLaw | undefined,
  { edge, left, right }: DepthStep,
  levelM: number,
  t: number,
  runs?: readonly ShoreRun[],
): number {
  evaluate(edge.curve, t, jet)
  signCount = 0
  if (!law) nearestBy = -1
  else if (!runs) nearestBy = nearestShore(p, jet.x, jet.y, wallWidth(p), near)
  else {
    nearestBy = runs.find(({ t0, t1 }) => t >= t0 && t <= t1)?.by ?? -1
    const shore = shoresOf(p)[nearestBy]
    if (shore) footOn(shore.curve, shore.t0, shore.t1, jet.x, jet.y, near)
  }
  nearestAs = nearestBy < 0 ? -1 : nameOf(p, nearestBy)
  const a = depthOf(p, law, left, levelM)
  const b = depthOf(p, law, right, levelM)
  return Math.max(0, a + levelM) - Math.max(0, b + levelM)
}

/** What the foot in `near` lies on: a stretch of shore, or the node where two of them meet, for rounding makes those take turns. */
function nameOf(p: Partition, by: number): number {
  const { edge, t0, t1 } = shoresOf(p)[by]!
  const slack = HAIR * (t1 - t0)
  if (near.t - t0 <= slack) return -2 - p.edges[edge]!.from
  if (t1 - near.t <= slack) return -2 - p.edges[edge]!.to
  return by
}

/** Depth of a cell under the wall at the place in `jet`, n from the shore; notes what tells its pattern. */
function depthOf(p: Partition, law: WallLaw | undefined, cell: Cell, levelM: number): number {
  const ruling = cellDepth(cell, jet.x, jet.y)
  let depthM = ruling
  if (law && nearestBy >= 0) {
    const n = near.distance
    span.isFeature = cell.patch >= 0
    span.hollow = undefined
    span.f0 = floorDepth(p, cell, jet.x, jet.y)
    span.k0 = ruling
    span.f1 = 0
    span.k1 = 0
    depthM = Math.min(ruling, law.allowedM(span.f0, n))
    signCount += law.eventsAt(span, n, levelM, signs, signCount)
  }
  signs[signCount++] = depthM + levelM
  return depthM
}
