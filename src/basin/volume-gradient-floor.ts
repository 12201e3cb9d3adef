import { type Curve, evaluate, newJet } from './curve.ts'
import type { VolumeDerivative } from './derivative-types.ts'
import { addCornerForce } from './floor-moves.ts'
import { NodeSet } from './node-set.ts'
import type { Partition } from './partition-types.ts'
import { ringOf } from './rings.ts'
import { gatherPath, listPath } from './shore-gradient.ts'
import { addForce, addTurn, SLOTS } from './shore-moves.ts'
import { shoresOf } from './shores.ts'
import { type ShoreFoot, shoreFinder } from './tin-site.ts'
import { SMOOTH_RAD, soundingSlack } from './tolerance.ts'
import type { ContoursFloor, SoundingsFloor } from './types.ts'
import type { VolumeGradient } from './volume-gradient.ts'

const jet = newJet()

/**
 * Derivatives by where the soundings of a floor stand, or by what its contours are drawn with.
 * Equation: the force on a corner of a triangle is −∇d ∫ hat dA (floor-moves.ts).
 * Valid for: moves that leave the triangles as they are. A sounding on the shore: moves along it, and none for moves over
 *   land; at a corner where the shore turns round the water, moves over land alone; at one that juts into the water there is
 *   no derivative, and none is listed. Soundings at one place share what moving all of them does.
 * Accuracy: rounding on straight shores and contours; on curved ones as the chords, whose corrections are taken as they are.
 */
export function floorPlaceGradients(p: Partition, g: VolumeGradient): VolumeDerivative[] {
  const { floor } = p.shape
  if (floor.kind === 'soundings') return soundingGradients(p, floor, g)
  return floor.kind === 'contours' ? contourGradients(p, floor, g) : []
}

function contourGradients(p: Partition, floor: ContoursFloor, g: VolumeGradient): VolumeDerivative[] {
  const contours = floor.rings.map(({ path }, i) => {
    const where = `floor.rings[${i}].path`
    const ring = ringOf(path, where, p.originX, p.originY, p.grainM)
    return { path, where, ring, slots: new Float64Array(SLOTS * ring.curves.length) }
  })
  // Contours touch neither themselves nor each other, so that where a curve begins tells which one it is.
  const places = new NodeSet(p.grainM)
  const curves: { slots: Float64Array; at: number }[] = []
  for (const { ring, slots } of contours)
    ring.curves.forEach(({ x0, y0 }, i) => {
      curves[places.at(x0, y0)] = { slots, at: SLOTS * i }
    })
  const force: [number, number] = [0, 0]
  p.floor.pieces.forEach(({ corners }, i) => {
    corners?.forEach(({ on }, k) => {
      const home = on && curves[places.at(on.curve.x0, on.curve.y0)]
      if (!home) return
      force.fill(0)
      addCornerForce(p, g, i, k, force)
      addForce(on.curve, on.t, force[0], force[1], home.slots, home.at)
    })
  })
  return contours.flatMap(({ path, where, ring, slots }) => listPath(gatherPath(p, path, ring, where, slots, 0)))
}

function soundingGradients(p: Partition, { points }: SoundingsFloor, g: VolumeGradient): VolumeDerivative[] {
  const { originX, originY, extentM, grainM } = p
  const finder = shoreFinder(p.rings.slice(0, 1 + p.shape.islands.length), grainM)
  const slack = soundingSlack(extentM, p.shape.tolerance?.planM ?? 0)
  const places = new NodeSet(8 * grainM)
  const feet = points.map(([px, py]) => {
    const x = px - originX
    const y = py - originY
    return finder.nearest(x, y, finder.isWater(x, y) ? 8 * grainM : slack)
  })
  const nodes = points.map(([px, py], i) => places.at(feet[i]?.x ?? px - originX, feet[i]?.y ?? py - originY))
  const forces = places.x.map((): [number, number] => [0, 0])
  const sharers = forces.map(() => 0)
  for (const node of nodes) sharers[node]!++
  p.floor.pieces.forEach(({ corners }, i) => {
    corners?.forEach(({ x, y }, k) => {
      const force = forces[places.at(x, y)]
      if (force) addCornerForce(p, g, i, k, force)
    })
  })
  return points.flatMap((_, i): VolumeDerivative[] => {
    const node = nodes[i]!
    const foot = feet[i]
    const [x, y] = forces[node]!
    const value = foot ? alongShore(p, foot, x, y) : ([x, y] as const)
    if (!value) return []
    const share = 1 / sharers[node]!
    return [{ path: `floor.points[${i}]`, kind: 'sounding', value: [value[0] * share, value[1] * share] }]
  })
}

/** The part of a force that slides a foot along the shore: none where it holds a corner, no answer where the corner lets it go. */
function alongShore(p: Partition, { ring, curve, t }: ShoreFoot, fx: number, fy: number): [number, number] | undefined {
  const { curves } = p.rings[ring]!
  const own = curves[curve]!
  evaluate(own, t, jet)
  const isFirst = Math.hypot(jet.x - own.x0, jet.y - own.y0) <= 8 * p.grainM
  const isLast = Math.hypot(jet.x - own.x1, jet.y - own.y1) <= 8 * p.grainM
  const [ux, uy] = headingOf(own, isFirst ? 0 : isLast ? 1 : t)
  if (isFirst || isLast) {
    const [vx, vy] = headingOf(curves.at((curve + (isFirst ? -1 : 1)) % curves.length)!, isFirst ? 1 : 0)
    const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) * (isFirst ? -1 : 1)
    const side = shoresOf(p).find((shore) => shore.curve === own)?.side ?? 1
    if (side * turn > SMOOTH_RAD) return [0, 0]
    if (side * turn < -SMOOTH_RAD) return undefined
  }
  const along = fx * ux + fy * uy
  return [along * ux, along * uy]
}

const unused = new Float64Array(SLOTS)

function headingOf(curve: Curve, t: number): [number, number] {
  const { x, y } = addTurn(curve, t, 0, unused, 0)
  return [x, y]
}
