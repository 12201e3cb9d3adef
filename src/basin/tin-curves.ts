import { last, next } from './tin.ts'
import { CURVED, depthOfShares, type Shares, type WetTin } from './tin-types.ts'
import { NEARLY } from './tolerance.ts'

/** A triangle that stands on a chord of a curve: its third corner and how the foot of that divides the chord. */
interface Stand {
  /** Its half-edge along the chord. */
  readonly side: number
  readonly from: number
  readonly to: number
  readonly apex: number
  readonly foot: number
  readonly heightM: number
  readonly areaM2: number
  /** Mean distance of the curve beyond the chord, as seen from the triangle [m]. */
  readonly beyondM: number
}

/** Below so many times the distance of the curve beyond a chord a corner says nothing of the slope there. */
const BLUNT = 8
/** Where the curve lies outside a triangle, its plane would be drawn on too far from this much on. */
const CAPPED = 32
/** A strip is wide enough to be a cell of its own from so many grains on. */
const SEEN = 64

/**
 * True where the floor between a chord of the shore and the curve beyond it runs on level from the chord: the triangle on
 * it is so low that its own plane would reach depths there which nobody measured.
 */
function isCapped({ heightM, beyondM }: Stand): boolean {
  return beyondM > 0 && heightM < CAPPED * beyondM
}

/** True where a triangle stands on its chord aslant, as between three nodes of one shore: its third corner faces none of the chord. */
function isAskew({ foot }: Stand): boolean {
  return foot === 0 || foot === 1
}

/** The half-edges along chords of the shore with level floor beyond them, where that is wide enough to be seen. */
export function cappedSides(wetTin: WetTin, grainM: number): ReadonlySet<number> {
  const sides = new Set<number>()
  for (const { isShore, nodes, offM } of wetTin.chains)
    for (let i = 0; isShore && i < nodes.length; i++)
      for (const stand of standsOn(wetTin, nodes[i]!, nodes[(i + 1) % nodes.length]!, offM[i]!))
        if (isCapped(stand) && stand.beyondM > SEEN * grainM) sides.add(stand.side)
  return sides
}

/**
 * Lowers the depths at the nodes of a curved shore so that the planes, drawn on from the chords to the curve, have the
 * shore's depth there on the mean: the floor would else be too shallow all along a shore that bends round the water.
 * Equation: Δd = share · Σ over both chords of ½ beyond · (d_apex − d_foot)/height.
 */
export function bendShares(wetTin: WetTin): void {
  const bent = new Map<number, Map<number, number>>()
  for (const chain of wetTin.chains) {
    if (!chain.isShore) continue
    const count = chain.nodes.length
    for (let i = 0; i < count; i++) {
      for (const stand of standsOn(wetTin, chain.nodes[i]!, chain.nodes[(i + 1) % count]!, chain.offM[i]!)) {
        // A corner that is nearly on the chord itself says nothing of the slope there; nor does one far aside.
        if (stand.heightM < BLUNT * Math.abs(stand.beyondM) || (isCapped(stand) && isAskew(stand))) continue
        for (const k of [i, (i + 1) % count]) {
          const step = (chain.share[k]! * stand.beyondM) / (2 * stand.heightM)
          if (step === 0) continue
          const node = chain.nodes[k]!
          const sum = bent.get(node) ?? new Map(wetTin.shares[node]!)
          bent.set(node, sum)
          addShares(sum, wetTin.shares[stand.apex]!, step)
          addShares(sum, wetTin.shares[stand.from]!, -step * (1 - stand.foot))
          addShares(sum, wetTin.shares[stand.to]!, -step * stand.foot)
        }
      }
    }
  }
  for (const [node, shares] of bent) wetTin.shares[node] = shares
}

/**
 * Bound of what chords of curved shores and contours may misplace [m³].
 * Equation: Σ (greatest distance of curve from chord · slope + fall along the chord) · area, over the triangles on chords.
 * Valid for: curves that bend little from chord to chord, where the greatest distance is 3/2 of the mean one.
 * Source: a linear depth whose base line is off by h is off by slope · h at most; own.
 */
