import { leastBetween } from '../base/index.ts'
import { floorDepth } from './cell-depth.ts'
import { type ArcCurve, evaluate, type LineCurve, lineCurve, newJet } from './curve.ts'
import { type Linear, zerosAlong } from './curve-linear.ts'
import { cellAt } from './depth-at.ts'
import { lengthMoments } from './edge-integrals.ts'
import { alongHollowShore, hollowShore } from './hollow-shore.ts'
import type { Cell, Partition } from './partition-types.ts'
import { integratePattern, type Patterned } from './pattern-integral.ts'
import { slopeOf } from './planes.ts'
import { shoreRuns } from './shore-runs.ts'
import { type Shore, shoresOf, stepOff } from './shores.ts'
import { type Foot, footOn } from './span.ts'
import { stripOf } from './strip.ts'
import { CLOSE } from './tolerance.ts'
import type { Plane } from './types.ts'
import { DATUM, type WallLaw } from './wall-kind.ts'
import { wallLaw } from './walls.ts'
import type { WetEdge } from './wet-edge.ts'

const jet = newJet()

/**
 * Upright face at a stretch of shore [m²] and the shore on it [m], where a wall rules: from the water down to the foot.
 * Accuracy: rounding; on cubics adaptive quadrature.
 */
export function shoreFace(p: Partition, law: WallLaw, shore: Shore, levelM: number): WetEdge {
  const cell = p.cells[shore.cell]!
  const out = { faceM2: 0, shoreM: 0 }
  if (cell.maxDepthM + levelM < 0) return out
  if (p.floor.pieces[cell.strip]!.law) {
    return alongHollowShore(p, law, shore, levelM)
  }
  const f = linear(p.floor.pieces[cell.strip]!.plane)
  const k = cell.patch >= 0 ? linear(cell.plane) : undefined
  const breaks = breaksAlong(shore, law, f, k, levelM)
  for (let i = 0; i <= breaks.length; i++) {
    const ta = i === 0 ? shore.t0 : breaks[i - 1]!
    const tb = i === breaks.length ? shore.t1 : breaks[i]!
    if (!(tb > ta)) continue
    evaluate(shore.curve, (ta + tb) / 2, jet)
    // As in onWall (wet-edge.ts).
    if (cell.minDepthM + levelM >= 0 && !(at(k ?? f) + levelM > 0)) stepOff(jet, shore.side, p.extentM)
    const floor = at(f)
    const foot = law.footOf(f, floor)
    const rules = k && at(k) < at(foot) ? k : foot
    const wet = at(rules) + levelM
    // Water that just reaches the foot has its shore there, if there is water off the shore.
    if (!(at(k ?? f) + levelM > 0)) continue
    if (!(wet >= (rules === k ? Number.MIN_VALUE : -law.footSlackM(floor)))) continue
    const piece = breaks.length === 0 ? p.edges[shore.edge]! : lengthMoments(shore.curve, ta, tb)
    if (wet > 0) out.faceM2 += (rules.c + levelM) * piece.length + rules.gx * piece.lengthX + rules.gy * piece.lengthY
    out.shoreM += piece.length
  }
  return out
}

function breaksAlong(shore: Shore, law: WallLaw, f: Linear, k: Linear | undefined, levelM: number): number[] {
  const breaks: number[] = []
  const addZeros = (line: Linear): void => {
    if (line.gx !== 0 || line.gy !== 0) breaks.push(...zerosAlong(shore.curve, shore.t0, shore.t1, line))
  }
  const feet = [f, ...law.footBreaks(f), DATUM]
  for (const line of law.footBreaks(f)) addZeros(line)
  for (const line of feet) {
    addZeros({ ...line, c: line.c + levelM })
    if (k) addZeros({ c: line.c - k.c, gx: line.gx - k.gx, gy: line.gy - k.gy })
  }
  if (k) addZeros({ ...k, c: k.c + levelM })
  return breaks.length > 1 ? breaks.sort((a, b) => a - b) : breaks
}

function linear(plane: Plane): Linear {
  return { c: plane.atOrigin, gx: plane.dx, gy: plane.dy }
}

function at(line: Linear): number {
  return line.c + line.gx * jet.x + line.gy * jet.y
}

/** Length of a cell's inner shore as it would be without the wall, where the wall now stands above the water [m]. */
export function shoreLost(p: Partition, cell: Cell, index: number, levelM: number): number {
  const law = wallLaw(p.shape.wall)
  // Walls never rise above the datum.
  if (!law || levelM >= 0) return 0
  if (cell.minDepthM + levelM >= 0 || cell.maxDepthM + levelM <= 0) return 0
  if (cell.law) {
    let lost = 0
    for (const arc of hollowShore(p, cell, cell.law, index, levelM)) lost += lostAlong(p, law, cell, levelM, arc)
    return lost
  }
  const slope = slopeOf(cell.plane)
  if (slope === 0) return 0
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
  let lost = 0
  for (let i = 0; i + 1 < stops.length; i++) {
    const a = stops[i]!
    const b = stops[i + 1]!
    const middle = (a + b) / 2
    if (b - a <= 2 * p.grainM || cellAt(p, px + middle * ux, py + middle * uy) !== index) continue
    const piece = lineCurve(px + a * ux, py + a * uy, px + b * ux, py + b * uy)
    lost += lostAlong(p, law, cell, levelM, piece)
  }
  return lost
}

const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/** Length of a piece of shore, straight or an arc, where the wall allows less depth than the water needs. */
function lostAlong(p: Partition, law: WallLaw, cell: Cell, levelM: number, curve: LineCurve | ArcCurve): number {
  const { widthM } = stripOf(p)
  const { length } = lengthMoments(curve, 0, 1)
  const sums = new Float64Array(1)
  for (const run of shoreRuns(p, curve, 0, 1, widthM)) {
    const shore = shoresOf(p)[run.by]!
    const distanceAt = (t: number): number => {
      evaluate(curve, t, jet)
      return footOn(shore.curve, shore.t0, shore.t1, jet.x, jet.y, foot).distance
    }
    const over = (t: number): number => {
      const distance = distanceAt(t)
      // On a floor that rules itself only what the wall takes away from it counts; both are the water's depth here. A wall that
      // doesn't follow the floor tells by itself: the least of both would be zero wherever nothing is lost, and have no root.
      const f = cell.patch >= 0 ? floorDepth(p, cell, jet.x, jet.y) : law.meetsDatumAtShore ? Infinity : -levelM
      return -levelM - law.allowedM(f, distance)
    }
    const f: Patterned = {
      addAt: (t, out) => {
        const isLost = over(t) > 0
        if (isLost) out[0]! += length
        return isLost ? 1 : 0
      },
      eventsAt: (t, out) => {
        out[0] = over(t)
        return 1
      },
      scales: Float64Array.of(length),
    }
    // A bend may dip below the wall's reach and out again: cut where it comes nearest to the shore and where it is furthest.
    const stops = [run.t0, run.t1]
    for (const sign of [1, -1])
      stops.push(leastBetween((t) => sign * distanceAt(t), run.t0, run.t1, CLOSE * (run.t1 - run.t0)).x)
    stops.sort((a, b) => a - b)
    for (let i = 1; i < stops.length; i++)
      if (stops[i]! > stops[i - 1]!) integratePattern(f, stops[i - 1]!, stops[i]!, false, false, sums)
  }
  return sums[0]!
}
