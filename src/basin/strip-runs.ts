import type { Fan } from './cove-fan.ts'
import { Memory } from './memory.ts'
import type { Partition } from './partition-types.ts'
import { stripOf } from './strip.ts'
import type { StripPiece } from './strip-types.ts'

/** Where rays cross fewer edges than this they are followed as a whole. */
const MANY_EDGES = 3
/** As many times more stretches in the pieces than runs must a fan have. */
const GAIN = 1.5
/** What stands for the cells before and after the one that a run is about. */
const ELSEWHERE = -1

const known = new Memory<Partition, readonly StripPiece[]>()

/**
 * The strip again, for sums over its rays: where rays cross many cells, each cell for itself, as a piece between the two
 * edges by which the rays come and go and as long as these stay the same. Pieces change with every edge that a ray
 * meets, and a sum over all of a ray is smooth only between the changes of all its cells; a run knows its own ones alone, so
 * that the work grows with the number of cells and not with its square.
 */
export function runsOf(p: Partition): readonly StripPiece[] {
  let runs = known.get(p)
  if (!runs) {
    runs = runsFrom(stripOf(p).pieces)
    known.set(p, runs)
  }
  return runs
}

function runsFrom(pieces: readonly StripPiece[]): StripPiece[] {
  const runs: StripPiece[] = []
  for (let i = 0; i < pieces.length; ) {
    const { fan } = pieces[i]!
    let end = i
    let cells = 0
    let most = 0
    for (; end < pieces.length && pieces[end]!.fan === fan; end++) {
      cells += pieces[end]!.cells.length
      most = Math.max(most, pieces[end]!.edges.length)
    }
    const own = pieces.slice(i, end)
    i = end
    const apart = most < MANY_EDGES ? own : runsAlong(fan, own)
    runs.push(...(cells > GAIN * apart.length ? apart : own))
  }
  return runs
}

/** The runs of one fan from its pieces, which come in order. */
function runsAlong(fan: Fan, pieces: readonly StripPiece[]): StripPiece[] {
  const done: StripPiece[] = []
  let open = new Map<string, { t0: number; t1: number; piece: StripPiece }>()
  const close = (left: typeof open): void => {
    for (const { t0, t1, piece } of left.values()) done.push({ ...piece, t0, t1 })
  }
  for (const { t0, t1, by, cells, edges } of pieces) {
    // An edge that bends may be crossed twice: only the whole ray tells the first time from the second.
    if (edges.length === 0 || new Set(edges).size < edges.length) {
      close(open)
      open = new Map()
      done.push({ fan, t0, t1, by, cells, edges })
      continue
    }
    const next: typeof open = new Map()
    for (let i = 0; i < cells.length; i++) {
      const cell = cells[i]!
      if (cell < 0) continue
      const enter = i === 0 ? ELSEWHERE : edges[i - 1]!
      const leave = i === edges.length ? ELSEWHERE : edges[i]!
      const key = `${cell} ${enter} ${leave} ${leave < 0 ? by : ''}`
      const before = open.get(key)
      if (before && before.t1 === t0) {
        before.t1 = t1
        next.set(key, before)
        open.delete(key)
      } else next.set(key, { t0, t1, piece: runOver(fan, by, cell, enter, leave) })
    }
    close(open)
    open = next
  }
  close(open)
  return done
}

function runOver(fan: Fan, by: number, cell: number, enter: number, leave: number): StripPiece {
  const cells = [cell]
  const edges: number[] = []
  if (enter >= 0) {
    cells.unshift(ELSEWHERE)
    edges.push(enter)
  }
  if (leave >= 0) {
    cells.push(ELSEWHERE)
    edges.push(leave)
  }
  // Rays that go on are as long as the strip is wide, for all that the run can tell.
  return { fan, t0: Number.NaN, t1: Number.NaN, by: leave < 0 ? by : -1, cells, edges, isRun: true }
}
