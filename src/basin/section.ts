import { evaluate, newJet } from './curve.ts'
import { type Linear, zerosAlong } from './curve-linear.ts'
import { cellAt } from './depth-at.ts'
import type { Partition } from './partition-types.ts'
import { type DepthPart, depthIn } from './surface-depth.ts'
import type { Axis, Part, SectionCut } from './types.ts'
import { wallWidth } from './wall-width.ts'

interface Piece {
  part: Part
  points: [number, number][]
}

const jet = newJet()

/**
 * The cut along the whole line through an axis, s from `axis.from` (negative before it). Vertical faces are two points at
 * one s; the wall above the datum is `rim`. An axis without length cuts nothing.
 */
export function sectionOf(p: Partition, axis: Axis): SectionCut {
  const dx = axis.to[0] - axis.from[0]
  const dy = axis.to[1] - axis.from[1]
  const length = Math.hypot(dx, dy)
  if (!(length > 0) || !Number.isFinite(length)) return { pieces: [], spans: [] }
  const line: Line = { x: axis.from[0] - p.originX, y: axis.from[1] - p.originY, ux: dx / length, uy: dy / length }
  const stops = stopsAlong(p, line)
  const pieces: Piece[] = []
  const spans: [number, number][] = []
  let depth: number | undefined
  let lastCell = -1
  let end = 0
  for (let i = 0; i + 1 < stops.length; i++) {
    const sa = stops[i]!
    const sb = stops[i + 1]!
    const middle = (sa + sb) / 2
    const cell = cellAt(p, line.x + middle * line.ux, line.y + middle * line.uy)
    if (cell < 0) {
      if (depth !== undefined) close(p, pieces, end, depth)
      depth = undefined
      lastCell = -1
      continue
    }
    const at = (s: number): DepthPart => depthIn(p, p.cells[cell]!, line.x + s * line.ux, line.y + s * line.uy)
    const first = at(sa)
    if (depth === undefined) {
      open(p, pieces, sa, first.depthM)
      spans.push([sa, sb])
    } else {
      spans[spans.length - 1]![1] = sb
      if (Math.abs(first.depthM - depth) > p.grainM) add(pieces, 'riser', [sa, depth], [sa, first.depthM], true)
    }
    // Two cells of one part go on as one line.
    const goesOn = lastCell >= 0 && p.cells[lastCell]!.part === p.cells[cell]!.part
    trace(p, pieces, sa, sb, at, goesOn, p.cells[cell]!.law !== undefined)
    depth = at(sb).depthM
    lastCell = cell
    end = sb
  }
  if (depth !== undefined) close(p, pieces, end, depth)
  return { pieces, spans }
}

interface Line {
  readonly x: number
  readonly y: number
  readonly ux: number
  readonly uy: number
}

/** Distances at which the line meets an edge, ascending, nearer than the grain taken as one. */
function stopsAlong(p: Partition, line: Line): number[] {
  const across: Linear = { c: line.x * line.uy - line.y * line.ux, gx: -line.uy, gy: line.ux }
  const stops: number[] = []
  const place = (x: number, y: number): number => (x - line.x) * line.ux + (y - line.y) * line.uy
  for (const edge of p.edges) {
    for (const t of zerosAlong(edge.curve, edge.t0, edge.t1, across)) {
      evaluate(edge.curve, t, jet)
      stops.push(place(jet.x, jet.y))
    }
    for (const node of [edge.from, edge.to]) {
      const x = p.nodeX[node]!
      const y = p.nodeY[node]!
      if (Math.abs(across.c + across.gx * x + across.gy * y) <= p.grainM) stops.push(place(x, y))
    }
  }
  stops.sort((a, b) => a - b)
  return stops.filter((s, i) => i === 0 || s - stops[i - 1]! > 4 * p.grainM)
}

