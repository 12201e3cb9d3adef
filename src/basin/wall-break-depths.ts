import { riseMeets } from './cove-profile.ts'
import { meetsOnHollow } from './hollow-breaks.ts'
import type { Partition } from './partition-types.ts'
import { hollowAlong } from './ray-hollow.ts'
import { stripOf } from './strip.ts'
import { newStripRay, rayIn } from './strip-ray.ts'
import type { StripPiece } from './strip-types.ts'
import { HAIR } from './tolerance.ts'
import { floorOn, newSpan, rulingOn, type WallLaw } from './wall-kind.ts'

/** Places along a piece of the strip where its rays are looked at, before the extremes between them are closed in on. */
const SAMPLES = 16
const GOLDEN = (Math.sqrt(5) - 1) / 2
const NARROWINGS = 44

const ray = newStripRay()
const span = newSpan()

/**
 * Depths at which water that rises beside a wall meets something new: extremes along the shore of the depth at the foot,
 * at the crossings of a ray, at its end, where it is deepest, and where the wall's surface meets what rules.
 */
export function wallBreakDepths(p: Partition, law: WallLaw): number[] {
  return stripOf(p).pieces.flatMap((piece) => extremesOf(p, law, piece))
}

/** Each ray gives the same places in the same order, so that each makes one function of t. */
function extremesOf(p: Partition, law: WallLaw, piece: StripPiece): number[] {
  const { t0, t1 } = piece
  const hair = (t1 - t0) * HAIR * HAIR
  const at = (i: number): number => t0 + hair + ((t1 - t0 - 2 * hair) * i) / SAMPLES
  const rows = Array.from({ length: SAMPLES + 1 }, (_, i) => depthsAlong(p, law, piece, at(i)))
  const found: number[] = []
  for (let k = 0; k < rows[0]!.length; k++) {
    const value = (t: number): number => depthsAlong(p, law, piece, t)[k]!
    const line = rows.map((row) => row[k]!)
    for (const end of [line[0]!, line[SAMPLES]!]) if (!Number.isNaN(end)) found.push(end)
    for (let i = 1; i <= SAMPLES; i++) {
      const [a, b, c] = [line[i - 1]!, line[i]!, line[i + 1] ?? Number.NaN]
      // Where a place comes to be or ceases, the last depth that it has.
      if (Number.isNaN(a) !== Number.isNaN(b)) found.push(lastDepth(value, at(i - 1), at(i)))
      if (b > a && b > c) found.push(-lowest((t) => -value(t), at(i - 1), at(i + 1)))
      if (b < a && b < c) found.push(lowest(value, at(i - 1), at(i + 1)))
    }
  }
  return found
}

/** Depths of all places of interest along one ray; NaN for one that this ray lacks. */
function depthsAlong(p: Partition, law: WallLaw, piece: StripPiece, t: number): number[] {
  rayIn(p, piece, t, ray)
  const depths: number[] = []
  for (let i = 0; i < piece.cells.length; i++) {
    const cell = p.cells[piece.cells[i]!]
    span.from = i === 0 ? 0 : ray.at[i - 1]!
    span.to = ray.at[i] ?? ray.end
    if (!cell) {
      depths.push(Number.NaN, Number.NaN, Number.NaN, Number.NaN, Number.NaN)
      continue
    }
    const { plane: floor, law: hollow } = p.floor.pieces[cell.strip]!
    span.hollow = hollow && hollowAlong(hollow, ray)
    span.f0 = floor.atOrigin + floor.dx * ray.x + floor.dy * ray.y
    span.f1 = floor.dx * ray.nx + floor.dy * ray.ny
    span.isFeature = cell.patch >= 0
    span.k0 = span.isFeature ? cell.plane.atOrigin + cell.plane.dx * ray.x + cell.plane.dy * ray.y : span.f0
    span.k1 = span.isFeature ? cell.plane.dx * ray.nx + cell.plane.dy * ray.ny : span.f1
    const [near, far] = meetsOf(p, law)
    const top = law.deepestAt(span)
    for (const n of [span.from, span.to, top > span.from && top < span.to ? top : Number.NaN, near, far])
      depths.push(depthAt(law, n))
  }
  return depths
}

function depthAt(law: WallLaw, n: number): number {
  const allowed = law.allowedM(floorOn(span, n), n)
  return span.isFeature ? Math.min(allowed, rulingOn(span, n)) : allowed
}

/** Where the wall's surface meets what rules within the span; NaN for none. */
function meetsOf(p: Partition, law: WallLaw): [number, number] {
  const { wall } = p.shape
  const { f0, f1, k0, k1, from, to } = span
  const found: number[] = []
  if (span.hollow) meetsOnHollow(law, span, found)
  else if (wall.kind === 'cove' && span.isFeature) riseMeets(f0 - k0, f1 - k1, wall.radiusM, found)
  if (wall.kind === 'battered' && !span.hollow) found.push(k0 / (1 / wall.run - k1))
  const within = found.filter((n) => n > from && n < to).sort((a, b) => a - b)
  return [within[0] ?? Number.NaN, within[1] ?? Number.NaN]
}

/** Least value of a function between two places, by golden section. */
function lowest(f: (t: number) => number, from: number, to: number): number {
  let a = from
  let b = to
  let p = b - GOLDEN * (b - a)
  let q = a + GOLDEN * (b - a)
  let vp = f(p)
  let vq = f(q)
  for (let i = 0; i < NARROWINGS; i++) {
    if (vp < vq) {
      b = q
      q = p
      vq = vp
      p = b - GOLDEN * (b - a)
      vp = f(p)
    } else {
      a = p
      p = q
      vp = vq
      q = a + GOLDEN * (b - a)
      vq = f(q)
    }
  }
  return Math.min(vp, vq)
}

/** The value next to where a function ceases to have one. */
function lastDepth(f: (t: number) => number, a: number, b: number): number {
  let [has, lacks] = Number.isNaN(f(a)) ? [b, a] : [a, b]
  let value = f(has)
  for (let i = 0; i < NARROWINGS; i++) {
    const m = (has + lacks) / 2
    const fm = f(m)
    if (Number.isNaN(fm)) lacks = m
    else [has, value] = [m, fm]
  }
  return value
}
