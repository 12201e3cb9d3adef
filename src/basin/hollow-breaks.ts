import { hollowTurn } from './ray-hollow.ts'
import { NEARLY, ROUNDING } from './tolerance.ts'
import { floorOn, type RaySpan, rulingOn, type WallLaw } from './wall-kind.ts'

const LOOKS = 12
const MOST_EVENTS = 8
const GOLDEN = (Math.sqrt(5) - 1) / 2
const NARROWINGS = 60

/** Shares of a stretch, denser toward its ends, where a cove is steep and a hollow may end at its rim. */
const SHARES = Array.from({ length: LOOKS + 1 }, (_, i) => (1 - Math.cos((Math.PI * i) / LOOKS)) / 2)

const probe = new Float64Array(MOST_EVENTS)
const before = new Float64Array(MOST_EVENTS)
const here = new Float64Array(MOST_EVENTS)
const after = new Float64Array(MOST_EVENTS)

/**
 * Distances along a stretch of a ray over a hollow at which one of the wall's events changes its sign, in no order.
 * Method: looked for between 13 places of each part up to and from the place nearest to the centre; where an event comes
 *   near to zero between three of them its least value is closed in on, so that a pair of roots is found too.
 * Accuracy: a few roundings of the distance.
 */
export function pushHollowRoots(
  law: WallLaw,
  span: RaySpan,
  from: number,
  to: number,
  levelM: number,
  out: number[],
): void {
  const turn = hollowTurn(span.hollow, from, to)
  if (turn !== undefined) {
    out.push(turn)
    rootsWithin(law, span, from, turn, levelM, out)
    rootsWithin(law, span, turn, to, levelM, out)
  } else rootsWithin(law, span, from, to, levelM, out)
}

function rootsWithin(law: WallLaw, span: RaySpan, from: number, to: number, levelM: number, out: number[]): void {
  const at = (i: number): number => from + (to - from) * SHARES[i]!
  const eventAt = (event: number, n: number): number => {
    law.eventsAt(span, n, levelM, probe, 0)
    return probe[event]!
  }
  const count = law.eventsAt(span, from, levelM, before, 0)
  law.eventsAt(span, at(1), levelM, here, 0)
  for (let i = 1; i <= LOOKS; i++) {
    if (i < LOOKS) law.eventsAt(span, at(i + 1), levelM, after, 0)
    for (let e = 0; e < count; e++) {
      const [a, b, c] = [before[e]!, here[e]!, after[e]!]
      const value = (n: number): number => eventAt(e, n)
      if (a > 0 !== b > 0) out.push(rootBetween(value, at(i - 1), a, at(i), b))
      else if (i < LOOKS && b > 0 === c > 0 && Math.abs(b) < Math.abs(a) && Math.abs(b) < Math.abs(c)) {
        const sign = b > 0 ? 1 : -1
        const n = lowestBetween((m) => sign * value(m), at(i - 1), at(i + 1))
        const v = value(n)
        if (v > 0 === b > 0) continue
        out.push(rootBetween(value, at(i - 1), a, n, v), rootBetween(value, n, v, at(i + 1), c))
      }
    }
    before.set(here)
    here.set(after)
  }
}

/** Regula falsi, an end that stays is halved (Illinois). */
function rootBetween(value: (n: number) => number, a: number, fa: number, b: number, fb: number): number {
  let m = a
  let side = 0
  for (let i = 0; i < 80 && b - a > 4 * ROUNDING * b; i++) {
    m = (a * fb - b * fa) / (fb - fa)
    if (!(m > a && m < b)) m = (a + b) / 2
    const f = value(m)
    if (f === 0) return m
    if (f > 0 === fa > 0) {
      a = m
      fa = f
      if (side === 1) fb /= 2
      side = 1
    } else {
      b = m
      fb = f
      if (side === -1) fa /= 2
      side = -1
    }
  }
  return m
}

/** Where a function that falls and rises is least, by golden section [m]. */
function lowestBetween(value: (n: number) => number, from: number, to: number): number {
  let a = from
  let b = to
  let p = b - GOLDEN * (b - a)
  let q = a + GOLDEN * (b - a)
  let vp = value(p)
  let vq = value(q)
  for (let i = 0; i < NARROWINGS; i++) {
    if (vp < vq) {
      b = q
      q = p
      vq = vp
      p = b - GOLDEN * (b - a)
      vp = value(p)
    } else {
      a = p
      p = q
      vp = vq
      q = a + GOLDEN * (b - a)
      vq = value(q)
    }
  }
  return vp < vq ? p : q
}

/** Distance at which a stretch over a hollow is deepest for all that the wall and what rules tell [m]. */
export function deepestOnHollow(law: WallLaw, span: RaySpan): number {
  const { from, to } = span
  const depth = (n: number): number => depthOnHollow(law, span, n)
  let best = to
  const turn = hollowTurn(span.hollow, from, to) ?? from
  for (const [a, b] of [
    [from, turn],
    [turn, to],
  ] as const) {
    let top = 0
    for (let i = 1; i <= LOOKS; i++) if (depth(a + (b - a) * SHARES[i]!) > depth(a + (b - a) * SHARES[top]!)) top = i
    const lo = a + (b - a) * SHARES[Math.max(0, top - 1)]!
    const hi = a + (b - a) * SHARES[Math.min(LOOKS, top + 1)]!
    for (const n of [a, b, lowestBetween((m) => -depth(m), lo, hi)]) if (depth(n) > depth(best)) best = n
  }
  return best
}

/** Depth on a stretch with the wall [m]. */
function depthOnHollow(law: WallLaw, span: RaySpan, n: number): number {
  const allowed = law.allowedM(floorOn(span, n), n)
  return span.isFeature ? Math.min(allowed, rulingOn(span, n)) : allowed
}

/** Distances along a stretch at which the wall's face comes to meet what rules, in no order. */
export function meetsOnHollow(law: WallLaw, span: RaySpan, out: number[]): void {
  const lean = (n: number): number => law.leanAt(floorOn(span, n), n)
  const roots: number[] = []
  pushHollowRoots(law, span, span.from, span.to, 0, roots)
  for (const n of roots)
    if (
      n > span.from &&
      n < span.to &&
      Math.abs(law.allowedM(floorOn(span, n), n) - rulingOn(span, n)) < NEARLY * n &&
      lean(n / 2) > 0
    )
      out.push(n)
}
