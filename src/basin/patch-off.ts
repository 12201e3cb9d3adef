import type { Partition } from './partition-types.ts'
import { pathsOf } from './rings.ts'

/**
 * Bound of the volume that footprints which only come near the curve that is meant may misplace at a level [m³]: length of
 * such an edge, times how far it may be off, times the greatest step there; and the slivers that were left out.
 */
export function footprintErrorM3(p: Partition, levelM: number): number {
  const { patches } = p.shape
  if (!patches.some(({ offM }) => offM !== undefined && offM > 0)) return 0
  // Equal footprints are one ring, as the treads of a flight are.
  const offOf = new Map<number, number>()
  pathsOf(p.shape).patches.forEach(({ path }, i) => {
    offOf.set(path, Math.max(offOf.get(path) ?? 0, patches[i]!.offM ?? 0))
  })
  const wet = (depthM: number): number => Math.max(0, depthM + levelM)
  const deepestM = p.cells.reduce((deepest, { maxDepthM }) => Math.max(deepest, maxDepthM), 0)
  let sum = p.sliverM2 * wet(deepestM)
  for (const { rings, left, right, length } of p.edges) {
    // Along the shore a footprint is the shore itself.
    if (left < 0 || right < 0) continue
    let offM = 0
    for (const ring of rings) offM = Math.max(offM, offOf.get(ring) ?? 0)
    if (offM === 0) continue
    const a = p.cells[left]!
    const b = p.cells[right]!
    const step = Math.max(wet(a.maxDepthM) - wet(b.minDepthM), wet(b.maxDepthM) - wet(a.minDepthM))
    sum += length * offM * Math.max(0, step)
  }
  return sum
}
