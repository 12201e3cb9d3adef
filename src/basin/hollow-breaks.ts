import { bracketedRoot, leastBetween } from '../base/index.ts'
import { hollowTurn } from './ray-hollow.ts'
import { CLOSE, NEARLY } from './tolerance.ts'
import { floorOn, type RaySpan, rulingOn, type WallLaw } from './wall-kind.ts'

const LOOKS = 12
const MOST_EVENTS = 8

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
  ofLaw: WallLaw,
  onSpan: RaySpan,
  from: number,
  to: number,
  atLevelM: number,
  out: number[],
): void {
  law = ofLaw
  span = onSpan
  levelM = atLevelM
  const turn = hollowTurn(span.hollow, from, to)
  if (turn !== undefined) {
    out.push(turn)
    rootsWithin(from, turn, out)
    rootsWithin(turn, to, out)
  } else rootsWithin(from, to, out)
}

/** The event that is looked at: one function for all of them, for rays come by the hundred thousand. */
let law: WallLaw
let span: RaySpan
let levelM = 0
let event = 0
let sign = 1

function value(n: number): number {
  law.eventsAt(span, n, levelM, probe, 0)
  return sign * probe[event]!
}

function rootsWithin(from: number, to: number, out: number[]): void {
  sign = 1
  const count = law.eventsAt(span, from, levelM, before, 0)
  let last = from
  let n = from + (to - from) * SHARES[1]!
  law.eventsAt(span, n, levelM, here, 0)
  for (let i = 1; i <= LOOKS; i++) {
    const next = i < LOOKS ? from + (to - from) * SHARES[i + 1]! : n
    if (i < LOOKS) law.eventsAt(span, next, levelM, after, 0)
    for (event = 0; event < count; event++) {
      const [a, b, c] = [before[event]!, here[event]!, after[event]!]
      if (a > 0 !== b > 0) out.push(rootBetween(last, n))
      else if (i < LOOKS && b > 0 === c > 0 && Math.abs(b) < Math.abs(a) && Math.abs(b) < Math.abs(c)) {
        sign = b > 0 ? 1 : -1
        const least = leastBetween(value, last, next, CLOSE * (to - from))
        if (least.value < 0) out.push(rootBetween(last, least.x), rootBetween(least.x, next))
        sign = 1
      }
    }
    before.set(here)
    here.set(after)
    last = n
    n = next
  }
}

/** Root of an event between two places where its signs differ; the first of them where it is no number. */
function rootBetween(a: number, b: number): number {
  const root = bracketedRoot(value, a, b, 0)
  return root.ok ? root.value.x : a
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
    for (const n of [a, b, leastBetween((m) => -depth(m), lo, hi, CLOSE * (hi - lo)).x])
      if (depth(n) > depth(best)) best = n
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
