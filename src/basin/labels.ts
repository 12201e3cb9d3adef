import type { RawEdge } from './arrangement.ts'
import type { Faces } from './faces.ts'

/** The rings that hold each face, or nothing where two ways to a face disagree. */
export function ringsAround(edges: readonly RawEdge[], faces: Faces): ReadonlySet<number>[] | undefined {
  // Filled, not sparse: `every` passes over holes, and a face that no way leads to must be seen.
  const around: (Set<number> | undefined)[] = new Array(faces.faces.length).fill(undefined)
  around[0] = new Set()
  const queue = [0]
  for (let i = 0; i < queue.length; i++) {
    const face = queue[i]!
    const here = around[face]!
    const { outer, holes } = faces.faces[face]!
    for (const loop of outer >= 0 ? [outer, ...holes] : holes) {
      for (const half of faces.loops[loop]!.halves) {
        const beyond = faces.faceOf[half ^ 1]!
        const rings = edges[half >> 1]!.rings
        const known = around[beyond]
        if (!known) {
          const there = new Set(here)
          for (const ring of rings) if (!there.delete(ring)) there.add(ring)
          around[beyond] = there
          queue.push(beyond)
        } else if (!differBy(here, known, rings)) return undefined
      }
    }
  }
  return around.every((set) => set !== undefined) ? (around as Set<number>[]) : undefined
}

function differBy(a: ReadonlySet<number>, b: ReadonlySet<number>, rings: readonly number[]): boolean {
  let size = a.size
  for (const ring of rings) {
    if (a.has(ring) === b.has(ring)) return false
    size += a.has(ring) ? -1 : 1
  }
  if (size !== b.size) return false
  for (const ring of a) if (!b.has(ring) && !rings.includes(ring)) return false
  return true
}
