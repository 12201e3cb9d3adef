import { bracketedRoot } from '../base/index.ts'
import { LONG_RULE, type NestedRule, SHORT_RULE } from './kronrod.ts'
import { dipsBetween } from './pattern-dips.ts'
import { HAIR, ROUNDING } from './tolerance.ts'

/** Halves of an interval that rules may be tried on, and cuts that one interval may have. */
const DEPTH = 10
/**
 * More changes than this between two points of a rule are rounding that makes two equal depths take turns: the functions
 * don't jump there, so the search may stop.
 */
const CUTS = 6
/** Agreement asked for of the first integrand, and of the others. */
const AGREE_FIRST = 1e-8
const AGREE = 1e-7
/**
 * Rays for one integral at most, and for a sum of many of them together, but for a few each: a figure in which two depths
 * agree but for rounding has no end of changes to look for.
 */
const MOST_RAYS = 4_000
const MOST_RAYS_TOGETHER = 300_000
const FEW_RAYS = 400

/** How many rays each of so many integrals may take. */
export function raysForEach(integrals: number): number {
  return Math.min(MOST_RAYS, Math.max(FEW_RAYS, Math.floor(MOST_RAYS_TOGETHER / Math.max(1, integrals))))
}

/** Down to 1e-10 of the way between two points of a rule: less than the agreement asked for, even where a shore begins or ends. */
const HALVINGS = 32

/** Enough for rays over a hundred cells; more than that are searched by halving. */
const MOST_EVENTS = 2048

/** Several integrands at once that are smooth along stretches of one pattern. */
export interface Patterned {
  /** Adds their values at t to `out` and numbers the pattern that they follow there. */
  readonly addAt: (t: number, out: Float64Array) => number
  /** The pattern's number at t alone, where that is cheaper to tell. */
  readonly nameAt?: (t: number) => number
  /** Writes numbers of which one passes through zero wherever the pattern changes; returns how many. None where it never does. */
  readonly eventsAt?: (t: number, out: Float64Array) => number
  /** True where one of them may pass through zero and back between two points of the rule: they are looked at there too. */
  readonly mayDip?: boolean
  /** Sizes below which a difference doesn't count, one for each integrand. */
  readonly scales: Float64Array
  /** Rays that it may take; by default as many as an integral that stands alone. */
  readonly mostRays?: number
  /** True where a stretch is so short that few points may do. */
  readonly isShort?: boolean
}

/** Goes on with a pattern's number by one more mark (a multiplicative hash of 32 bits). */
export function mark(pattern: number, next: number): number {
  return (Math.imul(pattern ^ (next + 0x9e37), 0x01000193) + next) | 0
}

/**
 * ∫ of several functions over [t0, t1], added to `sums`; returns the estimate of the first one's error.
 * Method: Kronrod's 15 points, or first 7 where the caller says that it is short. Where they don't all follow one pattern,
 *   t is cut at the roots of the events between them. Between cuts the functions are smooth but for roots at the cuts and
 *   where the caller says so; the substitutions t = a + (b − a) τ², (3τ² − 2τ³) take these away. Halved until the Gauss
 *   rule in every second point agrees to 1e-8, for all but the first to 1e-7.
 * Errors: where a value is no number, its sum is none and, for the first one, the estimate too.
 * Accuracy: what Kronrod's rule gains over Gauss's on smooth functions, (200 · 1e-8)^1.5 of the scales at worst.
 * Source: QUADPACK (1983) for the estimate.
 */
export function integratePattern(
  f: Patterned,
  t0: number,
  t1: number,
  rootAt0: boolean,
  rootAt1: boolean,
  sums: Float64Array,
): number {
  if (nothing.length < sums.length) {
    nothing = new Float64Array(sums.length)
    kronrod = new Float64Array(sums.length)
    gauss = new Float64Array(sums.length)
    point = new Float64Array(sums.length)
  }
  raysLeft = f.mostRays ?? MOST_RAYS
  return refine(f, t0, t1, rootAt0, rootAt1, DEPTH, sums, f.isShort ? SHORT_RULE : LONG_RULE)
}

