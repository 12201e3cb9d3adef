import { type Curve, evaluate, newJet } from './curve.ts'
import type { VolumeDerivative } from './derivative-types.ts'
import type { Partition } from './partition-types.ts'
import { raysForEach } from './pattern-integral.ts'
import { pathsOf } from './rings.ts'
import { gatherPath, listPath } from './shore-gradient.ts'
import { addForce, SLOTS } from './shore-moves.ts'
import { type Foot, footOn } from './span.ts'
import type { Axis, Path } from './types.ts'
import type { VolumeGradient } from './volume-gradient.ts'
import { type AddShares, type DepthStep, integrateStep, patchThatEnds, stepOn } from './volume-gradient-step.ts'

/** A feature that states its own footprint, and the sums of what its numbers do. */
interface Drawn {
  readonly path: Path
  readonly ring: number
  /** By the numbers of its curves, SLOTS for each. */
  readonly slots: Float64Array
  /** By where treads begin along the axis. */
  readonly places: Map<string, number>
  readonly axis: Axis | undefined
  /** By the first end of the axis, then by the last one. */
  readonly ends: Float64Array
}

/** Places of a band's sums: where the line lies along the axis, then the axis' two ends. */
const BAND_SUMS = 5
/** How near to the line of a tread an edge is taken to lie on it, in extents: far above the grain, far below any tread. */
const NEAR = 1e-7

const jet = newJet()
const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/**
 * Derivatives by the nodes, handles and bulges of the features' own footprints, by where straight treads begin, and by the
 * ends of the axes of flights and ramps.
 * Equation: an edge that moves by v gives dV = ∫ (s⁺_left − s⁺_right) (v_x dy − v_y dx). A line across an axis at s moves
 *   along it by 1 for each unit of s, by u + n (r·n)/L and −n (r·n)/L for each move of `from` and `to`. A ramp's depth hangs
 *   on τ = r·a/L²: ∂τ/∂to = (r − 2τ a)/L², ∂τ/∂from = −a/L² − ∂τ/∂to, so dV = (d_to − d_from) ∫ ∂τ dA.
 * Symbols: a the axis, L its length, u its direction, n square to it; r place less `from`.
 * Valid for: first order. Where an edge lies on the shore, moves over land: no water is there. Where it lies on that of another
 *   footprint, moves by which the shallower one grows and the deeper one stays hidden. Where the line of a tread lies on the
 *   footprint's own edge, moves by which the tread shrinks. An axis shorter than the grain has no derivative by its ends.
 * Accuracy: rounding with upright walls, 1e-8 with others.
 */
export function drawnGradients(p: Partition, g: VolumeGradient, levelM: number): VolumeDerivative[] {
  const drawn = drawnFeatures(p)
  if (drawn.size === 0) return []
  const moves = movesOf(p, drawn)
  const mostRays = raysForEach(moves.length)
  for (const move of moves) {
    const sums = new Float64Array(move.curve ? SLOTS : BAND_SUMS)
    const isFine = move.step.edge.curve.kind === 'cubic'
    integrateStep(p, move.step, levelM, { isRough: false, isFine, mostRays }, sums, sharesOf(p, move))
    const { slots, places, ends } = move.of
    if (move.curve) for (let k = 0; k < SLOTS; k++) slots[SLOTS * move.number + k]! += sums[k]!
    else {
      places.set(move.place, (places.get(move.place) ?? 0) + sums[0]!)
      for (let k = 0; k < 4; k++) ends[k]! += sums[1 + k]!
    }
  }
  p.shape.patches.forEach(({ feature }, i) => {
    addSlope(p, g, i, drawn.get(feature))
  })
  return [...drawn].flatMap(([feature, { path, ring, slots, places, axis, ends }]) => {
    const where = `features[${feature}]`
    return [
      ...listPath(gatherPath(p, path, p.rings[ring]!, `${where}.path`, slots, 0)),
      ...[...places].map(([name, value]) => ({ path: `${where}.${name}`, kind: 'station' as const, value })),
      ...(axis && hasDirection(p, axis) ? listAxis(`${where}.axis`, ends) : []),
    ]
  })
}

function listAxis(where: string, [fromX, fromY, toX, toY]: Float64Array): VolumeDerivative[] {
  return [
    { path: `${where}.from`, kind: 'axis', value: [fromX!, fromY!] },
    { path: `${where}.to`, kind: 'axis', value: [toX!, toY!] },
  ]
}

/** Whether moving an axis' ends turns it gradually: one within the grain is turned round by less than rounding. */
function hasDirection(p: Partition, { from, to }: Axis): boolean {
  return Math.hypot(to[0] - from[0], to[1] - from[1]) > p.grainM
}

