import { fail, ok, type Result } from '../base/index.ts'
import type { Arrangement } from './arrangement.ts'
import { bandPlanes } from './break-lines.ts'
import { evaluate, newJet } from './curve.ts'
import { rangeAlong } from './curve-linear.ts'
import { lengthMoments } from './edge-integrals.ts'
import { type Faces, isInside } from './faces.ts'
import type { FloorPlan } from './floor-kind.ts'
import type { HalfPlane } from './half-planes.ts'
import type { Cell, Edge, Partition } from './partition-types.ts'
import { planeAt } from './planes.ts'
import { noWater, problem } from './problems.ts'
import { stretchesOf } from './radial-integrals.ts'
import { depthAtRadius, type RadialLaw } from './radial-law.ts'
import { radiusRange } from './radius-along.ts'
import type { PatchRings, Ring } from './rings.ts'
import { HAIR, ROUNDING } from './tolerance.ts'
import type { BasinShape, Plane } from './types.ts'
import { radialMeans } from './wet-radial.ts'

/** All that the division of a plan works on, in the partition's frame. */
export interface Division {
  readonly shape: BasinShape
  readonly rings: readonly Ring[]
  readonly floor: FloorPlan
  readonly patchRings: readonly PatchRings[]
  readonly patchPlanes: readonly Plane[]
  readonly originX: number
  readonly originY: number
  readonly extentM: number
  readonly grainM: number
}

/** Faces that hold water become cells, each with the shallowest depth over it; the areas must add up to the outline's. */
export function buildCells(
  division: Division,
  arrangement: Arrangement,
  faces: Faces,
  around: readonly ReadonlySet<number>[],
  waterM2: number,
  crossM2: number,
): Result<Partition> {
  const { shape, rings, floor, grainM, extentM } = division
  const islands = shape.islands.length
  for (let ring = 1; ring <= islands; ring++) {
    const within = around.filter((set) => set.has(ring))
    if (within.every((set) => set.has(0))) continue
    // Shores don't cross here: an island with the outline on some of it has the whole outline on it.
    const { where } = rings[ring]!
    if (within.some((set) => set.has(0))) return fail(noWater('island', where, [startOf(division, ring)]))
    return fail(problem('island-outside', where, [startOf(division, ring)]))
  }
  for (let ring = 1; ring <= islands; ring++)
    for (let other = 1; other <= islands; other++)
      if (other !== ring && around.every((set) => !set.has(ring) || set.has(other)))
        return fail(problem('island-in-island', rings[ring]!.where, [startOf(division, ring)]))
  const ruler = patchRuler(division)
  const cellOfFace = new Int32Array(faces.faces.length).fill(-1)
  const cells: Cell[] = []
  const loopsOfCells: number[][][] = []
  const seen = new Set<number>()
  let sumM2 = 0
  for (let f = 1; f < faces.faces.length; f++) {
    const set = around[f]!
    if (!isWater(set, islands)) continue
    const { outer, holes } = faces.faces[f]!
    const loops = [outer, ...holes].map((i) => faces.loops[i]!)
    let areaM2 = 0
    let mx = 0
    let my = 0
    for (const { moments } of loops) {
      areaM2 += moments.area
      mx += moments.areaX
      my += moments.areaY
    }
    sumM2 += areaM2
    const [centreX, centreY] = areaM2 > 0 ? [mx / areaM2, my / areaM2] : middleOf(loops[0]!.halves, arrangement)
    const round =
      floor.pieceOf &&
      stretchesOf(
        loops.map((loop) => loop.halves),
        arrangement.edges,
      )
    const strip =
      floor.pieceOf && round
        ? floor.pieceOf(round)
        : floor.edges
          ? floor.pieceAt(
              ...placeWithin(
                loops.map((loop) => loop.halves),
                arrangement,
                centreX,
                centreY,
              ),
            )
          : floor.pieceAt(centreX, centreY)
    let { plane } = floor.pieces[strip]!
    let law = floor.pieces[strip]!.law
    // The mean of a linear depth is its value at the centroid; any other has to be integrated.
    const lawMeans = law && round && radialMeans(round, law, areaM2)
    let depth = lawMeans ? lawMeans.depthM : planeAt(plane, centreX, centreY)
    let ruling = -1
    for (const patch of ruler(set, centreX, centreY)) {
      seen.add(shape.patches[patch]!.feature)
      const candidate = planeAt(division.patchPlanes[patch]!, centreX, centreY)
      if (candidate < depth) {
        depth = candidate
        plane = division.patchPlanes[patch]!
        ruling = patch
        law = undefined
      }
    }
    cellOfFace[f] = cells.length
    const own = loops.map(({ halves }) => [...halves])
    loopsOfCells.push(own)
    const { minDepthM, maxDepthM, minX, minY, maxX, maxY } = extremesOf(own, arrangement, plane, law)
    cells.push({
      plane,
      law,
      lawMeans: law && lawMeans,
      part: ruling < 0 ? 'floor' : 'feature',
      feature: ruling < 0 ? -1 : shape.patches[ruling]!.feature,
      patch: ruling,
      strip,
      loops: own,
      areaM2,
      centreX,
      centreY,
      minDepthM,
      maxDepthM,
      minX,
      minY,
      maxX,
      maxY,
    })
  }
  const slack =
    ROUNDING * crossM2 * (64 * (cells.length + 8) + 4 * arrangement.edges.length) +
    8 * Math.max(arrangement.nodes.gapM, arrangement.nodes.slackM) * extentM * (cells.length + 8)
  if (!(Math.abs(sumM2 - waterM2) <= slack)) return fail(problem('cannot-divide', 'outline'))
  for (let i = 0; i < shape.patches.length; i++) {
    const { feature } = shape.patches[i]!
    if (!seen.has(feature))
      return fail(problem('feature-outside', `features[${feature}]`, [startOf(division, division.patchRings[i]!.path)]))
  }
  if (!cells.some((cell) => cell.maxDepthM > 0)) return fail(noWater('floor', 'floor'))
  const { edges, renumber } = keptEdges(arrangement, faces, cellOfFace)
  for (const loops of loopsOfCells)
    for (const loop of loops)
      for (let i = 0; i < loop.length; i++) loop[i] = 2 * renumber[loop[i]! >> 1]! + (loop[i]! & 1)
  return ok({
    shape,
    floor,
    rings,
    originX: division.originX,
    originY: division.originY,
    extentM,
    grainM,
    gapM: arrangement.nodes.gapM,
    sliverM2: 0,
    nodeX: Float64Array.from(arrangement.nodes.x),
    nodeY: Float64Array.from(arrangement.nodes.y),
    memory: [],
    edges,
    cells,
  })
}

