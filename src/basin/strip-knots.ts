import { bracketedRoot } from '../base/index.ts'
import { norm } from './norm.ts'
import { newStripRay, rayTo } from './strip-ray.ts'
import { isBare, ringCode } from './strip-rings.ts'
import type { Sample, Sampling } from './strip-samples.ts'
import { layOver } from './strip-span.ts'
import type { StripPiece } from './strip-types.ts'
import { newSpan } from './wall-kind.ts'

const ray = newStripRay()

/** A place between two rays where an edge lies at the very distance of a ring. */
export interface Knot {
  readonly t: number
  readonly x: number
  readonly y: number
  readonly nx: number
  readonly ny: number
  readonly n: number
  readonly code: number
}

/**
 * Places on a piece's edges, edge by edge, where they pass the rings between two neighbouring rays, in order from one ray
 * to the other, so that a wall's profile goes on up to the edge. Nothing where there are none.
 */
export function knotsBetween(s: Sampling, piece: StripPiece, a: Sample, b: Sample): Knot[][] | undefined {
  const { edges, cells } = piece
  if (edges.length === 0 || isBare(s.work, piece.cells)) return undefined
  const apartM = lateral(a, b)
  if (apartM < s.mergeM) {
    // Rings end at the rays, and between them the profile goes to the edge as it may.
    for (let j = 1; j <= edges.length; j++) s.leftM2 += (apartM * Math.abs(a.at[j]! - b.at[j]!)) / 4
    return undefined
  }
  let found: Knot[][] | undefined
  for (let j = 0; j < edges.length; j++) {
    if (s.work[cells[j]!] === 'none' && s.work[cells[j + 1]!] === 'none') continue
    const na = a.at[j + 1]!
    const nb = b.at[j + 1]!
    const knots: Knot[] = []
    let last = a.t
    const count = s.rings.length
    for (let i = 0; i < count; i++) {
      const k = na < nb ? i : count - 1 - i
      const n = s.rings[k]!
      if (n <= Math.min(na, nb) || n >= Math.max(na, nb)) continue
      const t = levelBetween(s, piece, a, b, j + 1, n)
      // Edges that turn back between two rays, or all but run along one, have no order of their own.
      const isApart = Math.min(Math.abs(n - na), Math.abs(n - nb)) > 4 * s.mergeM && (t - last) * (b.t - t) > 0
      if (!isApart || !(Math.abs(ray.at[j]! - n) <= s.p.grainM)) continue
      last = t
      knots.push({ t, x: ray.x, y: ray.y, nx: ray.nx, ny: ray.ny, n, code: ringCode(k) })
    }
    addCreases(s, piece, j, a, b, knots)
    if (knots.length === 0) continue
    found ??= edges.map(() => [])
    found[j] = knots
  }
  return found
}

const span = newSpan()
const atA = new Float64Array(16)
const atB = new Float64Array(16)
const probe = new Float64Array(16)

/** Adds the places where an edge passes from one of the wall's laws to another, as where a leaning wall's foot crosses it. */
function addCreases(s: Sampling, piece: StripPiece, j: number, a: Sample, b: Sample, knots: Knot[]): void {
  const { p, law } = s
  const k = s.work[piece.cells[j]!] === 'creased' ? j : s.work[piece.cells[j + 1]!] === 'creased' ? j + 1 : -1
  if (k < 0 || a.at[j + 1] === b.at[j + 1]) return
  const cell = p.cells[piece.cells[k]!]!
  const eventsAt = (t: number, out: Float64Array): number => {
    rayTo(p, piece, t, j, ray)
    const n = ray.at[j] ?? ray.end
    span.from = Math.min(n, a.at[j + 1]!, b.at[j + 1]!)
    span.to = Math.max(n, a.at[j + 1]!, b.at[j + 1]!)
    layOver(p, cell, ray.x, ray.y, ray.nx, ray.ny, span)
    return law.eventsAt(span, n, 0, out, 0)
  }
  const count = eventsAt(a.t, atA)
  eventsAt(b.t, atB)
  for (let e = 0; e < count; e++) {
    if (atA[e]! > 0 === atB[e]! > 0) continue
    const root = bracketedRoot(
      (t) => {
        eventsAt(t, probe)
        return probe[e]!
      },
      a.t,
      b.t,
      0,
    )
    if (!root.ok) continue
    const t = root.value.x
    eventsAt(t, probe)
    const n = ray.at[j] ?? ray.end
    const isApart = [a.at[j + 1]!, b.at[j + 1]!, ...knots.map((knot) => knot.n)].every(
      (other) => Math.abs(n - other) > 4 * s.mergeM,
    )
    if (!isApart || !((t - a.t) * (b.t - t) > 0)) continue
    const at = knots.findIndex((knot) => (knot.t - t) * (b.t - a.t) > 0)
    const knot: Knot = { t, x: ray.x, y: ray.y, nx: ray.nx, ny: ray.ny, n, code: e }
    if (at < 0) knots.push(knot)
    else knots.splice(at, 0, knot)
  }
}

/** How far apart two rays run at most, as far as the longer one goes [m]. */
export function lateral(a: Sample, b: Sample): number {
  const n = Math.max(a.at[a.at.length - 1]!, b.at[b.at.length - 1]!)
  return Math.max(norm(b.x - a.x, b.y - a.y), norm(b.x + n * b.nx - a.x - n * a.nx, b.y + n * b.ny - a.y - n * a.ny))
}

/**
 * Where between two rays an edge (by its column among their distances) or their end lies at a distance; leaves the ray there
 * in `ray`. Method: regula falsi, an end that stays is halved (Illinois): each look lays a whole ray, and the common root
 * finder would take three more.
 */
export function levelBetween(
  s: Sampling,
  piece: StripPiece,
  a: Sample,
  b: Sample,
  column: number,
  level: number,
): number {
  let ta = a.t
  let tb = b.t
  let fa = a.at[column]! - level
  let fb = b.at[column]! - level
  let side = 0
  let t = ta
  // Within the grain a place on an edge is on it; an eighth leaves room for what follows.
  const closeM = s.p.grainM / 8
  for (let i = 0; i < 40; i++) {
    t = (ta * fb - tb * fa) / (fb - fa)
    if (!((t - ta) * (tb - t) > 0)) break
    rayTo(s.p, piece, t, column - 1, ray)
    const f = (ray.at[column - 1] ?? ray.end) - level
    if (Math.abs(f) <= closeM) break
    if (f > 0 === fa > 0) {
      ta = t
      fa = f
      if (side === 1) fb /= 2
      side = 1
    } else {
      tb = t
      fb = f
      if (side === -1) fa /= 2
      side = -1
    }
  }
  return Math.min(Math.max(t, Math.min(a.t, b.t)), Math.max(a.t, b.t))
}
