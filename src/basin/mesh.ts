import { fail, ok, type Result } from '../base/index.ts'
import { MeshBuilder } from './mesh-builder.ts'
import { exactCapacity, meshSlack } from './mesh-check.ts'
import { VertexLevels } from './mesh-levels.ts'
import { addSurface } from './mesh-surface.ts'
import { addUpright } from './mesh-upright.ts'
import type { Partition } from './partition-types.ts'
import { defaultChord, planMesh } from './plan-mesh.ts'
import { problem } from './problems.ts'
import { depthIn } from './surface-depth.ts'
import type { BasinMesh } from './types.ts'

export interface MeshOptions {
  /** Greatest height of a curve over its chords [m]. */
  readonly chordM?: number | undefined
}

/**
 * The shell from the floor up to the rim in triangles, watertight but for the rim (floor above the rim gets an outer skirt
 * down to it). Its volume, summed tetrahedron by
 * tetrahedron, must agree with the exact one within what chords can lose; a mesh that doesn't is a problem, not a picture.
 */
export function meshOf(p: Partition, options: MeshOptions = {}): Result<BasinMesh> {
  const plan = planMesh(p, options.chordM ?? defaultChord(p))
  const rimM = p.shape.freeboardM
  const levels = new VertexLevels(4 * p.grainM)
  // First the levels that walls stop at, then every surface: all faces must know all points before they are cut.
  p.edges.forEach((edge, e) => {
    if (edge.left >= 0 && edge.right >= 0) return
    for (const v of plan.chains[e]!) {
      levels.settle(v, 0)
      levels.settle(v, -rimM)
    }
  })
  const depths: Map<number, number>[] = p.cells.map(() => new Map())
  const depthOf = (cell: number, v: number): number => {
    const known = depths[cell]!.get(v)
    if (known !== undefined) return known
    const depth = levels.settle(v, depthIn(p, p.cells[cell]!, plan.x[v]!, plan.y[v]!).depthM)
    depths[cell]!.set(v, depth)
    return depth
  }
  plan.cellOf.forEach((cell, i) => {
    for (let k = 0; k < 3; k++) depthOf(cell, plan.triangles[3 * i + k]!)
  })
  const builder = new MeshBuilder()
  addSurface(p, plan, depthOf, builder)
  addUpright(p, plan, depthOf, levels, builder)
  const off = builder.volumeBelow(rimM) - exactCapacity(p, rimM)
  if (!(Math.abs(off) <= meshSlack(p, plan, rimM))) return fail(problem('mesh-disagrees', 'outline'))
  return ok(builder.finish(shoreRings(p, plan)))
}

/** Outline and islands as closed rings of the plan's vertices. */
function shoreRings(p: Partition, plan: ReturnType<typeof planMesh>): Float64Array[] {
  const next = new Map<number, number>()
  p.edges.forEach((edge, e) => {
    if (edge.left >= 0 && edge.right >= 0) return
    const chain = edge.left >= 0 ? plan.chains[e]! : [...plan.chains[e]!].reverse()
    for (let i = 0; i + 1 < chain.length; i++) next.set(chain[i]!, chain[i + 1]!)
  })
  const rings: Float64Array[] = []
  for (const start of [...next.keys()]) {
    const ring: number[] = []
    for (let v: number | undefined = start; v !== undefined; ) {
      const after = next.get(v)
      if (after === undefined) break
      next.delete(v)
      ring.push(plan.x[v]! + p.originX, plan.y[v]! + p.originY)
      v = after
    }
    if (ring.length > 0) rings.push(Float64Array.from(ring))
  }
  return rings
}