function startOf(division: Division, ring: number): [number, number] {
  const first = division.rings[ring]!.curves[0]!
  return [first.x0 + division.originX, first.y0 + division.originY]
}

function isWater(set: ReadonlySet<number>, islands: number): boolean {
  if (!set.has(0)) return false
  for (let ring = 1; ring <= islands; ring++) if (set.has(ring)) return false
  return true
}

/** Which patches cover a face, given the rings around it and its centroid (no line crosses a face, so one point tells). */
function patchRuler(division: Division): (set: ReadonlySet<number>, x: number, y: number) => number[] {
  const { shape, originX, originY, patchRings } = division
  const bands = shape.patches.map(({ band }): HalfPlane[] => (band ? bandPlanes(band, originX, originY) : []))
  return (set, x, y) => {
    const covering: number[] = []
    for (let i = 0; i < bands.length; i++) {
      const { path, except } = patchRings[i]!
      if (!set.has(path) || (except >= 0 && set.has(except))) continue
      if (bands[i]!.every(([a, b, c]) => a * x + b * y >= c)) covering.push(i)
    }
    return covering
  }
}

/**
 * A place inside a face: its centroid, or, where that lies outside, one beside the middle of its longest edge. A level piece
 * of a floor may have any form, so that a face in it may go round others.
 */
