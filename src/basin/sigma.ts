import { type Curve, evaluate, newJet } from './curve.ts'
import { type Linear, zerosAlong } from './curve-linear.ts'
import { ruleFor } from './edge-integrals.ts'
import type { Partition } from './partition-types.ts'
import { shoresOf } from './shores.ts'
import { wetCell } from './wet-cell.ts'

const jet = newJet()

/**
 * One standard deviation of the volume [m³] from the tolerance of the measured points.
 * Equation: σ² = σ_plan² Σ_nodes |∂V/∂P|² + σ_depth² Σ_depths (∂V/∂z)², ∂V/∂P = ∮ s⁺ w(P) n dl, ∂V/∂z = ∫ hat dA over wet floor.
 * Symbols: w share of a node's move that a point of the shore takes: linear on a line, the turn and stretch about the other
 *   end on an arc, Bernstein weights on a cubic whose handles go with their point; n outward; s⁺ wet depth at the shore.
 * Valid for: every node's x and y independent, every station's and every patch's depth independent, all small. A common
 *   offset of the datum (∂V = surface · offset) and a common error of the tape's scale are not in it. The cove is left out.
 * Source: propagation of uncertainty, JCGM 100:2008 eq. 10; derivatives own.
 * Accuracy: rounding, at first order.
 */
export function sigmaOf(p: Partition, levelM: number): number {
  const { tolerance } = p.shape
  if (!tolerance) return 0
  return Math.sqrt(planVariance(p, levelM) * tolerance.planM ** 2 + depthVariance(p, levelM) * tolerance.depthM ** 2)
}

function depthVariance(p: Partition, levelM: number): number {
  const byStation = new Map<number, number>()
  const byPatch = new Map<number, number>()
  for (const cell of p.cells) {
    const wet = wetCell(cell, p.edges, levelM, p.extentM)
    if (wet.areaM2 === 0) continue
    if (cell.patch >= 0) {
      byPatch.set(cell.patch, (byPatch.get(cell.patch) ?? 0) + wet.areaM2)
      continue
    }
    for (const { depthIndex, plane } of p.floor.pieces[cell.strip]!.weights) {
      const share = plane.atOrigin * wet.areaM2 + plane.dx * wet.areaX + plane.dy * wet.areaY
      byStation.set(depthIndex, (byStation.get(depthIndex) ?? 0) + share)
    }
  }
  let sum = 0
  for (const share of [...byStation.values(), ...byPatch.values()]) sum += share * share
  return sum
}

function planVariance(p: Partition, levelM: number): number {
  // A node of the outline is the start of a curve; the curve before ends there.
  const places = nodePlaces(p)
  const gx = new Float64Array(places.count)
  const gy = new Float64Array(places.count)
  for (const shore of shoresOf(p)) {
    const ends = places.ends.get(shore.curve)
    if (!ends) continue
    const { plane } = p.cells[shore.cell]!
    const s: Linear = { c: plane.atOrigin + levelM, gx: plane.dx, gy: plane.dy }
    const breaks = [shore.t0, ...zerosAlong(shore.curve, shore.t0, shore.t1, s), shore.t1]
    const rule = ruleFor(shore.curve)
    for (let i = 1; i < breaks.length; i++) {
      const h = breaks[i]! - breaks[i - 1]!
      for (let k = 0; k < rule.at.length; k++) {
        const t = breaks[i - 1]! + h * rule.at[k]!
        evaluate(shore.curve, t, jet)
        const depth = s.c + s.gx * jet.x + s.gy * jet.y
        if (depth <= 0) continue
        const weight = rule.weight[k]! * h * depth * shore.side
        const nx = weight * jet.dy
        const ny = -weight * jet.dx
        // A move (mx, my) of the last end moves this point by z·m, of the first one by (1 − z)·m, as complex numbers.
        const [re, im] = shareOf(shore.curve, t)
        gx[ends[1]]! += nx * re + ny * im
        gy[ends[1]]! += -nx * im + ny * re
        gx[ends[0]]! += nx * (1 - re) - ny * im
        gy[ends[0]]! += nx * im + ny * (1 - re)
      }
    }
  }
  let sum = 0
  for (let i = 0; i < places.count; i++) sum += gx[i]! ** 2 + gy[i]! ** 2
  return sum
}

/** The share of the last end's move that the point at t takes; `jet` holds that point. */
function shareOf(curve: Curve, t: number): [number, number] {
  if (curve.kind === 'line') return [t, 0]
  if (curve.kind === 'cubic') return [t * t * (3 - 2 * t), 0]
  const cx = curve.x1 - curve.x0
  const cy = curve.y1 - curve.y0
  const px = jet.x - curve.x0
  const py = jet.y - curve.y0
  const square = cx * cx + cy * cy
  return [(px * cx + py * cy) / square, (py * cx - px * cy) / square]
}

/** For each curve of the shore the numbers of its first and last node; curves that share a place share its number. */
function nodePlaces(p: Partition): { count: number; ends: Map<Curve, [number, number]> } {
  const numbers = new Map<string, number>()
  const number = (x: number, y: number): number => {
    const key = `${Math.round(x / (4 * p.grainM))} ${Math.round(y / (4 * p.grainM))}`
    let n = numbers.get(key)
    if (n === undefined) {
      n = numbers.size
      numbers.set(key, n)
    }
    return n
  }
  const ends = new Map<Curve, [number, number]>()
  for (const { curve } of shoresOf(p))
    if (!ends.has(curve)) ends.set(curve, [number(curve.x0, curve.y0), number(curve.x1, curve.y1)])
  return { count: numbers.size, ends }
}
