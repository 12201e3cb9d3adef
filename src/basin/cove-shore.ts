import { coveAt } from './cove-depth.ts'
import { evaluate, newJet } from './curve.ts'
import { type Linear, zerosAlong } from './curve-linear.ts'
import { cellAt } from './depth-at.ts'
import type { Cell, Partition } from './partition-types.ts'
import { slopeOf } from './planes.ts'
import { NEARLY } from './tolerance.ts'

const jet = newJet()

/** Length of a cell's inner shore as it would be without the cove, where the cove now stands above the water [m]. */
export function shoreLostToCove(p: Partition, cell: Cell, index: number, levelM: number): number {
  const slope = slopeOf(cell.plane)
  if (slope === 0 || cell.minDepthM + levelM >= 0 || cell.maxDepthM + levelM <= 0) return 0
  const s: Linear = { c: cell.plane.atOrigin + levelM, gx: cell.plane.dx, gy: cell.plane.dy }
  const ux = -s.gy / slope
  const uy = s.gx / slope
  const px = (-s.gx * s.c) / (slope * slope)
  const py = (-s.gy * s.c) / (slope * slope)
  const stops: number[] = []
  for (const loop of cell.loops)
    for (const half of loop) {
      const edge = p.edges[half >> 1]!
      for (const t of zerosAlong(edge.curve, edge.t0, edge.t1, s)) {
        evaluate(edge.curve, t, jet)
        stops.push((jet.x - px) * ux + (jet.y - py) * uy)
      }
      for (const node of [edge.from, edge.to]) {
        const x = p.nodeX[node]!
        const y = p.nodeY[node]!
        if (Math.abs(s.c + s.gx * x + s.gy * y) <= slope * p.grainM) stops.push((x - px) * ux + (y - py) * uy)
      }
    }
  stops.sort((a, b) => a - b)
  const isLost = (at: number): boolean => coveAt(p, cell, px + at * ux, py + at * uy) !== undefined
  let lost = 0
  for (let i = 0; i + 1 < stops.length; i++) {
    const a = stops[i]!
    const b = stops[i + 1]!
    const middle = (a + b) / 2
    if (b - a <= 2 * p.grainM || cellAt(p, px + middle * ux, py + middle * uy) !== index) continue
    lost += lengthWhere(isLost, a, b)
  }
  return lost
}

/** Length of the part of an interval where a condition holds; it is sampled, and its ends are found by halving. */
function lengthWhere(holds: (at: number) => boolean, from: number, to: number): number {
  const samples = 128
  let length = 0
  let a = from + (to - from) * NEARLY
  let inA = holds(a)
  for (let i = 1; i <= samples; i++) {
    const b = i === samples ? to - (to - from) * NEARLY : from + ((to - from) * i) / samples
    const inB = holds(b)
    if (inA && inB) length += b - a
    else if (inA !== inB) {
      let lo = a
      let hi = b
      for (let k = 0; k < 50; k++) {
        const m = (lo + hi) / 2
        if (holds(m) === inA) lo = m
        else hi = m
      }
      length += inA ? lo - a : b - hi
    }
    a = b
    inA = inB
  }
  return length
}
