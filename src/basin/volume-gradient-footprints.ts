import { cellDepth, floorDepth } from './cell-depth.ts'
import { type Curve, evaluate, newJet } from './curve.ts'
import type { VolumeDerivative } from './derivative-types.ts'
import { ruleFor } from './edge-integrals.ts'
import { GAUSS_FINE } from './gauss.ts'
import { Memory } from './memory.ts'
import { norm } from './norm.ts'
import type { Cell, Edge, Partition } from './partition-types.ts'
import { integratePattern, mark, type Patterned } from './pattern-integral.ts'
import { pathsOf } from './rings.ts'
import { nearestShore } from './shore-distance.ts'
import { addForce, addTurn, SLOTS, shoreCurvesOf } from './shore-moves.ts'
import { type Foot, footOn } from './span.ts'
import type { EdgeOrigin, Patch } from './types.ts'
import { newSpan, type WallLaw } from './wall-kind.ts'
import { wallWidth } from './wall-width.ts'
import { wallLaw } from './walls.ts'

/** Derivatives by what a feature's edges are measured with: a width or radius [m³/m], a centre. */
export interface FootprintShare {
  readonly feature: number
  readonly name: string
  readonly kind: 'width' | 'radius' | 'axis'
  readonly value: number | readonly [dx: number, dy: number]
}

/** Places of an edge's sums: those of the curve that it is measured from, then its width or radius, then its centre. */
const SIZE_AT = SLOTS
const CENTRE_AT = SLOTS + 1
const SUMS = SLOTS + 3

const jet = newJet()
const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }
const near: Foot = { t: 0, x: 0, y: 0, distance: 0 }
const span = newSpan()

/** An edge on which depth steps, with what it moves with. */
interface Mover {
  readonly edge: Edge
  readonly left: Cell
  readonly right: Cell
  readonly patch: Patch
  readonly origin: EdgeOrigin
  /** The shore's curve that it is measured from and its place among them, −1 for none. */
  readonly curve: Curve | undefined
  readonly number: number
}

/**
 * Adds what moving the shore does by the edges of footprints that are measured from it, and returns what their own widths,
 * radii and centres do.
 * Equation: an edge that moves by v gives dV = ∫ (s⁺_left − s⁺_right) (v_x dy − v_y dx). Each place Q of it stands fast on the
 *   shore's frame at its foot P: v = δP + δτ J (Q − P), τ the shore's direction there, J a quarter turn. By the width v is the
 *   shore's normal, by a radius the direction from the centre.
 * Valid for: first order. Where a strip is carried on past the end of its chain and ends in the water, that end is taken to
 *   go with the corner; edges that two footprints share move with the first.
 * Accuracy: rounding with upright walls and straight or round shores, 1e-8 with others; a few rays where only `roughly` is
 *   asked for.
 */
export function addFootprintMoves(
  p: Partition,
  levelM: number,
  roughly: boolean,
  slots: Float64Array,
): FootprintShare[] {
  const shares = new Map<string, { feature: number; name: string; kind: FootprintShare['kind']; sums: Float64Array }>()
  const share = (feature: number, name: string, kind: FootprintShare['kind']): Float64Array => {
    const key = `${feature}.${name}`
    const known = shares.get(key) ?? { feature, name, kind, sums: new Float64Array(2) }
    shares.set(key, known)
    return known.sums
  }
  for (const { measuredFrom, feature } of p.shape.patches) {
    if (measuredFrom?.kind === 'shore') share(feature, 'widthM', 'width')
    if (measuredFrom?.kind !== 'centre') continue
    share(feature, measuredFrom.radiusName, 'radius')
    share(feature, 'centre', 'axis')
  }
  if (shares.size === 0) return []
  const sums = new Float64Array(SUMS)
  for (const mover of moversOf(p)) {
    sums.fill(0)
    integrateMover(p, mover, levelM, roughly, sums)
    const { origin, number, patch } = mover
    if (number >= 0) for (let k = 0; k < SLOTS; k++) slots[SLOTS * number + k]! += sums[k]!
    if (origin.kind === 'shore') share(patch.feature, 'widthM', 'width')[0]! += sums[SIZE_AT]!
    else {
      share(patch.feature, origin.radiusName, 'radius')[0]! += sums[SIZE_AT]!
      const centre = share(patch.feature, 'centre', 'axis')
      centre[0]! += sums[CENTRE_AT]!
      centre[1]! += sums[CENTRE_AT + 1]!
    }
  }
  return [...shares.values()].map(({ feature, name, kind, sums: by }) => ({
    feature,
    name,
    kind,
    value: kind === 'axis' ? [by[0]!, by[1]!] : by[0]!,
  }))
}

/** The same as a list with where each stands in the body. */
export function listFootprints(shares: readonly FootprintShare[]): VolumeDerivative[] {
  return shares.map(({ feature, name, kind, value }) => ({ path: `features[${feature}].${name}`, kind, value }))
}

const known = new Memory<Partition, readonly Mover[]>()

function moversOf(p: Partition): readonly Mover[] {
  let movers = known.get(p)
  if (!movers) {
    movers = findMovers(p)
    known.set(p, movers)
  }
  return movers
}

