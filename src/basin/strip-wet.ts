import type { Partition } from './partition-types.ts'
import type { Stand } from './strip-stand.ts'
import type { RaySpan, WallLaw } from './wall-kind.ts'

/** Least depth under the rays that were looked at, and the greatest of their least: how far it may be off between them. */
let least = Infinity
let most = -Infinity
/** The same for how near to the shore they begin. */
let nearest = Infinity
let furthest = -Infinity

/** Forgets the rays that were looked at before. */
export function watchAnew(): void {
  least = Infinity
  most = -Infinity
  nearest = Infinity
  furthest = -Infinity
}

/** Takes note of how deep and how near to the shore a ray's stretches are. */
export function watchRay(p: Partition, law: WallLaw, { piece }: Stand, spans: readonly RaySpan[]): void {
  let here = Infinity
  let from = Infinity
  for (let i = 0; i < spans.length; i++) {
    const span = spans[i]!
    if (span.k0 === -Infinity) continue
    from = Math.min(from, span.from)
    // Over a hollow depths are far from linear: what its cell has at least, at the shore.
    if (span.hollow) {
      const least = p.cells[piece.cells[i]!]!.minDepthM
      here = Math.min(here, law.meetsDatumAtShore ? least : law.allowedM(least, 0))
    }
    for (let k = 0; k < 2 && !span.hollow; k++) {
      const n = k === 0 ? span.from : span.to
      const ruling = span.k0 + span.k1 * n
      // A wall that comes up to the datum is under water with it, wherever what rules is.
      if (law.meetsDatumAtShore) here = Math.min(here, ruling)
      else {
        const allowed = law.allowedM(span.f0 + span.f1 * n, n)
        here = Math.min(here, span.isFeature ? Math.min(ruling, allowed) : allowed)
      }
    }
  }
  least = Math.min(least, here)
  most = Math.max(most, here)
  nearest = Math.min(nearest, from)
  furthest = Math.max(furthest, from)
}

/** From this level on all that the rays looked at pass is under water [m above the datum]. */
export function wetFrom(p: Partition, law: WallLaw): number {
  // Between the rays depths are nearly linear: a twentieth of their spread is more than they can be off.
  const ruling = -least + (most - least) / 20 + p.grainM
  const from = nearest - (furthest - nearest) / 20 - p.grainM
  return Math.max(ruling, -law.allowedM(Infinity, Math.max(0, from)))
}
