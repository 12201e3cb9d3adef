import { leastBetween } from '../base/index.ts'
import { riseMeets } from './cove-profile.ts'
import { meetsOnHollow } from './hollow-breaks.ts'
import type { Partition } from './partition-types.ts'
import { isNarrow } from './strip-broad.ts'
import { newStripRay, rayIn } from './strip-ray.ts'
import { runsOf } from './strip-runs.ts'
import { laySpan } from './strip-span.ts'
import type { StripPiece } from './strip-types.ts'
import { CLOSE, HAIR } from './tolerance.ts'
import { floorOn, newSpan, rulingOn, type WallLaw } from './wall-kind.ts'

/** Places along a piece of the strip where its rays are looked at, before the extremes between them are closed in on. */
const SAMPLES = 16
const NARROWINGS = 44
/** Places of interest in each cell that a ray crosses. */
const PLACES = 5

const ray = newStripRay()
const span = newSpan()

/**
 * Adds the depths at which water that rises beside a wall meets something new: extremes along the shore of the depth at the
 * foot, at the crossings of a ray, at its end, where it is deepest, and where the wall's surface meets what rules.
 */
export function pushWallBreakDepths(p: Partition, law: WallLaw, out: number[]): void {
  for (const piece of runsOf(p)) if (!isNarrow(piece)) pushExtremes(p, law, piece, out)
}

const row = new Float64Array(SAMPLES + 1)
const here = new Float64Array(PLACES)
let samples = new Float64Array(0)

/** Each ray gives the same places in the same order, so that each makes one function of t. */
function pushExtremes(p: Partition, law: WallLaw, piece: StripPiece, out: number[]): void {
  const { t0, t1, cells } = piece
  const hair = (t1 - t0) * HAIR * HAIR
  const at = (i: number): number => t0 + hair + ((t1 - t0 - 2 * hair) * i) / SAMPLES
  const count = PLACES * cells.length
  if (samples.length < (SAMPLES + 1) * count) samples = new Float64Array(2 * (SAMPLES + 1) * count)
  for (let s = 0; s <= SAMPLES; s++) {
    rayIn(p, piece, at(s), ray)
    for (let i = 0; i < cells.length; i++) writeDepths(p, law, piece, i, samples, s * count + PLACES * i)
  }
  for (let k = 0; k < count; k++) {
    const value = (t: number): number => {
      rayIn(p, piece, t, ray)
      writeDepths(p, law, piece, Math.floor(k / PLACES), here, 0)
      return here[k % PLACES]!
    }
    for (let s = 0; s <= SAMPLES; s++) row[s] = samples[s * count + k]!
    for (const end of [row[0]!, row[SAMPLES]!]) if (!Number.isNaN(end)) out.push(end)
    for (let i = 1; i <= SAMPLES; i++) {
      const [a, b, c] = [row[i - 1]!, row[i]!, row[i + 1] ?? Number.NaN]
      // Where a place comes to be or ceases, the last depth that it has.
      if (Number.isNaN(a) !== Number.isNaN(b)) out.push(lastDepth(value, at(i - 1), at(i), p.grainM))
      const sign = b > a && b > c ? -1 : b < a && b < c ? 1 : 0
      if (sign === 0) continue
      // An extreme lies about as far from the middle one as that from the others: below the grain there is nothing to find.
      if (Math.max(Math.abs(b - a), Math.abs(b - c)) <= p.grainM) out.push(b)
      else {
        const { value: least } = leastBetween(
          (t) => sign * value(t),
          at(i - 1),
          at(i + 1),
          CLOSE * (at(i + 1) - at(i - 1)),
        )
        out.push(sign * least)
      }
    }
  }
}

/** Depths of the places of interest in one cell along the ray just laid; NaN for one that this ray lacks. */
function writeDepths(p: Partition, law: WallLaw, piece: StripPiece, i: number, out: Float64Array, from: number): void {
  if (!laySpan(p, piece, ray, i, span)) {
    out.fill(Number.NaN, from, from + PLACES)
    return
  }
  const [near, far] = meetsOf(p, law)
  const top = law.deepestAt(span)
  out[from] = depthAt(law, span.from)
  out[from + 1] = depthAt(law, span.to)
  out[from + 2] = top > span.from && top < span.to ? depthAt(law, top) : Number.NaN
  out[from + 3] = depthAt(law, near)
  out[from + 4] = depthAt(law, far)
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

/** The value next to where a function ceases to have one, closed in on until it moves by less than rounding matters. */
function lastDepth(f: (t: number) => number, a: number, b: number, grainM: number): number {
  let value = f(a)
  let [has, lacks] = [a, b]
  if (Number.isNaN(value)) {
    value = f(b)
    has = b
    lacks = a
  }
  let still = 0
  for (let i = 0; i < NARROWINGS && still < 3; i++) {
    const m = (has + lacks) / 2
    const fm = f(m)
    if (Number.isNaN(fm)) {
      lacks = m
      continue
    }
    still = Math.abs(fm - value) <= grainM / 16 ? still + 1 : 0
    has = m
    value = fm
  }
  return value
}