function placeWithin(
  loops: readonly (readonly number[])[],
  { edges, nodes }: Arrangement,
  centreX: number,
  centreY: number,
): [number, number] {
  const holds = (x: number, y: number): boolean =>
    loops.reduce((inside, halves) => inside !== isInside(halves, edges, nodes.x, nodes.y, x, y), false)
  if (holds(centreX, centreY)) return [centreX, centreY]
  let longest = loops[0]![0]!
  let length = 0
  for (const half of loops.flat()) {
    const { from, to } = edges[half >> 1]!
    const chord = Math.hypot(nodes.x[to]! - nodes.x[from]!, nodes.y[to]! - nodes.y[from]!)
    if (chord <= length) continue
    length = chord
    longest = half
  }
  const { curve, t0, t1 } = edges[longest >> 1]!
  const jet = evaluate(curve, (t0 + t1) / 2, newJet())
  const side = longest & 1 ? -1 : 1
  const speed = Math.hypot(jet.dx, jet.dy)
  for (let step = length / 8; step > length * HAIR ** 2; step /= 4) {
    const x = jet.x - (side * step * jet.dy) / speed
    const y = jet.y + (side * step * jet.dx) / speed
    if (holds(x, y)) return [x, y]
  }
  return [centreX, centreY]
}

function middleOf(halves: readonly number[], arrangement: Arrangement): [number, number] {
  let x = 0
  let y = 0
  for (const half of halves) {
    const node = arrangement.edges[half >> 1]!.from
    x += arrangement.nodes.x[node]!
    y += arrangement.nodes.y[node]!
  }
  return [x / halves.length, y / halves.length]
}

function extremesOf(
  loops: readonly (readonly number[])[],
  arrangement: Arrangement,
  plane: Plane,
  law: RadialLaw | undefined,
) {
  const halves = loops.length === 1 ? loops[0]! : loops.flat()
  const box = {
    minX: Infinity,
    minY: Infinity,
    maxX: -Infinity,
    maxY: -Infinity,
    minDepthM: Infinity,
    maxDepthM: -Infinity,
  }
  const f = { c: plane.atOrigin, gx: plane.dx, gy: plane.dy }
  for (const half of halves) {
    const { curve, t0, t1, from, to } = arrangement.edges[half >> 1]!
    for (const node of [from, to]) {
      const x = arrangement.nodes.x[node]!
      const y = arrangement.nodes.y[node]!
      if (x < box.minX) box.minX = x
      if (x > box.maxX) box.maxX = x
      if (y < box.minY) box.minY = y
      if (y > box.maxY) box.maxY = y
    }
    if (law) continue
    const [lo, hi] = rangeAlong(curve, t0, t1, f)
    if (lo < box.minDepthM) box.minDepthM = lo
    if (hi > box.maxDepthM) box.maxDepthM = hi
  }
  if (law) {
    const [near, far] = radiiOf(halves, arrangement, law)
    const a = depthAtRadius(law, near)
    const b = depthAtRadius(law, far)
    box.minDepthM = Math.min(a, b)
    box.maxDepthM = Math.max(a, b)
  }
  return box
}

/** Least and greatest distance of a face from the centre of its law. */
function radiiOf(halves: readonly number[], { edges, nodes }: Arrangement, law: RadialLaw): [number, number] {
  let near = isInside(halves, edges, nodes.x, nodes.y, law.x, law.y) ? 0 : Infinity
  let far = 0
  for (const half of halves) {
    const { curve, t0, t1 } = edges[half >> 1]!
    const [lo, hi] = radiusRange(curve, t0, t1, law.x, law.y)
    near = Math.min(near, lo)
    far = Math.max(far, hi)
  }
  return [near, Math.min(far, law.radiusM)]
}

/** The edges with water on a side, numbered anew. */
function keptEdges(
  arrangement: Arrangement,
  faces: Faces,
  cellOfFace: Int32Array,
): { edges: Edge[]; renumber: Int32Array } {
  const edges: Edge[] = []
  const renumber = new Int32Array(arrangement.edges.length).fill(-1)
  for (let e = 0; e < arrangement.edges.length; e++) {
    const left = cellOfFace[faces.faceOf[2 * e]!]!
    const right = cellOfFace[faces.faceOf[2 * e + 1]!]!
    if (left < 0 && right < 0) continue
    renumber[e] = edges.length
    const { curve, t0, t1, from, to, rings } = arrangement.edges[e]!
    const { length, lengthX, lengthY } = lengthMoments(curve, t0, t1)
    edges.push({ curve, t0, t1, from, to, rings, left, right, length, lengthX, lengthY })
  }
  return { edges, renumber }
}
