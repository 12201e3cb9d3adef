import { closed } from './path.ts'
import { splitOne } from './path-edit.ts'
import { boundsOf, pathLength, pointOn } from './path-figures.ts'
import { type SelfContact, selfContacts } from './self-contacts.ts'
import { UNTANGLE_GAP } from './tolerance.ts'
import type { Path, Point, Segment } from './types.ts'

/** More meetings than this are a scribble that no rule can read. */
const MOST_CONTACTS = 400

interface Piece {
  readonly from: Point
  readonly segment: Segment
}

/**
 * A path that goes through nearly the same line without crossing or touching itself, or undefined where none is found.
 * Two lines that cross swap their ends, so the points of the loop between them are passed the other way round (2-opt); where
 * a curve is in it, both are opened by a gap of a hundredth of the figure at the crossing and joined across it, the loop
 * between passed the other way or not, whichever leaves fewer meetings. A loop within one curve is cut off, and so is a
 * spike. All other curves are kept as they are. Each step takes away meetings or length, so it comes to an end.
 * A path that is free already is returned as it is.
 */
export function untangle(path: Path): Path | undefined {
  let current = path
  let contacts: readonly SelfContact[] = selfContacts(path, MOST_CONTACTS)
  while (contacts.length > 0) {
    if (contacts.length > MOST_CONTACTS) return undefined
    const step = bestStep(current, contacts)
    if (!step) return undefined
    current = step.path
    contacts = step.contacts
  }
  return current.segments.length > 1 ? current : undefined
}

interface Step {
  readonly path: Path
  readonly contacts: readonly SelfContact[]
}

function bestStep(path: Path, contacts: readonly SelfContact[]): Step | undefined {
  const length = pathLength(path)
  const count = piecesOf(path).length
  // Spikes first: what else they touch goes with them.
  const isSpike = (c: SelfContact): boolean => tipOf(c, count) >= 0
  for (const contact of [...contacts.filter(isSpike), ...contacts.filter((c) => !isSpike(c))]) {
    let best: Step | undefined
    for (const pieces of proposals(path, contact)) {
      const candidate = pathOf(pieces)
      if (!candidate) continue
      const left = selfContacts(candidate, contacts.length)
      const isLess = left.length < contacts.length || pathLength(candidate) < length * (1 - UNTANGLE_GAP / 8)
      if (isLess && (!best || left.length < best.contacts.length)) best = { path: candidate, contacts: left }
    }
    if (best) return best
  }
  return undefined
}

/** What may be done about one meeting. */
function proposals(path: Path, contact: SelfContact): Piece[][] {
  const pieces = piecesOf(path)
  const { first, second } = contact
  const i = first.segment
  const j = second.segment
  const [p, q] = [pieces[i], pieces[j]]
  if (!p || !q) return []
  if (i === j) return [withoutLoop(pieces, i, first.t, second.t)]
  const areLines = isLine(p.segment) && isLine(q.segment)
  const tip = tipOf(contact, pieces.length)
  if (areLines && tip >= 0) return [withoutTip(pieces, tip)]
  const swapped = areLines && isInside(first.t) && isInside(second.t) ? [swappedEnds(pieces, i, j)] : []
  return [...swapped, ...opened(pieces, contact, path)]
}

/** Where two neighbours meet besides their joint: the first of them, else −1. */
function tipOf({ first, second }: SelfContact, count: number): number {
  if (second.segment === first.segment + 1) return first.segment
  return first.segment === 0 && second.segment === count - 1 ? second.segment : -1
}

const isInside = (t: number): boolean => t > UNTANGLE_GAP / 8 && t < 1 - UNTANGLE_GAP / 8
const isLine = (segment: Segment): boolean => !segment.bulge && !(segment.c1 && segment.c2)

/** The pieces of a path, its closing line one of them. */
function piecesOf(path: Path): Piece[] {
  const pieces: Piece[] = []
  let from = path.start
  for (const segment of closed(path).segments) {
    pieces.push({ from, segment })
    from = segment.to
  }
  return pieces
}

/** The path of pieces, without lines from a point to itself. */
function pathOf(pieces: readonly Piece[]): Path | undefined {
  const long = pieces.filter(
    ({ from, segment }) => !isLine(segment) || from[0] !== segment.to[0] || from[1] !== segment.to[1],
  )
  const [first] = long
  return first && { start: first.from, segments: long.map(({ segment }) => segment) }
}

const line = (from: Point, to: Point): Piece => ({ from, segment: { to } })

