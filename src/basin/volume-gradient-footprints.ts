import { type Curve, evaluate, newJet } from './curve.ts'
import type { VolumeDerivative } from './derivative-types.ts'
import { footAtWidth } from './foot-at-width.ts'
import { Memory } from './memory.ts'
import { norm } from './norm.ts'
import type { Partition } from './partition-types.ts'
import { pathsOf } from './rings.ts'
import { addForce, addTurn, SLOTS, shoreCurvesOf } from './shore-moves.ts'
import type { Foot } from './span.ts'
import type { EdgeOrigin } from './types.ts'
import { type DepthStep, integrateStep, patchThatEnds, stepOn } from './volume-gradient-step.ts'

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

/** A depth step on an edge that is measured from something, and what it moves with. */
interface Mover {
  readonly step: DepthStep
  readonly feature: number
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
 *   go with the corner; an edge that footprints share moves with the shallower one.
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
    const { origin, number, feature } = mover
    if (number >= 0) for (let k = 0; k < SLOTS; k++) slots[SLOTS * number + k]! += sums[k]!
    if (origin.kind === 'shore') share(feature, 'widthM', 'width')[0]! += sums[SIZE_AT]!
    else {
      share(feature, origin.radiusName, 'radius')[0]! += sums[SIZE_AT]!
      const centre = share(feature, 'centre', 'axis')
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
  const ofRing = new Map<number, number[]>()
  /** Rings of one feature alone, by its number; −1 where several have the very same footprint. */
  const featureOf = new Map<number, number>()
  pathsOf(p.shape).patches.forEach(({ path, except }, i) => {
    const { feature, measuredFrom } = patches[i]!
    for (const ring of [path, except]) featureOf.set(ring, (featureOf.get(ring) ?? feature) === feature ? feature : -1)
    if (!measuredFrom) return
    const here = ofRing.get(path)
    if (here) here.push(i)
    else ofRing.set(path, [i])
  })
  const { of } = shoreCurvesOf(p)
  const movers: Mover[] = []
  for (const edge of p.edges) {
    const { rings } = edge
    if (!rings.some((ring) => ofRing.has(ring))) continue
    const step = stepOn(p, edge)
    if (!step) continue
    const alone = rings.length === 1 ? featureOf.get(rings[0]!)! : -1
    // Where footprints share an edge it is the one's that ends there.
    const feature = alone >= 0 ? alone : patches[patchThatEnds(step)]?.feature
    const i = rings.flatMap((ring) => ofRing.get(ring) ?? []).find((it) => patches[it]!.feature === feature)
    if (i === undefined) continue
    const origin = patches[i]!.measuredFrom!
    const curve = origin.kind === 'shore' ? outlineCurve(p, origin.segment) : undefined
    movers.push({ step, feature: patches[i]!.feature, origin, curve, number: curve ? (of.get(curve) ?? -1) : -1 })
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
  const { step, origin, curve } = mover
  const isFine = step.edge.curve.kind === 'cubic' || curve?.kind === 'cubic'
  integrateStep(p, step, levelM, { isRough: roughly, isFine }, sums, (_, x, y, fx, fy, out) => {
    if (origin.kind === 'shore') {
      if (curve) addByShore(p, origin, curve, x, y, fx, fy, out)
      return
    }
    const dx = x + p.originX - origin.centre[0]
    const dy = y + p.originY - origin.centre[1]
    const rho = norm(dx, dy)
    out[SIZE_AT]! += (fx * dx + fy * dy) / rho
    out[CENTRE_AT]! += fx
    out[CENTRE_AT + 1]! += fy
  })
}

/** Shares out a force at a place that stands fast on the shore's frame at its foot. */
function addByShore(
  p: Partition,
  origin: EdgeOrigin & { readonly kind: 'shore' },
  curve: Curve,
  x: number,
  y: number,
  fx: number,
  fy: number,
  out: Float64Array,
): void {
  let isAtWidth = true
  if (origin.end === undefined) isAtWidth = footAtWidth(curve, x, y, origin.widthM, foot)
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
  // Where the normals end at the evolute of a tight bend, the width moves nothing.
  const distance = norm(dx, dy)
  if (isAtWidth && distance > p.grainM) out[SIZE_AT]! += (fx * dx + fy * dy) / distance
}
