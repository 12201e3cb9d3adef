import { bracketedRoot } from '../base/index.ts'
import { type Curve, evaluate, fastest, type Jet, newJet } from './curve.ts'
import { Memory } from './memory.ts'
import { norm } from './norm.ts'
import type { Partition } from './partition-types.ts'
import { nearestShore, shoresNear } from './shore-distance.ts'
import { shoresOf } from './shores.ts'
import { type Foot, footOn } from './span.ts'
import { HAIR, TIE } from './tolerance.ts'

/** A stretch of a line through the water in which one stretch of shore is the nearest, and near. */
export interface ShoreRun {
  readonly t0: number
  readonly t1: number
  readonly by: number
  /** Whether the inside of that stretch is nearest (0) or an end of it (1, 2). */
  readonly how: number
}

interface Place {
  readonly t: number
  /** Nearest shore, −1 where none is near; and whether its inside is (0) or an end (1, 2). */
  readonly by: number
  readonly how: number
  readonly distance: number
}

/** Cuts within cuts of one step, and the part of the width that steps become no shorter than where another stretch is near. */
const DEPTH = 24
const FINEST = 64

/** Distances that differ by less than this part of the grain are equal. */
const TIES = 16

const known = new Memory<Partition, Int32Array>()
const jet = newJet()
const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }

/**
 * Stretches of a curve that lie within a distance of the shore, each with one nearest stretch of shore.
 * Method: steps as long as the distance to the shore allows, a quarter of the width inside, and down to a 64th where another
 *   stretch is near enough to come nearer between two steps; between two that don't have the same nearest shore the change
 *   is the root of the difference of two distances.
 */
export function shoreRuns(p: Partition, curve: Curve, t0: number, t1: number, widthM: number): ShoreRun[] {
  const speed = fastest(curve, t0, t1)
  const runs: ShoreRun[] = []
  const look = (t: number): Place => {
    evaluate(curve, t, jet)
    const by = nearestShore(p, jet.x, jet.y, 2 * widthM, foot)
    if (by < 0) return { t, by: -1, how: 0, distance: 2 * widthM }
    if (foot.distance >= widthM) return { t, by: -1, how: 0, distance: foot.distance }
    const node = nodeAt(p, by)
    if (node < 0) return { t, by, how: 0, distance: foot.distance }
    // Along a line that leaves a joint square to the shore, rounding alone tells its two stretches and their ends apart.
    const first = firstAtNodes(p)[node]!
    return { t, by: first, how: p.edges[shoresOf(p)[first]!.edge]!.from === node ? 1 : 2, distance: foot.distance }
  }
  const add = (from: number, to: number, { by, how }: Place): void => {
    const last = runs[runs.length - 1]
    if (by < 0 || !(to > from)) return
    runs.push({ t0: last && from - last.t1 < TIE * (t1 - t0) ? last.t1 : from, t1: to, by, how })
  }
  // Where another stretch might come nearer between two places that have the same one nearest, the middle is looked at too.
  const join = (from: number, a: Place, to: number, b: Place): void => {
    const stepM = speed * (b.t - a.t)
    if (a.by < 0 || stepM < widthM / FINEST || !hasRival(p, curve, a, b.t, stepM)) {
      add(from, to, a)
      return
    }
    const middle = look((a.t + b.t) / 2)
    split(from, a, middle.t, middle, DEPTH)
    split(middle.t, middle, to, b, DEPTH)
  }
  const split = (from: number, a: Place, to: number, b: Place, depth: number): void => {
    if (a.by === b.by && a.how === b.how) {
      join(from, a, to, b)
      return
    }
    const cut = changeBetween(p, curve, widthM, a, b, look)
    const inset = Math.max(TIE * (t1 - t0), HAIR * Math.min(cut - from, to - cut))
    if (depth === 0 || !(cut - inset > a.t) || !(cut + inset < b.t)) {
      const { distance } = look(cut)
      join(from, a, cut, { ...a, t: cut, distance })
      join(cut, { ...b, t: cut, distance }, to, b)
      return
    }
    const before = look(cut - inset)
    if (isAsNear(p, curve, widthM, before, a)) join(from, a, cut, { ...a, t: before.t })
    else split(from, a, cut, before, depth - 1)
    const after = look(cut + inset)
    if (isAsNear(p, curve, widthM, after, b)) join(cut, { ...b, t: after.t, distance: after.distance }, to, b)
    else split(cut, after, to, b, depth - 1)
  }
  let start = t0
  let here = look(t0 + HAIR * (t1 - t0))
  while (start < t1) {
    const room = here.by < 0 ? Math.max(here.distance - widthM, widthM / 8) : widthM / 4
    const end = Math.min(t1, start + Math.max(room / speed, (t1 - t0) / 4096))
    const there = look(end === t1 ? t1 - HAIR * (t1 - t0) : end)
    // Between two places away from the shore nothing is near, for the step was no longer than the way to it.
    if (here.by >= 0 || there.by >= 0) split(start, here, end, there, DEPTH)
    start = end
    here = there
  }
  return merged(runs)
}