function turnedRound(pieces: readonly Piece[]): Piece[] {
  return pieces
    .map(({ from, segment: { to, bulge, c1, c2 } }): Piece => {
      if (c1 && c2) return { from: to, segment: { to: from, c1: c2, c2: c1 } }
      return { from: to, segment: bulge ? { to: from, bulge: -bulge } : { to: from } }
    })
    .reverse()
}

/** 2-opt: a → b … c → d becomes a → c … b → d. */
function swappedEnds(pieces: readonly Piece[], i: number, j: number): Piece[] {
  const [a, b] = [pieces[i]!.from, pieces[i]!.segment.to]
  const [c, d] = [pieces[j]!.from, pieces[j]!.segment.to]
  return [...pieces.slice(0, i), line(a, c), ...turnedRound(pieces.slice(i + 1, j)), line(b, d), ...pieces.slice(j + 1)]
}

/** Without the point between a piece and the next one. */
function withoutTip(pieces: readonly Piece[], i: number): Piece[] {
  const next = (i + 1) % pieces.length
  const joined = line(pieces[i]!.from, pieces[next]!.segment.to)
  const rest = pieces.filter((_, k) => k !== i && k !== next)
  return next === 0 ? [...rest, joined] : [...rest.slice(0, i), joined, ...rest.slice(i)]
}

function withoutLoop(pieces: readonly Piece[], i: number, t0: number, t1: number): Piece[] {
  const [before] = splitPiece(pieces[i]!, t0)
  const [, after] = splitPiece(pieces[i]!, t1)
  return [...pieces.slice(0, i), before!, { ...after!, from: before!.segment.to }, ...pieces.slice(i + 1)]
}

/** Both ways of opening a meeting by a gap: the loop between the two passes turned round, or not. */
function opened(pieces: readonly Piece[], { first, second }: SelfContact, path: Path): Piece[][] {
  const { minX, minY, maxX, maxY } = boundsOf(path)
  const gapM = UNTANGLE_GAP * Math.hypot(maxX - minX, maxY - minY)
  // From the later place on, so that the earlier one keeps its number.
  const cut = cutAt(cutAt(pieces, second.segment, second.t).pieces, first.segment, first.t)
  const later = cutAt(pieces, second.segment, second.t)
  const from = cut.node
  const to = later.node + (cut.pieces.length - later.pieces.length)
  const between = trimmed(cut.pieces.slice(from, to), gapM)
  const beyond = trimmed([...cut.pieces.slice(to), ...cut.pieces.slice(0, from)], gapM)
  if (between.length === 0 || beyond.length === 0) return []
  const joined = (loop: readonly Piece[]): Piece[] => [
    ...loop,
    line(endOf(loop), beyond[0]!.from),
    ...beyond,
    line(endOf(beyond), loop[0]!.from),
  ]
  return [joined(turnedRound(between)), joined(between)]
}

const endOf = (pieces: readonly Piece[]): Point => pieces[pieces.length - 1]!.segment.to

/** The pieces with a node at a place, and the number of the piece that begins there. */
function cutAt(pieces: readonly Piece[], i: number, t: number): { pieces: readonly Piece[]; node: number } {
  const margin = UNTANGLE_GAP / 8
  if (t < margin) return { pieces, node: i }
  if (t > 1 - margin) return { pieces, node: i + 1 }
  return { pieces: [...pieces.slice(0, i), ...splitPiece(pieces[i]!, t), ...pieces.slice(i + 1)], node: i + 1 }
}

/** A run of pieces without a gap at its beginning and its end; of a short piece no more than a third goes. */
function trimmed(run: readonly Piece[], gapM: number): Piece[] {
  const [head] = run
  if (!head) return []
  const start = splitPiece(head, shareOf(head, gapM))[1]!
  const rest = [start, ...run.slice(1)]
  const tail = rest[rest.length - 1]!
  return [...rest.slice(0, -1), splitPiece(tail, 1 - shareOf(tail, gapM))[0]!]
}

function shareOf({ from, segment }: Piece, gapM: number): number {
  const there = { start: from, segments: [segment] }
  // The closing line of this one piece is no part of it.
  const lengthM = pathLength(there) - Math.hypot(segment.to[0] - from[0], segment.to[1] - from[1])
  return Math.min(1 / 3, gapM / Math.max(lengthM, gapM))
}

function splitPiece({ from, segment }: Piece, t: number): Piece[] {
  const middle = pointOn({ start: from, segments: [segment] }, 0, t)
  const [before, after] = splitOne(from, segment, t, middle)
  return [
    { from, segment: before! },
    { from: before!.to, segment: after! },
  ]
}
