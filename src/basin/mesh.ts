import { fail, ok, type Result } from '../base/index.ts'
import { MeshBuilder } from './mesh-builder.ts'
import { exactCapacity, meshSlack } from './mesh-check.ts'
import { addSurface } from './mesh-surface.ts'
import { addUpright } from './mesh-upright.ts'
import type { Partition } from './partition-types.ts'
import { PlanDepth } from './plan-depth.ts'
import { defaultChord, type PlanMesh, planMesh } from './plan-mesh.ts'
import { problem } from './problems.ts'
import { Room } from './room.ts'
import { shellCorners } from './shell-corners.ts'
import type { BasinMesh } from './types.ts'
import { wallLaw } from './walls.ts'

export interface MeshOptions {
  /** Greatest height of a curve over its chords [m]. */
  readonly chordM?: number | undefined
}

/**
 * Chord heights to try, as shares of the one asked for: where many edges, rays and hollows crowd together one triangle in
 * thousands may go astray, and with lower ones it doesn't.
 */
const CHORD_TRIES = [1, 0.7, 0.4, 0.2] as const
/** A mesh over so many cells takes too long to be made anew. */
const MANY_CELLS = 200

/**
 * The shell from the floor up to the rim in triangles, watertight but for the rim (floor above the rim gets an outer skirt
 * down to it). Its volume, summed tetrahedron by tetrahedron, must agree with the exact one within what its chords can lose,
 * and no side may be open below the rim; a mesh that fails is a problem, not a picture.
 */
export function meshOf(p: Partition, options: MeshOptions = {}): Result<BasinMesh> {
  const chordM = options.chordM ?? defaultChord(p)
  for (const share of CHORD_TRIES) {
    const mesh = meshAt(p, share * chordM)
    if (mesh) return ok(mesh)
    if (p.cells.length > MANY_CELLS) break
  }
  return fail(problem('mesh-disagrees', 'outline'))
}

/** The mesh with chords of a height, or nothing where it isn't the basin. */
function meshAt(p: Partition, chordM: number): BasinMesh | undefined {
  const plan = planMesh(p, chordM)
  const rimM = p.shape.freeboardM
  const depth = new PlanDepth(p, plan)
  const { points, pointAt, pointOf } = shellCorners(p, plan)
  const builder = new MeshBuilder(points, plan.cellOf.length)
  addSurface(p, plan, depth, wallLaw(p.shape.wall), pointAt, builder)
  addUpright(p, plan, pointOf, points, depth, builder)
  // A cove runs into the floor without an edge; a wall that leans ends at one.
  if (wallLaw(p.shape.wall)?.part === 'wall')
    for (let i = 0; i < plan.creases.length; i += 3) {
      const [u, v, cell] = [plan.creases[i]!, plan.creases[i + 1]!, plan.creases[i + 2]!]
      if (depth.isOnWall(cell, u) && depth.isOnWall(cell, v)) builder.ink(pointOf(cell, u), pointOf(cell, v))
    }
  const off = builder.volumeBelow(-rimM) - exactCapacity(p, rimM)
  if (!(Math.abs(off) <= meshSlack(p, plan, chordM, rimM)) || !builder.isClosed(-rimM)) return undefined
  return builder.finish([p.originX, p.originY], shoreRings(p, plan))
}

const nextRoom = new Room(Int32Array)

/** Outline and islands as closed rings of the plan's vertices. */
function shoreRings(p: Partition, plan: PlanMesh): Float64Array[] {
  const { x, y } = plan.points
  const next = nextRoom.filled(x.length, -1)
  const starts: number[] = []
  for (let e = 0; e < p.edges.length; e++) {
    const { left, right } = p.edges[e]!
    if (left >= 0 && right >= 0) continue
    const chain = plan.chains[e]!
    const last = chain.length - 1
    for (let i = 0; i < last; i++) {
      if (left >= 0) next[chain[i]!] = chain[i + 1]!
      else next[chain[last - i]!] = chain[last - i - 1]!
    }
    starts.push(left >= 0 ? chain[0]! : chain[last]!)
  }
  const rings: Float64Array[] = []
  for (const start of starts) {
    let count = 0
    for (let v = start; next[v]! >= 0 && (count === 0 || v !== start); v = next[v]!) count++
    if (count === 0) continue
    const ring = new Float64Array(2 * count)
    let v = start
    for (let i = 0; i < count; i++) {
      ring[2 * i] = x[v]!
      ring[2 * i + 1] = y[v]!
      const after = next[v]!
      next[v] = -1
      v = after
    }
    rings.push(ring)
  }
  return rings
}
