import { bracketedRoot, never } from '../base/index.ts'
import type { Cell, Partition } from './partition-types.ts'
import { planeAt } from './planes.ts'
import { layOver } from './strip-span.ts'
import { newSpan, type WallLaw } from './wall-kind.ts'

/** A place along a ray where the mesh needs a vertex: its distance from the shore, and which ring or crease it lies on. */
export interface RayPlaces {
  readonly n: number[]
  /** Ring k has 64 + k, a step in a hollow 1000 and more, a crease less than 64, what both pieces beside a ray brought together −1. */
  readonly code: number[]
}

/** True for the code of a crease. */
export function isCrease(code: number): boolean {
  return code >= 0 && code < 64
}

/** The code of a ring. */
export function ringCode(k: number): number {
  return 64 + k
}

const FEWEST_RINGS = 4
const MOST_RINGS = 128
const HOLLOW_STEPS = 24
const HOLLOW = 1000

/** Distances from the shore at which a wall's curved profile over a level floor is cut into chords [m]. */
export function ringsOf(p: Partition, chordM: number): readonly number[] {
  const { wall } = p.shape
  switch (wall.kind) {
    case 'vertical':
    case 'battered':
      return []
    case 'cove': {
      const r = wall.radiusM
      const step = 2 * Math.acos(Math.max(0, 1 - chordM / r))
      const count = Math.min(MOST_RINGS, Math.max(FEWEST_RINGS, Math.ceil(Math.PI / 2 / step)))
      // Even steps of the quarter circle.
      return Array.from({ length: count - 1 }, (_, k) => r * (1 - Math.cos((Math.PI / 2) * ((k + 1) / count))))
    }
    default:
      return never(wall, 'unknown wall')
  }
}

/** What the wall does within a cell: nothing, its plain profile all over, or that with creases. */
export type WallWork = 'none' | 'plain' | 'creased'

/** Tells for a cell what the wall does there, from the least and greatest depths alone. */
export function wallWork(p: Partition, cell: Cell): WallWork {
  const { wall } = p.shape
  if (wall.kind === 'vertical') return 'none'
  if (wall.kind === 'battered') return 'creased'
  const r = wall.radiusM
  if (cell.patch < 0) return cell.minDepthM > r ? 'plain' : 'creased'
  const { plane, law } = p.floor.pieces[cell.strip]!
  let least = law ? Math.min(law.depthM, law.edgeDepthM) : Infinity
  for (const x of [cell.minX, cell.maxX])
    for (const y of law ? [] : [cell.minY, cell.maxY]) least = Math.min(least, planeAt(plane, x, y))
  return least - r >= Math.max(cell.maxDepthM, 0) ? 'none' : 'creased'
}

/** True where the wall does nothing in any of some cells. */
export function isBare(work: readonly WallWork[], cells: readonly number[]): boolean {
  for (const cell of cells) if (work[cell] !== 'none') return false
  return true
}

const span = newSpan()
const before = new Float64Array(16)
const after = new Float64Array(16)
const probe = new Float64Array(16)

/** Adds the rings and creases of one cell along a ray, strictly between two distances, in order. */
export function addPlaces(
  p: Partition,
  law: WallLaw,
  rings: readonly number[],
  cell: Cell,
  work: WallWork,
  x: number,
  y: number,
  nx: number,
  ny: number,
  from: number,
  to: number,
  out: RayPlaces,
): void {
  if (work === 'none') return
  const hair = 16 * p.grainM
  let stops = rings
  let hollowFrom = rings.length
  let firstStep = 0
  const { law: hollow } = p.floor.pieces[cell.strip]!
  if (hollow) {
    // A hollow bends along the ray: steps of its own between the rings and beyond them.
    const step = hollow.radiusM / HOLLOW_STEPS
    stops = rings.filter((ring) => ring < to)
    hollowFrom = stops.length
    firstStep = Math.floor(from / step) + 1
    const steps: number[] = []
    for (let k = firstStep; k * step < to - hair; k++) steps.push(k * step)
    stops = [...stops, ...steps]
  }
  const codeOf = (k: number): number => (k < hollowFrom ? ringCode(k) : HOLLOW + firstStep + k - hollowFrom)
  if (work === 'plain') {
    const first = out.n.length
    for (let k = 0; k < stops.length; k++)
      if (stops[k]! > from + hair && stops[k]! < to - hair) insert(out, first, stops[k]!, codeOf(k), hair)
    return
  }
  span.from = from
  span.to = to
  layOver(p, cell, x, y, nx, ny, span)
  let a = from
  const count = law.eventsAt(span, from, 0, before, 0)
  // Rings alone are in order.
  const order = hollow && stops.map((_, k) => k).sort((i, k) => stops[i]! - stops[k]!)
  for (let i = 0; i <= stops.length; i++) {
    const k = order ? (order[i] ?? 0) : i
    const isRing = i < stops.length && stops[k]! < to - hair
    const b = isRing ? stops[k]! : to
    if (b <= from + hair) continue
    law.eventsAt(span, b, 0, after, 0)
    const first = out.n.length
    for (let e = 0; e < count; e++)
      if (before[e]! > 0 !== after[e]! > 0) {
        const n = crossingOf(law, e, a, b)
        if (n > from + hair && n < to - hair) insert(out, first, n, e, hair)
      }
    if (!isRing) break
    insert(out, first, b, codeOf(k), hair)
    before.set(after)
    a = b
  }
}

/** Puts a place in its order after the first; one that lies on a known one is left out. */
function insert(out: RayPlaces, first: number, n: number, code: number, hair: number): void {
  let i = out.n.length
  while (i > first && out.n[i - 1]! > n) i--
  if ((i > first && n - out.n[i - 1]! <= hair) || (i < out.n.length && out.n[i]! - n <= hair)) return
  out.n.push(n)
  out.code.push(code)
  for (let k = out.n.length - 1; k > i; k--) {
    out.n[k] = out.n[k - 1]!
    out.code[k] = out.code[k - 1]!
  }
  out.n[i] = n
  out.code[i] = code
}

let law: WallLaw
let event = 0

function valueAt(n: number): number {
  law.eventsAt(span, n, 0, probe, 0)
  return probe[event]!
}

/** Where one of the law's events changes its sign between two places; the first of them where it is no number. */
function crossingOf(ofLaw: WallLaw, ofEvent: number, a: number, b: number): number {
  law = ofLaw
  event = ofEvent
  const root = bracketedRoot(valueAt, a, b, 0)
  return root.ok ? root.value.x : a
}