/** By their numbers, those features whose footprint isn't measured from anything. */
function drawnFeatures(p: Partition): Map<number, Drawn> {
  const drawn = new Map<number, Drawn>()
  pathsOf(p.shape).patches.forEach(({ path: ring }, i) => {
    const { feature, path, measuredFrom, band } = p.shape.patches[i]!
    if (measuredFrom) return
    const known = drawn.get(feature) ?? {
      path,
      ring,
      slots: new Float64Array(SLOTS * p.rings[ring]!.curves.length),
      places: new Map(),
      axis: band?.axis,
      ends: new Float64Array(4),
    }
    for (const name of band?.names ?? []) known.places.set(name, 0)
    drawn.set(feature, known)
  })
  return drawn
}

/** An edge that moves with a curve of a footprint, or with the line where a tread begins. */
type Move = { readonly step: DepthStep; readonly of: Drawn } & (
  | { readonly curve: Curve; readonly number: number }
  | { readonly curve?: undefined; readonly axis: Axis; readonly place: string }
)

function movesOf(p: Partition, drawn: ReadonlyMap<number, Drawn>): Move[] {
  const moves: Move[] = []
  for (const edge of p.edges) {
    const step = stepOn(p, edge)
    if (!step) continue
    const patch = p.shape.patches[patchThatEnds(step)]
    const of = patch && !patch.measuredFrom && drawn.get(patch.feature)
    if (!patch || !of) continue
    const { rings, curve, t0, t1 } = edge
    evaluate(curve, (t0 + t1) / 2, jet)
    if (rings.includes(of.ring)) {
      const number = curveAt(p.rings[of.ring]!.curves, curve, jet.x, jet.y)
      moves.push({ step, of, curve: p.rings[of.ring]!.curves[number]!, number })
      continue
    }
    const { axis, names, fromM, toM } = patch.band ?? {}
    if (!axis || !names) continue
    const { s } = alongAxis(p, axis, jet.x, jet.y)
    const offs = [Math.abs(s - fromM!), Math.abs(s - toM!)] as const
    const which = offs[0] < offs[1] ? 0 : 1
    // Elsewhere two depths are equal.
    if (offs[which] < NEAR * p.extentM) moves.push({ step, of, axis, place: names[which] })
  }
  return moves
}

/** The one of a ring's curves that an edge lies on: its own, or the one that it was joined with. */
function curveAt(curves: readonly Curve[], curve: Curve, x: number, y: number): number {
  const own = curves.indexOf(curve)
  if (own >= 0) return own
  let best = 0
  let least = Infinity
  for (let i = 0; i < curves.length; i++) {
    footOn(curves[i]!, 0, 1, x, y, foot)
    if (foot.distance >= least) continue
    least = foot.distance
    best = i
  }
  return best
}

/** Distance along an axis and across it, and its direction and length. */
function alongAxis(p: Partition, { from, to }: Axis, x: number, y: number) {
  const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1])
  const ux = (to[0] - from[0]) / lengthM
  const uy = (to[1] - from[1]) / lengthM
  const rx = x + p.originX - from[0]
  const ry = y + p.originY - from[1]
  return { s: rx * ux + ry * uy, across: ry * ux - rx * uy, ux, uy, lengthM }
}

function sharesOf(p: Partition, move: Move): AddShares {
  const { curve } = move
  if (curve) {
    if (curve === move.step.edge.curve) return (t, _x, _y, fx, fy, out) => addForce(curve, t, fx, fy, out, 0)
    return (_, x, y, fx, fy, out) => addForce(curve, footOn(curve, 0, 1, x, y, foot).t, fx, fy, out, 0)
  }
  return (_, x, y, fx, fy, out) => {
    const { across, ux, uy, lengthM } = alongAxis(p, move.axis, x, y)
    const f = fx * ux + fy * uy
    // n is (−u_y, u_x).
    const turn = lengthM > p.grainM ? (f * across) / lengthM : 0
    out[0]! += f
    out[1]! += f * ux - turn * uy
    out[2]! += f * uy + turn * ux
    out[3]! += turn * uy
    out[4]! -= turn * ux
  }
}

/** Adds what a slope along an axis does by its ends, whose depths go with them. */
function addSlope(p: Partition, g: VolumeGradient, patch: number, of: Drawn | undefined): void {
  const { plane, band } = p.shape.patches[patch]!
  if (!of || !band || (plane.dx === 0 && plane.dy === 0)) return
  const { from, to } = band.axis
  const ax = to[0] - from[0]
  const ay = to[1] - from[1]
  const square = ax * ax + ay * ay
  const fall = plane.dx * ax + plane.dy * ay
  const area = g.patches[3 * patch]!
  const rx = g.patches[3 * patch + 1]! + (p.originX - from[0]) * area
  const ry = g.patches[3 * patch + 2]! + (p.originY - from[1]) * area
  const twice = (2 * (rx * ax + ry * ay)) / square
  const byX = (fall * (rx - twice * ax)) / square
  const byY = (fall * (ry - twice * ay)) / square
  of.ends[0]! -= (fall * ax * area) / square + byX
  of.ends[1]! -= (fall * ay * area) / square + byY
  of.ends[2]! += byX
  of.ends[3]! += byY
}