export function chordError(wetTin: WetTin, depths: readonly number[]): number {
  const depth = (v: number): number => depthOfShares(wetTin.shares[v]!, depths)
  const loose = looseCorners(wetTin)
  let sum = 0
  for (const { nodes, offM } of wetTin.chains)
    for (let i = 0; i < nodes.length; i++) {
      if (offM[i] !== 0)
        for (const [at, to] of [
          [nodes[i]!, nodes[(i + 1) % nodes.length]!],
          [nodes[(i + 1) % nodes.length]!, nodes[i]!],
        ] as const)
          if (loose.has(at)) sum += slideError(wetTin, depth, at, to) / 2
      for (const stand of standsOn(wetTin, nodes[i]!, nodes[(i + 1) % nodes.length]!, offM[i]!)) {
        const a = depth(stand.from)
        const b = depth(stand.to)
        const fall = depth(stand.apex) - a - (b - a) * stand.foot
        const slope = Math.abs(fall) / Math.max(stand.heightM, 1.5 * Math.abs(stand.beyondM))
        sum += (1.5 * Math.abs(stand.beyondM) * slope + Math.abs(b - a)) * stand.areaM2
      }
    }
  return sum
}

/** What the triangles about a corner change by where it slides along a chord: fall along it · a third of their area. */
function slideError({ tin, isWet }: WetTin, depth: (v: number) => number, at: number, to: number): number {
  const { x, y, corners } = tin
  const mx = x[to]! - x[at]!
  const my = y[to]! - y[at]!
  let sum = 0
  for (const e of tin.around(at)) {
    if (isWet[(e / 3) | 0] === 0) continue
    const b = corners[next(e)]!
    const c = corners[last(e)]!
    const ux = x[b]! - x[at]!
    const uy = y[b]! - y[at]!
    const vx = x[c]! - x[at]!
    const vy = y[c]! - y[at]!
    // Fall along the chord times twice the area, over six.
    const up = depth(b) - depth(at)
    const on = depth(c) - depth(at)
    sum += Math.abs((up * vy - on * uy) * mx + (on * ux - up * vx) * my) / 6
  }
  return sum
}

/** The chords of curves beside corners that triangles without a chord have on them. */
export function looseChords(wetTin: WetTin): { chain: number; chord: number }[] {
  const loose = looseCorners(wetTin)
  const chords: { chain: number; chord: number }[] = []
  for (const [chain, { nodes, offM }] of wetTin.chains.entries())
    for (let i = 0; i < nodes.length; i++)
      if (offM[i] !== 0 && (loose.has(nodes[i]!) || loose.has(nodes[(i + 1) % nodes.length]!)))
        chords.push({ chain, chord: i })
  return chords
}

/** Corners of wet triangles that stand on no chord of a curve, unless all corners hang on the same depths. */
function looseCorners({ tin, isWet, shares }: WetTin): Set<number> {
  const { corners, fixed } = tin
  const loose = new Set<number>()
  for (let t = 0; t < isWet.length; t++) {
    const sides = [3 * t, 3 * t + 1, 3 * t + 2]
    if (isWet[t] === 0 || sides.some((e) => (fixed[e]! & CURVED) !== 0)) continue
    const [a, b, c] = sides.map((e) => corners[e]!) as [number, number, number]
    if (hangAlike(shares[a]!, shares[b]!) && hangAlike(shares[b]!, shares[c]!)) continue
    for (const v of [a, b, c]) loose.add(v)
  }
  return loose
}

/** Whether two nodes take the same shares of the same depths, but for rounding. */
function hangAlike(a: Shares, b: Shares): boolean {
  if (a === b) return true
  if (a.size !== b.size) return false
  for (const [index, share] of a) if (!(Math.abs((b.get(index) ?? Infinity) - share) <= NEARLY)) return false
  return true
}

/** The wet triangles on both sides of a chord of a curve. */
function standsOn({ tin, isWet }: WetTin, a: number, b: number, leftM: number): Stand[] {
  if (leftM === 0) return []
  const { x, y, corners, across } = tin
  const stands: Stand[] = []
  const along = tin.between(a, b)
  for (const e of along < 0 ? [] : [along, across[along]!]) {
    if (isWet[(e / 3) | 0] === 0) continue
    const from = corners[e]!
    const to = corners[next(e)]!
    const apex = corners[last(e)]!
    const ux = x[to]! - x[from]!
    const uy = y[to]! - y[from]!
    const length = Math.hypot(ux, uy)
    const px = x[apex]! - x[from]!
    const py = y[apex]! - y[from]!
    const heightM = (ux * py - uy * px) / length
    const foot = Math.min(1, Math.max(0, (ux * px + uy * py) / (length * length)))
    // The triangle lies to the left of its half-edge, so what is beyond the chord lies to the right.
    const beyondM = e === along ? -leftM : leftM
    stands.push({ side: e, from, to, apex, foot, heightM, areaM2: (heightM * length) / 2, beyondM })
  }
  return stands
}

function addShares(sum: Map<number, number>, shares: Shares, factor: number): void {
  for (const [index, share] of shares) sum.set(index, (sum.get(index) ?? 0) + factor * share)
}
