import type { Curve } from './curve.ts'
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
    const { corners } = p.floor.pieces[i]!
    if (!corners || g.floor[3 * i] === 0) continue
    for (let k = 0; k < 3; k++) {
      const { on } = corners[k]!
      const number = on && of.get(on.curve)
      if (number === undefined) continue
      force.fill(0)
      addCornerForce(p, g, i, k, force)
      dropSlide(on!.curve, on!.t)
      addForce(on!.curve, on!.t, force[0], force[1], g.slots, SLOTS * number)
    }
  }
}

const force: [number, number] = [0, 0]

/** A corner within a straight side is a sounding that lies there: it stays at its own place, and the side only takes it across. */
function dropSlide(curve: Curve, t: number): void {
  if (curve.kind !== 'line' || !(t > 0 && t < 1)) return
  const dx = curve.x1 - curve.x0
  const dy = curve.y1 - curve.y0
  const along = (force[0] * dx + force[1] * dy) / (dx * dx + dy * dy)
  force[0] -= along * dx
  force[1] -= along * dy
}

/** Adds the force on a corner of a triangulated floor's piece. */
export function addCornerForce(p: Partition, g: VolumeGradient, piece: number, k: number, out: [number, number]): void {
  const { corners, plane } = p.floor.pieces[piece]!
  const area = g.floor[3 * piece]!
  if (!corners || area === 0) return
  const [a, u, v] = [corners[k]!, corners[(k + 1) % 3]!, corners[(k + 2) % 3]!]
  const twice = (u.x - a.x) * (v.y - a.y) - (v.x - a.x) * (u.y - a.y)
  const dx = (u.y - v.y) / twice
  const dy = (v.x - u.x) / twice
  const share = area * (1 - dx * a.x - dy * a.y) + dx * g.floor[3 * piece + 1]! + dy * g.floor[3 * piece + 2]!
  out[0] -= plane.dx * share
  out[1] -= plane.dy * share
}