let raysLeft = 0
let kronrod = new Float64Array(16)
let gauss = new Float64Array(16)
let point = new Float64Array(16)
const names = new Int32Array(17)
const places = new Float64Array(17)

function refine(
  f: Patterned,
  a: number,
  b: number,
  rootA: boolean,
  rootB: boolean,
  allowed: number,
  sums: Float64Array,
  rule: NestedRule = LONG_RULE,
): number {
  const { at, kronrod: kronrodWeight, gauss: gaussWeight } = rule
  const points = at.length
  // What is left undone then shows in the estimate.
  const depth = raysLeft > 0 ? allowed : 0
  raysLeft -= points + 2
  const count = sums.length
  // Free again by the time that a part of the interval is looked at.
  kronrod.fill(0, 0, count)
  gauss.fill(0, 0, count)
  let isOne = true
  for (let i = 0; i < points; i++) {
    const tau = at[i]!
    let share = tau
    let speed = 1
    if (rootA && rootB) {
      share = tau * tau * (3 - 2 * tau)
      speed = 6 * tau * (1 - tau)
    } else if (rootA) {
      share = tau * tau
      speed = 2 * tau
    } else if (rootB) {
      share = tau * (2 - tau)
      speed = 2 * (1 - tau)
    }
    const t = a + (b - a) * share
    places[i + 1] = t
    point.fill(0, 0, count)
    names[i + 1] = f.addAt(t, point)
    if (names[i + 1] !== names[1]) isOne = false
    const k = kronrodWeight[i]! * speed
    const g = gaussWeight[i]! * speed
    for (let j = 0; j < count; j++) {
      kronrod[j]! += k * point[j]!
      gauss[j]! += g * point[j]!
    }
  }
  if (depth > 0 && f.eventsAt) {
    places[0] = a + HAIR * (b - a)
    const last = points + 1
    places[last] = b - HAIR * (b - a)
    names[0] = f.addAt(places[0], point)
    names[last] = f.addAt(places[last], point)
    if (!isOne || names[0] !== names[1] || names[last] !== names[1])
      return cut(f, a, b, rootA, rootB, depth, points + 2, [], sums)
    const dips = f.mayDip ? dipsBetween(f, places, points + 2).filter((t) => nameAt(f, t) !== names[1]) : []
    if (f.mayDip) raysLeft -= points + 2
    if (dips.length > 0) return cut(f, a, b, rootA, rootB, depth, points + 2, dips, sums)
  }
  let off = 0
  for (let j = 0; j < count; j++) {
    const size = Math.max(f.scales[j]!, Math.abs(kronrod[j]! * (b - a)))
    const agree = j === 0 ? AGREE_FIRST : AGREE
    off = Math.max(off, (Math.abs(kronrod[j]! - gauss[j]!) * (b - a)) / (size * agree))
  }
  if (off > 1 && depth > 0) {
    if (points < LONG_RULE.at.length) return refine(f, a, b, rootA, rootB, depth, sums)
    const m = (a + b) / 2
    return refine(f, a, m, rootA, false, depth - 1, sums) + refine(f, m, b, false, rootB, depth - 1, sums)
  }
  for (let j = 0; j < count; j++) sums[j]! += kronrod[j]! * (b - a)
  const size = Math.max(f.scales[0]!, Math.abs(kronrod[0]! * (b - a)))
  // Sizes that underflow leave no error; a sum that is no number has one that is none either.
  if (size === 0) return 0
  const part = (Math.abs(kronrod[0]! - gauss[0]!) * (b - a)) / size
  return size * Math.min(part, (200 * part) ** 1.5)
}

