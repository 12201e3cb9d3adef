import { gaussRule } from './gauss.ts'
import { pushHollowRoots } from './hollow-breaks.ts'
import { mark } from './pattern-integral.ts'
import { isSteepAtRim } from './radial-law.ts'
import { hollowFall, pushHollowCuts } from './ray-hollow.ts'
import { FOOT, NEARLY } from './tolerance.ts'
import {
  AREA,
  AREA_X,
  AREA_Y,
  FEATURE,
  FLOOR,
  floorOn,
  type RayFrame,
  type RaySpan,
  rulingOn,
  SHORE,
  VOLUME,
  WALL,
  type WallLaw,
} from './wall-kind.ts'

const RULE = gaussRule(12)
const cuts: number[] = []

/** One stretch between breaks: what makes the depth there, and whether it is wet without the wall and with it. */
interface HollowPart {
  /** 0 what rules, 1 the wall's leaning face, 2 its level top. */
  kind: 0 | 1 | 2
  wetBefore: boolean
  wetAfter: boolean
}

const part: HollowPart = { kind: 0, wetBefore: false, wetAfter: false }

/**
 * Goes through the stretches between the breaks of a span over a hollow, and returns a number for their pattern.
 * `visit` gets a stretch's ends; `turn` the places where water begins or ends, and whether the wall's face is on a side.
 */
export function alongHollow(
  law: WallLaw,
  span: RaySpan,
  levelM: number,
  visit: (a: number, b: number, part: HollowPart) => void,
  turn?: (n: number, isOnFace: boolean) => void,
): number {
  const { from } = span
  // Beyond its radius a cove changes nothing.
  const to = law.isSteepAtShore ? Math.min(span.to, law.size.value) : span.to
  if (!(to > from)) return 0
  cuts.length = 0
  pushHollowRoots(law, span, from, to, levelM, cuts)
  pushHollowCuts(span.hollow!, from, to, cuts)
  cuts.sort(ascending)
  let name = span.hollow!.law.form === 'cone' ? 3 + Math.sign(span.hollow!.across) : 3
  let code = -1
  let wasWet = -1
  let lastKind = 0
  let a = from
  for (let i = 0; i <= cuts.length; i++) {
    const b = i === cuts.length ? to : Math.min(cuts[i]!, to)
    if (!(b > a)) continue
    const middle = (a + b) / 2
    const f = floorOn(span, middle)
    const k = rulingOn(span, middle)
    const allowed = law.allowedM(f, middle)
    part.kind = allowed >= k ? 0 : law.leanAt(f, middle) > 0 ? 1 : 2
    part.wetBefore = k + levelM > 0
    part.wetAfter = Math.min(allowed, k) + levelM > 0
    const next = part.kind === 0 ? 0 : 4 * part.kind + (part.wetBefore ? 2 : 0) + (part.wetAfter ? 1 : 0)
    // What is so short that rounding decides whether it is there counts for no pattern.
    if (b - a > NEARLY * to) {
      if (next !== code) name = mark(name, next)
      code = next
    }
    const isWet = part.wetAfter ? 1 : 0
    if (turn && wasWet >= 0 && wasWet !== isWet) turn(a, part.kind === 1 || lastKind === 1)
    wasWet = isWet
    lastKind = part.kind
    if (part.kind > 0 && (part.wetBefore || part.wetAfter)) visit(a, b, part)
    a = b
    if (a >= to) break
  }
  return name
}

function ascending(a: number, b: number): number {
  return a - b
}

/**
 * Visits the points of a rule for ∫ … dn over a stretch.
 * Method: Gauss's 12 points; under a cove in p, n = r (1 − cos p), which takes away the root at the shore; beside the steep
 *   rim of a cap in three parts each way, with t = 3τ² − 2τ³.
 */