/** True where another stretch of shore may come nearer than the nearest one on a way of so much from a place and back. */
function hasRival(p: Partition, curve: Curve, { t, by, distance }: Place, toT: number, wayM: number): boolean {
  evaluate(curve, t, jet)
  const { x, y, dx, dy } = jet
  evaluate(curve, toT, jet)
  const { dx: toDx, dy: toDy } = jet
  const shores = shoresOf(p)
  const { from, to } = p.edges[shores[by]!.edge]!
  for (const i of shoresNear(p, x, y, distance + 2 * wayM)) {
    if (i === by) continue
    const shore = shores[i]!
    const other = p.edges[shore.edge]!
    const isFirst = other.from === from || other.from === to
    if (isFirst || other.to === from || other.to === to) {
      // A stretch that begins where the nearest one ends comes nearer beyond the normal at that joint: only on a way that heads
      // toward it first and away from it then. It bends too little to come near further on.
      evaluate(shore.curve, isFirst ? shore.t0 : shore.t1, turn)
      const sign = isFirst ? 1 : -1
      const before = sign * ((turn.x - x) * turn.dx + (turn.y - y) * turn.dy)
      const heads = dx * turn.dx + dy * turn.dy > 0 === toDx * turn.dx + toDy * turn.dy > 0
      const isBefore = before >= 0 && norm(turn.x - x, turn.y - y) < shore.clearM
      if (isBefore && (heads || before >= wayM * norm(turn.dx, turn.dy))) continue
    }
    if (footOn(shore.curve, shore.t0, shore.t1, x, y, foot).distance >= distance + 2 * wayM) continue
    if (curve.kind !== 'line' || !staysBehind(p, curve, t, toT, by, i)) return true
  }
  return false
}

/**
 * True where of two straight stretches of shore the second one comes no nearer than the first anywhere on a straight way.
 * Method: a distance from a straight stretch is convex along a line, so it lies below its chord and above its tangents.
 */
function staysBehind(p: Partition, way: Curve, t0: number, t1: number, first: number, second: number): boolean {
  const shores = shoresOf(p)
  const near = shores[first]!
  const far = shores[second]!
  if (near.curve.kind !== 'line' || far.curve.kind !== 'line') return false
  const chord: number[] = []
  const lead: number[] = []
  const rise: number[] = []
  for (const t of [t0, t1]) {
    evaluate(way, t, jet)
    chord.push(footOn(near.curve, near.t0, near.t1, jet.x, jet.y, foot).distance)
    const { distance, x, y } = footOn(far.curve, far.t0, far.t1, jet.x, jet.y, foot)
    if (distance === 0) return false
    lead.push(distance - chord[chord.length - 1]!)
    rise.push((((jet.x - x) * jet.dx + (jet.y - y) * jet.dy) / distance) * (t1 - t0))
  }
  // How far the second lies behind the chord by each tangent is linear; the least of the larger one is at an end or where they cross.
  const fall = chord[1]! - chord[0]!
  const slopes = rise.map((each) => each - fall)
  const least = -p.grainM / TIES
  if (!(lead[0]! >= least && lead[1]! >= least)) return false
  const bend = slopes[1]! - slopes[0]!
  if (!(bend > 0)) return true
  const at = (lead[1]! - slopes[1]! - lead[0]!) / -bend
  return !(at > 0 && at < 1) || lead[0]! + slopes[0]! * at >= least
}