/** Cuts an interval wherever its pattern changes, and integrates each part. */
function cut(
  f: Patterned,
  a: number,
  b: number,
  rootA: boolean,
  rootB: boolean,
  depth: number,
  looked: number,
  dips: readonly number[],
  sums: Float64Array,
): number {
  const cuts: number[] = [a]
  const ts = [...places.subarray(0, looked), ...dips].sort((s, t) => s - t)
  const ns = dips.length > 0 ? ts.map((t) => nameAt(f, t)) : Array.from(names)
  for (let i = 1; i < ts.length; i++) {
    const before = cuts.length
    search(f, ts[i - 1]!, ns[i - 1]!, ts[i]!, ns[i]!, cuts, before + CUTS, 24)
  }
  let error = 0
  const least = 1e-13 * (b - a)
  const parts = [...cuts, b].filter((t, i, all) => i === 0 || i === all.length - 1 || t - all[i - 1]! > least)
  for (let i = 1; i < parts.length; i++)
    error += refine(
      f,
      parts[i - 1]!,
      parts[i]!,
      i > 1 || rootA,
      i < parts.length - 1 || rootB,
      depth >> 1,
      sums,
      f.isShort ? SHORT_RULE : LONG_RULE,
    )
  return error
}

const eventsA = new Float64Array(MOST_EVENTS)
const eventsB = new Float64Array(MOST_EVENTS)
const eventsT = new Float64Array(MOST_EVENTS)
let nothing = new Float64Array(16)

function search(
  f: Patterned,
  a: number,
  nameA: number,
  b: number,
  nameB: number,
  cuts: number[],
  most: number,
  depth: number,
): void {
  if (nameA === nameB || cuts.length >= most || !(b > a) || raysLeft <= 0) return
  // About as many as it takes to find a root.
  raysLeft -= 24
  const at = changeBetween(f, a, nameA, b)
  const inset = Math.max(HAIR * Math.min(at - a, b - at), 4e-16 * Math.max(Math.abs(a), Math.abs(b)))
  const isAtA = !(at - inset > a)
  const isAtB = !(at + inset < b)
  if (depth === 0 || (isAtA && isAtB)) {
    cuts.push(at)
    return
  }
  // What changes right at an end leaves the rest to be searched.
  const before = isAtA ? nameA : nameAt(f, at - inset)
  const after = isAtB ? nameB : nameAt(f, at + inset)
  if (!isAtA) search(f, a, nameA, at - inset, before, cuts, most, depth - 1)
  if (before !== after) cuts.push(at)
  if (!isAtB) search(f, at + inset, after, b, nameB, cuts, most, depth - 1)
}

function nameAt(f: Patterned, t: number): number {
  return f.nameAt ? f.nameAt(t) : f.addAt(t, nothing)
}

function changeBetween(f: Patterned, a: number, nameA: number, b: number): number {
  const { eventsAt } = f
  const countA = eventsAt?.(a, eventsA)
  const countB = eventsAt?.(b, eventsB)
  const i = countA !== undefined && countA === countB ? clearest(countA) : -1
  if (eventsAt && i >= 0) {
    const root = bracketedRoot(
      (t) => {
        eventsAt(t, eventsT)
        return eventsT[i]!
      },
      a,
      b,
      0,
    )
    if (root.ok) return root.value.x
  }
  // Two roots that meet inside leave no trace at the ends.
  let lo = a
  let hi = b
  for (let i = 0; i < HALVINGS; i++) {
    const m = (lo + hi) / 2
    if (!(m > lo && m < hi)) break
    if (nameAt(f, m) === nameA) lo = m
    else hi = m
  }
  return (lo + hi) / 2
}

/**
 * Which event changes its sign and is furthest from zero at both ends; −1 for none. One that is zero but for rounding, as
 * the difference of wall and floor at the deepest place of a ray on which they meet, would cut where nothing changes.
 */
function clearest(count: number): number {
  let size = 0
  for (let i = 0; i < count; i++) size = Math.max(size, Math.abs(eventsA[i]!), Math.abs(eventsB[i]!))
  let best = -1
  let most = 64 * ROUNDING * size
  for (let i = 0; i < count; i++) {
    if (eventsA[i]! > 0 === eventsB[i]! > 0) continue
    const least = Math.min(Math.abs(eventsA[i]!), Math.abs(eventsB[i]!))
    if (least > most) {
      most = least
      best = i
    }
  }
  return best
}
