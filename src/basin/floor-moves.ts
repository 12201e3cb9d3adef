import type { Partition } from './partition-types.ts'
import { addForce, SLOTS, shoreCurvesOf } from './shore-moves.ts'
import type { VolumeGradient } from './volume-gradient.ts'

/**
 * Adds what moving the shore does to a floor that is laid out between shores: its triangles' corners take their depths along.
 * Equation: at a fixed place ∂d = −∇d · Σ hat_k ∂P_k, so the force on corner k is −∇d ∫ hat_k dA over the wet part of the
 *   triangle that the floor makes.
 * Accuracy: rounding on straight shores; on curved ones as the chords, whose corrections are taken as they are.
 */
export function addFloorMoves(p: Partition, g: VolumeGradient): void {
  const { of } = shoreCurvesOf(p)
  for (let i = 0; i < p.floor.pieces.length; i++) {
    const { corners, plane } = p.floor.pieces[i]!
    const area = g.floor[3 * i]!
    if (!corners || area === 0) continue
    const [a, b, c] = [corners[0]!, corners[1]!, corners[2]!]
    const twice = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
    for (let k = 0; k < 3; k++) {
      const { x, y, on } = corners[k]!
      const number = on && of.get(on.curve)
      if (number === undefined) continue
      const u = corners[(k + 1) % 3]!
      const v = corners[(k + 2) % 3]!
      const dx = (u.y - v.y) / twice
      const dy = (v.x - u.x) / twice
      const share = area * (1 - dx * x - dy * y) + dx * g.floor[3 * i + 1]! + dy * g.floor[3 * i + 2]!
      addForce(on!.curve, on!.t, -plane.dx * share, -plane.dy * share, g.slots, SLOTS * number)
    }
  }
}