/** True where a place is as near to what is nearest to another one as to its own: rounding alone may tell the two apart. */
function isAsNear(p: Partition, curve: Curve, widthM: number, { t, by, how, distance }: Place, other: Place): boolean {
  if (by === other.by && how === other.how) return true
  if (other.by < 0) return distance >= widthM - p.grainM / TIES
  const shore = shoresOf(p)[other.by]!
  evaluate(curve, t, jet)
  footOn(shore.curve, shore.t0, shore.t1, jet.x, jet.y, foot)
  const { from, to } = p.edges[shore.edge]!
  const node = other.how === 0 ? -1 : other.how === 1 ? from : to
  return nodeAt(p, other.by) === node && foot.distance <= Math.min(distance, widthM) + p.grainM / TIES
}

/** The first stretch of shore at each node, −1 for none. Remembered for each partition. */
function firstAtNodes(p: Partition): Int32Array {
  let first = known.get(p)
  if (!first) {
    first = new Int32Array(p.nodeX.length).fill(-1)
    const shores = shoresOf(p)
    for (let i = shores.length - 1; i >= 0; i--) {
      const { from, to } = p.edges[shores[i]!.edge]!
      first[from] = i
      first[to] = i
    }
    known.set(p, first)
  }
  return first
}

/** The node that the foot just found on a stretch of shore lies at, −1 inside. */
function nodeAt(p: Partition, by: number): number {
  const { from, to } = p.edges[shoresOf(p)[by]!.edge]!
  for (const node of [from, to]) if (norm(foot.x - p.nodeX[node]!, foot.y - p.nodeY[node]!) <= p.grainM) return node
  return -1
}

function merged(runs: readonly ShoreRun[]): ShoreRun[] {
  const out: ShoreRun[] = []
  for (const run of runs) {
    const last = out[out.length - 1]
    if (last && last.by === run.by && last.how === run.how && last.t1 === run.t0)
      out[out.length - 1] = { ...last, t1: run.t1 }
    else out.push(run)
  }
  return out
}

function changeBetween(
  p: Partition,
  curve: Curve,
  widthM: number,
  a: Place,
  b: Place,
  look: (t: number) => Place,
): number {
  if (a.by !== b.by) {
    // Where two stretches go on smoothly their distances touch rather than cross: the normal at the joint parts them.
    const joint = a.by >= 0 && b.by >= 0 ? jointOf(p, a.by, b.by) : undefined
    if (joint) {
      const along = (t: number): number => {
        evaluate(curve, t, jet)
        return (jet.x - joint.x) * joint.dx + (jet.y - joint.y) * joint.dy
      }
      const normal = bracketedRoot(along, a.t, b.t, 0)
      if (normal.ok && normal.value.x > a.t && normal.value.x < b.t) return normal.value.x
    }
    const guesses = new Map<number, number>()
    const distance = (by: number): number => {
      if (by < 0) return widthM
      const shore = shoresOf(p)[by]!
      const n = footOn(shore.curve, shore.t0, shore.t1, jet.x, jet.y, foot, guesses.get(by)).distance
      guesses.set(by, foot.t)
      return n
    }
    const root = bracketedRoot(
      (t) => {
        evaluate(curve, t, jet)
        return distance(a.by) - distance(b.by)
      },
      a.t,
      b.t,
      0,
    )
    if (root.ok) return root.value.x
  }
  let lo = a.t
  let hi = b.t
  for (let i = 0; i < 44; i++) {
    const m = (lo + hi) / 2
    if (!(m > lo && m < hi)) break
    const { by, how } = look(m)
    if (by === a.by && how === a.how) lo = m
    else hi = m
  }
  return (lo + hi) / 2
}

/** The end that two stretches of shore share, with the direction of the first one there. */
function jointOf(p: Partition, one: number, other: number): Jet | undefined {
  const shores = shoresOf(p)
  const a = p.edges[shores[one]!.edge]!
  const b = p.edges[shores[other]!.edge]!
  const isAt = (node: number): boolean => node === b.from || node === b.to
  if (!isAt(a.from) && !isAt(a.to)) return undefined
  evaluate(a.curve, isAt(a.to) ? a.t1 : a.t0, turn)
  return turn
}

const turn = newJet()