export function ruleOnHollow(
  law: WallLaw,
  span: RaySpan,
  a: number,
  b: number,
  visit: (n: number, weight: number) => void,
): void {
  const r = law.isSteepAtShore ? law.size.value : 0
  const angleOf = (n: number): number => 2 * Math.asin(Math.sqrt(Math.min(1, Math.max(0, n / (2 * r)))))
  const pa = r > 0 ? angleOf(a) : a
  const run = (r > 0 ? angleOf(b) : b) - pa
  const isSteep = isSteepAtRim(span.hollow!.law)
  const parts = isSteep ? 3 : 1
  for (let part = 0; part < parts; part++)
    for (let i = 0; i < RULE.at.length; i++) {
      let u = (part + RULE.at[i]!) / parts
      let weight = (RULE.weight[i]! * run) / parts
      if (isSteep) {
        weight *= 6 * u * (1 - u)
        u = u * u * (3 - 2 * u)
      }
      const q = pa + run * u
      if (r > 0) visit(2 * r * Math.sin(q / 2) ** 2, weight * r * Math.sin(q))
      else visit(q, weight)
    }
}

/**
 * What a wall changes along one stretch of a ray over a hollow.
 * Equation: depth before k(n), after min(k, allowed(f, n)), f the hollow's law at √((n + b)² + c²), each term times
 *   h0 + h1 n; surfaces by √(1 + |∇d|²).
 * Symbols: b, c place of the ray against the hollow's centre (ray-hollow.ts).
 * Accuracy: 1e-12 of the terms, by a short rule between the breaks.
 */
export function addHollowSpan(
  law: WallLaw,
  ray: RayFrame,
  span: RaySpan,
  levelM: number,
  sums: Float64Array | undefined,
): number {
  if (!sums) return alongHollow(law, span, levelM, () => {})
  const onto = law.part === 'wall' ? WALL : FLOOR
  return alongHollow(
    law,
    span,
    levelM,
    (a, b, { wetBefore, wetAfter }) =>
      ruleOnHollow(law, span, a, b, (n, dn) => {
        const w = dn * (ray.h0 + ray.h1 * n)
        const f = floorOn(span, n)
        const k = rulingOn(span, n)
        const [along, across] = hollowFall(span.hollow!, n)
        if (wetBefore) {
          const [g, h] = span.isFeature ? [span.k1, span.kAcross] : [along, across]
          sums[span.isFeature ? FEATURE : FLOOR]! -= w * Math.sqrt(1 + g * g + h * h)
        }
        if (wetAfter) {
          const lean = law.leanAt(f, n)
          const [g, h] = lean > 0 && law.followsFloor(f, n) ? [along + lean, across] : [lean, 0]
          sums[VOLUME]! -= w * (k - law.allowedM(f, n))
          sums[onto]! += w * Math.sqrt(1 + g * g + h * h)
        } else {
          sums[VOLUME]! -= w * (k + levelM)
          sums[AREA]! -= w
          sums[AREA_X]! -= w * (ray.x + ray.nx * n)
          sums[AREA_Y]! -= w * (ray.y + ray.ny * n)
        }
      }),
    (n, isOnFace) => {
      // A shore that lies on the wall's face; one on its level top, or where a feature ends, the edges count, and one at the
      // foot the shore (see footSlack).
      if (!isOnFace || n <= FOOT * law.size.value) return
      const off = Math.abs(law.allowedM(floorOn(span, n), n) + levelM)
      // Where the face begins rounding decides whether the floor is deep enough for one: it is the face of any deeper floor.
      const lean = law.leanAt(Infinity, n)
      if (!(lean > 0) || off > NEARLY * (n + span.to) || !(rulingOn(span, n) + levelM > off)) return
      const [along, across] = law.followsFloor(Infinity, n) ? hollowFall(span.hollow!, n) : [0, 0]
      if (along + lean !== 0) sums[SHORE]! += (ray.h0 + ray.h1 * n) * Math.hypot(1, across / (along + lean))
    },
  )
}
