import { EdgeVertices } from './edge-chains.ts'
import { meshHollow } from './hollow-mesh.ts'
import { Memory, type Remembering } from './memory.ts'
import type { Partition } from './partition-types.ts'
import { PlanPoints } from './plan-points.ts'
import { fillRemainder, Sides } from './plan-remainder.ts'
import { PlanTriangles } from './plan-triangles.ts'
import { stripOf } from './strip.ts'
import { broadPieces } from './strip-broad.ts'
import { meshStrip } from './strip-mesh.ts'
import { addPartners } from './strip-partners.ts'
import { newSampling, samplePieces } from './strip-samples.ts'
import { stationsOf } from './strip-stations.ts'
import { MERGE_GRAINS, WALL_MERGE_GRAINS } from './tolerance.ts'
import { triangulate } from './triangulate.ts'
import type { WallLaw } from './wall-kind.ts'
import { wallLaw } from './walls.ts'

/** The plan in triangles, which meet along shared vertices; each belongs to one cell. */
export interface PlanMesh extends Remembering {
  readonly points: PlanPoints
  /** Vertices along each edge, from its first to its last node. */
  readonly chains: readonly (readonly number[])[]
  /** Corners of the triangles, counter-clockwise. */
  readonly triangles: Int32Array
  readonly cellOf: Int32Array
  /** The ray of the strip that each corner was cut by, −1 beyond it; directions of the rays, x and y in turn. */
  readonly rayOf: Int32Array
  readonly rays: readonly number[]
  /** Sides where a wall's surface meets another at an angle: two vertices and the cell, in turn. */
  readonly creases: readonly number[]
  /** Area along the wall within which its surface is followed no further, summed [m²]. */
  readonly leftM2: number
}

const remembered = new Memory<Partition, Map<number, PlanMesh>>()

/** The chord height that a picture of this plan asks for if nothing else is said [m]. */
export function defaultChord(p: Partition): number {
  return p.extentM * 2.5e-4
}

/** The plan of a partition in triangles whose sides stay within `chordM` of the curves. Remembered by partition. */
export function planMesh(p: Partition, chordM: number): PlanMesh {
  let known = remembered.get(p)
  if (!known) {
    known = new Map()
    remembered.set(p, known)
  }
  let mesh = known.get(chordM)
  if (!mesh) {
    mesh = build(p, chordM)
    known.set(chordM, mesh)
  }
  return mesh
}

/** The wall's law as the mesh follows it: none where its strip is so thin that vertices across it are one. */
export function meshedLaw(p: Partition): WallLaw | undefined {
  const law = wallLaw(p.shape.wall)
  return law && stripOf(p).widthM > 8 * WALL_MERGE_GRAINS * p.grainM ? law : undefined
}

function build(p: Partition, chordM: number): PlanMesh {
  const out = new PlanTriangles()
  const law = meshedLaw(p)
  const strip = law && stripOf(p)
  const points = new PlanPoints(p.nodeX, p.nodeY, (strip ? WALL_MERGE_GRAINS : MERGE_GRAINS) * p.grainM)
  const edges = new EdgeVertices(p, points)
  if (!law || !strip || strip.pieces.length === 0) {
    edges.finish(chordM, undefined)
    p.cells.forEach((cell, i) => {
      const first = out.count
      fillWhole(cell.loops, edges.chains, points, i, out)
      if (cell.law) meshHollow(cell, cell.law, i, first, chordM, points, out)
    })
    return planOf(points, edges, out, 0)
  }
  for (let v = 0; v < p.nodeX.length; v++) points.enter(v)
  const sides = new Sides()
  const sampling = newSampling(p, law, chordM)
  const sampled = samplePieces(sampling, { ...strip, pieces: broadPieces(strip.pieces) })
  addPartners(sampling, sampled)
  const runs = stationsOf(sampling, sampled, points, out.rays)
  meshStrip(p, runs, points, edges, sides, out)
  const isTouched = out.touched(p.cells.length)
  edges.finish(chordM, sides)
  const open = sides.openByCell(p.cells.length)
  p.cells.forEach((cell, i) => {
    const first = out.count
    if (isTouched[i]) fillRemainder(open[i]!, points, i, out)
    else fillWhole(cell.loops, edges.chains, points, i, out)
    if (cell.law && out.count > first) meshHollow(cell, cell.law, i, first, chordM, points, out)
  })
  return planOf(points, edges, out, sampling.leftM2)
}

function planOf(points: PlanPoints, edges: EdgeVertices, out: PlanTriangles, leftM2: number): PlanMesh {
  return { points, chains: edges.chains, ...out.finish(), leftM2, memory: [] }
}

/** A cell that the strip doesn't touch. */
function fillWhole(
  loops: readonly (readonly number[])[],
  chains: readonly (readonly number[])[],
  points: PlanPoints,
  cell: number,
  out: PlanTriangles,
): void {
  const rings = loops.map((loop) => ringOf(loop, chains))
  out.addAll(triangulate(rings, points.x, points.y), cell)
}

function ringOf(loop: readonly number[], chains: readonly (readonly number[])[]): number[] {
  const ring: number[] = []
  for (const half of loop) {
    const chain = chains[half >> 1]!
    if (half & 1) for (let i = chain.length - 1; i > 0; i--) ring.push(chain[i]!)
    else for (let i = 0; i < chain.length - 1; i++) ring.push(chain[i]!)
  }
  return ring
}