function open(p: Partition, pieces: Piece[], s: number, depth: number): void {
  const rim = -p.shape.freeboardM
  if (Math.min(0, depth) > rim)
    pieces.push({
      part: 'rim',
      points: [
        [s, rim],
        [s, Math.min(0, depth)],
      ],
    })
  if (depth > 0)
    pieces.push({
      part: 'wall',
      points: [
        [s, 0],
        [s, depth],
      ],
    })
}

function close(p: Partition, pieces: Piece[], s: number, depth: number): void {
  const rim = -p.shape.freeboardM
  if (depth > 0)
    pieces.push({
      part: 'wall',
      points: [
        [s, depth],
        [s, 0],
      ],
    })
  if (Math.min(0, depth) > rim)
    pieces.push({
      part: 'rim',
      points: [
        [s, Math.min(0, depth)],
        [s, rim],
      ],
    })
}

function add(pieces: Piece[], part: Part, from: [number, number], to: [number, number], fresh: boolean): void {
  const last = pieces[pieces.length - 1]
  if (!fresh && last?.part === part) last.points.push(to)
  else pieces.push({ part, points: [from, to] })
}

/** Adds the line of one cell; a wall that leans or a hollow is followed in small steps, the wall's end is found by halving. */
function trace(
  p: Partition,
  pieces: Piece[],
  sa: number,
  sb: number,
  at: (s: number) => DepthPart,
  goesOn: boolean,
  isHollow: boolean,
): void {
  const widthM = wallWidth(p)
  const steps = widthM > 0 ? Math.min(512, Math.max(8, Math.ceil((16 * (sb - sa)) / widthM))) : isHollow ? 8 : 1
  let s = sa
  let here = at(sa)
  let fresh = !(goesOn && pieces[pieces.length - 1]?.part === here.part)
  for (let i = 1; i <= steps; i++) {
    const next = i === steps ? sb : sa + ((sb - sa) * i) / steps
    const there = at(next)
    if (there.part !== here.part || there.walled !== here.walled) {
      const turn = halve(at, s, next, here)
      const joint = at(turn)
      if (here.walled || isHollow) bend(p, pieces, at, s, here, turn, joint, 12, fresh)
      else add(pieces, here.part, [s, here.depthM], [turn, joint.depthM], fresh)
      s = turn
      here = { ...joint, part: there.part, walled: there.walled }
      fresh = pieces[pieces.length - 1]?.part !== here.part
    }
    // A straight floor needs no points between.
    if (i < steps && !isHollow && !here.walled && !there.walled && there.part === here.part) continue
    if (here.walled || isHollow) bend(p, pieces, at, s, here, next, there, 12, fresh)
    else add(pieces, here.part, [s, here.depthM], [next, there.depthM], fresh)
    s = next
    here = there
    fresh = false
  }
}

/** Follows a leaning wall or a hollow by chords that stay within a few hundredths of a thousandth of the basin's extent. */
function bend(
  p: Partition,
  pieces: Piece[],
  at: (s: number) => DepthPart,
  sa: number,
  a: DepthPart,
  sb: number,
  b: DepthPart,
  depth: number,
  fresh: boolean,
): void {
  const middle = (sa + sb) / 2
  const m = at(middle)
  if (depth === 0 || Math.abs(m.depthM - (a.depthM + b.depthM) / 2) <= 3e-5 * p.extentM) {
    add(pieces, a.part, [sa, a.depthM], [sb, b.depthM], fresh)
    return
  }
  bend(p, pieces, at, sa, a, middle, m, depth - 1, fresh)
  bend(p, pieces, at, middle, m, sb, b, depth - 1, false)
}

function halve(at: (s: number) => DepthPart, from: number, to: number, like: DepthPart): number {
  let lo = from
  let hi = to
  for (let i = 0; i < 48; i++) {
    const middle = (lo + hi) / 2
    const { part, walled } = at(middle)
    if (part === like.part && walled === like.walled) lo = middle
    else hi = middle
  }
  return (lo + hi) / 2
}