function findMovers(p: Partition): Mover[] {
  const { patches } = p.shape
  const ofRing = new Map<number, number>()
  pathsOf(p.shape).patches.forEach(({ path }, i) => {
    if (patches[i]!.measuredFrom && !ofRing.has(path)) ofRing.set(path, i)
  })
  const { of } = shoreCurvesOf(p)
  const movers: Mover[] = []
  for (const edge of p.edges) {
    if (edge.left < 0 || edge.right < 0) continue
    const left = p.cells[edge.left]!
    const right = p.cells[edge.right]!
    // One seat in several pieces goes on without a step.
    if (left.plane === right.plane || left.patch === right.patch) continue
    const ring = edge.rings.find((it) => ofRing.has(it))
    if (ring === undefined) continue
    const patch = patches[ofRing.get(ring)!]!
    const origin = patch.measuredFrom!
    const curve = origin.kind === 'shore' ? outlineCurve(p, origin.segment) : undefined
    movers.push({ edge, left, right, patch, origin, curve, number: curve ? (of.get(curve) ?? -1) : -1 })
  }
  return movers
}

/** The curve of a segment of the outline; the line that closes it goes under the number of the last segment. */
function outlineCurve(p: Partition, segment: number): Curve | undefined {
  const { curves, segments } = p.rings[0]!
  const last = p.shape.outline.segments.length - 1
  return curves[segment > last ? segments.lastIndexOf(last) : segments.indexOf(segment)]
}

function integrateMover(p: Partition, mover: Mover, levelM: number, roughly: boolean, sums: Float64Array): void {
  const { edge, left, right, curve } = mover
  const law = wallLaw(p.shape.wall)
  const isSmooth = !law && left.law === undefined && right.law === undefined
  const isRough = roughly && law !== undefined
  if (isRough || (isSmooth && Math.min(left.minDepthM, right.minDepthM) + levelM > 0)) {
    const isCubic = edge.curve.kind === 'cubic' || curve?.kind === 'cubic'
    const rule = isCubic && !isRough ? GAUSS_FINE : ruleFor(edge.curve)
    const point = new Float64Array(SUMS)
    const h = edge.t1 - edge.t0
    for (let k = 0; k < rule.at.length; k++) {
      addAt(p, law, mover, levelM, edge.t0 + h * rule.at[k]!, point.fill(0))
      for (let i = 0; i < SUMS; i++) sums[i]! += rule.weight[k]! * h * point[i]!
    }
    return
  }
  const f: Patterned = {
    addAt: (t, out) => {
      addAt(p, law, mover, levelM, t, out)
      let name = law ? nearestBy : 0
      for (let i = 0; i < signCount; i++) name = mark(name, signs[i]! > 0 ? 1 : 0)
      return name
    },
    eventsAt: (t, out) => {
      addAt(p, law, mover, levelM, t, unused)
      for (let i = 0; i < signCount; i++) out[i] = signs[i]!
      return signCount
    },
    scales: new Float64Array(SUMS).fill(p.extentM ** 2 * 1e-2),
  }
  const isSteep = law?.isSteepAtShore ?? false
  integratePattern(f, edge.t0, edge.t1, isSteep, isSteep, sums)
}

const signs = new Float64Array(32)
const unused = new Float64Array(SUMS)
let signCount = 0
let nearestBy = -1

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

/** Adds the integrands at t of the edge. */
function addAt(
  p: Partition,
  law: WallLaw | undefined,
  mover: Mover,
  levelM: number,
  t: number,
  out: Float64Array,
): void {
  const { edge, left, right, origin, curve } = mover
  evaluate(edge.curve, t, jet)
  signCount = 0
  nearestBy = law ? nearestShore(p, jet.x, jet.y, wallWidth(p), near) : -1
  const a = depthOf(p, law, left, levelM)
  const b = depthOf(p, law, right, levelM)
  const step = Math.max(0, a + levelM) - Math.max(0, b + levelM)
  if (step === 0) return
  const { x, y } = jet
  const fx = step * jet.dy
  const fy = -step * jet.dx
  if (origin.kind === 'centre') {
    const dx = x + p.originX - origin.centre[0]
    const dy = y + p.originY - origin.centre[1]
    const rho = norm(dx, dy)
    out[SIZE_AT]! += (fx * dx + fy * dy) / rho
    out[CENTRE_AT]! += fx
    out[CENTRE_AT + 1]! += fy
    return
  }
  if (!curve) return
  if (origin.end === undefined) footOn(curve, 0, 1, x, y, foot)
  else {
    evaluate(curve, origin.end, jet)
    foot.t = origin.end
    foot.x = jet.x
    foot.y = jet.y
  }
  const dx = x - foot.x
  const dy = y - foot.y
  addForce(curve, foot.t, fx, fy, out, 0)
  const turn = addTurn(curve, foot.t, fy * dx - fx * dy, out, 0)
  if (origin.isCarried) {
    // Square to the wall that is carried on, on the side where the place lies.
    const across = Math.sign(turn.x * dy - turn.y * dx)
    out[SIZE_AT]! += across * (fy * turn.x - fx * turn.y)
    return
  }
  const distance = norm(dx, dy)
  if (distance > p.grainM) out[SIZE_AT]! += (fx * dx + fy * dy) / distance
}
