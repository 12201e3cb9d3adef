import { type Curve, evaluate, newJet } from './curve.ts'
import type { Meeting } from './intersect.ts'
import { norm } from './norm.ts'
import type { Span } from './span.ts'

/** A slab along a chord that holds a stretch of a curve. */
interface Slab {
  readonly t0: number
  readonly t1: number
  readonly x: number
  readonly y: number
  readonly ux: number
  readonly uy: number
  readonly length: number
  readonly lo: number
  readonly hi: number
}

/** Meetings that a new one is compared with. */
const MOST_LOOKED_BACK = 64

/** How far beside a stretch Newton may look, and the step that it must come down to, as shares of the stretch. */
const BESIDE = 1 / 4
const SETTLED = 1e-9

const ja = newJet()
const jb = newJet()

/**
 * Meetings of two spans of any kind, by halving: two stretches whose slabs are apart don't meet; two that cross at an
 * angle wider than they bend meet at most once, and Newton finds it; stretches thinner than the grain touch.
 */
export function searchMeetings(a: Span, b: Span, grainM: number, out: Meeting[]): void {
  const stack: [Slab, Slab][] = [[slabOf(a.curve, a.t0, a.t1), slabOf(b.curve, b.t0, b.t1)]]
  let budget = 20000
  while (stack.length > 0 && budget-- > 0) {
    const [p, q] = stack.pop()!
    if (areApart(p, q, grainM)) continue
    const bendP = (p.hi - p.lo) / p.length
    const bendQ = (q.hi - q.lo) / q.length
    const sine = Math.abs(p.ux * q.uy - p.uy * q.ux)
    if (bendP < 0.1 && bendQ < 0.1 && sine > 5 * (bendP + bendQ) && cross(a, b, p, q, grainM, out)) continue
    const thin = p.hi - p.lo < grainM / 4 && q.hi - q.lo < grainM / 4
    if (
      (thin && sine * Math.min(p.length, q.length) < 4 * grainM) ||
      (p.length < 4 * grainM && q.length < 4 * grainM)
    ) {
      touch(a, b, p, q, grainM, out)
      continue
    }
    if (p.length > q.length) {
      const middle = (p.t0 + p.t1) / 2
      stack.push([slabOf(a.curve, p.t0, middle), q], [slabOf(a.curve, middle, p.t1), q])
    } else {
      const middle = (q.t0 + q.t1) / 2
      stack.push([p, slabOf(b.curve, q.t0, middle)], [p, slabOf(b.curve, middle, q.t1)])
    }
  }
}

function slabOf(c: Curve, t0: number, t1: number): Slab {
  evaluate(c, t0, ja)
  const x = ja.x
  const y = ja.y
  const dx0 = ja.dx
  const dy0 = ja.dy
  evaluate(c, t1, ja)
  const length = norm(ja.x - x, ja.y - y)
  const ux = length > 0 ? (ja.x - x) / length : 1
  const uy = length > 0 ? (ja.y - y) / length : 0
  let lo = 0
  let hi = 0
  if (c.kind === 'arc') {
    const sagitta = -c.radius * (1 - Math.cos((c.turn * (t1 - t0)) / 2))
    lo = Math.min(0, sagitta)
    hi = Math.max(0, sagitta)
  } else if (c.kind === 'cubic') {
    // Inner control points of the stretch: its ends plus a third of the derivative there.
    const h = (t1 - t0) / 3
    const n1 = h * (dy0 * ux - dx0 * uy)
    const n2 = (ja.y - y - h * ja.dy) * ux - (ja.x - x - h * ja.dx) * uy
    lo = Math.min(0, n1, n2)
    hi = Math.max(0, n1, n2)
  }
  return { t0, t1, x, y, ux, uy, length: length || Number.MIN_VALUE, lo, hi }
}

function areApart(p: Slab, q: Slab, grainM: number): boolean {
  return isBeside(p, q, grainM) || isBeside(q, p, grainM)
}

/** True where q lies wholly to one side of p's slab, along or across. */
function isBeside(p: Slab, q: Slab, grainM: number): boolean {
  const rx = q.x - p.x
  const ry = q.y - p.y
  const cos = q.ux * p.ux + q.uy * p.uy
  const sin = q.uy * p.ux - q.ux * p.uy
  const s = rx * p.ux + ry * p.uy
  const n = ry * p.ux - rx * p.uy
  const thickLo = Math.min(cos * q.lo, cos * q.hi)
  const thickHi = Math.max(cos * q.lo, cos * q.hi)
  if (n + Math.min(0, sin * q.length) + thickLo > p.hi + grainM) return true
  if (n + Math.max(0, sin * q.length) + thickHi < p.lo - grainM) return true
  const sideLo = Math.min(-sin * q.lo, -sin * q.hi)
  const sideHi = Math.max(-sin * q.lo, -sin * q.hi)
  if (s + Math.min(0, cos * q.length) + sideLo > p.length + grainM) return true
  return s + Math.max(0, cos * q.length) + sideHi < -grainM
}

/**
 * Newton for the one crossing of two stretches that are nearly straight; false where it doesn't settle on a place in or beside
 * both, as it may not where the speed along a curve changes much.
 */
function cross(a: Span, b: Span, p: Slab, q: Slab, grainM: number, out: Meeting[]): boolean {
  const lengthA = p.t1 - p.t0
  const lengthB = q.t1 - q.t0
  let ta = (p.t0 + p.t1) / 2
  let tb = (q.t0 + q.t1) / 2
  let isSettled = false
  for (let i = 0; i < 30; i++) {
    evaluate(a.curve, ta, ja)
    evaluate(b.curve, tb, jb)
    const det = ja.dx * jb.dy - ja.dy * jb.dx
    if (det === 0) return false
    const rx = jb.x - ja.x
    const ry = jb.y - ja.y
    const da = (rx * jb.dy - ry * jb.dx) / det
    const db = (rx * ja.dy - ry * ja.dx) / det
    // Nearly straight as they are they hardly bend more beside the stretches: a crossing there is the only one.
    const nextA = Math.min(Math.max(ta + da, p.t0 - BESIDE * lengthA), p.t1 + BESIDE * lengthA)
    const nextB = Math.min(Math.max(tb + db, q.t0 - BESIDE * lengthB), q.t1 + BESIDE * lengthB)
    isSettled = Math.abs(da) <= SETTLED * lengthA && Math.abs(db) <= SETTLED * lengthB
    const isStill = nextA === ta && nextB === tb
    ta = nextA
    tb = nextB
    if (isStill || Math.abs(da) + Math.abs(db) < 4e-16) break
  }
  if (!isSettled) return false
  const slackA = (2 * grainM * lengthA) / p.length
  const slackB = (2 * grainM * lengthB) / q.length
  if (ta < p.t0 - slackA || ta > p.t1 + slackA || tb < q.t0 - slackB || tb > q.t1 + slackB) {
    // Past a handle on its own point a curve comes back: the crossing found there may be the other one's mirror image.
    return ja.dx * p.ux + ja.dy * p.uy > 0 && jb.dx * q.ux + jb.dy * q.uy > 0
  }
  ta = Math.min(Math.max(ta, a.t0), a.t1)
  tb = Math.min(Math.max(tb, b.t0), b.t1)
  add(a, b, ta, tb, grainM, out)
  return true
}

/** A touch in the middle of two stretches thinner than the grain. */
function touch(a: Span, b: Span, p: Slab, q: Slab, grainM: number, out: Meeting[]): void {
  const shared = [p.t0, p.t1].map((t) => {
    evaluate(a.curve, t, ja)
    return (ja.x - q.x) * q.ux + (ja.y - q.y) * q.uy
  })
  const lo = Math.max(0, Math.min(shared[0]!, shared[1]!))
  const hi = Math.min(q.length, Math.max(shared[0]!, shared[1]!))
  const s = (lo + hi) / 2
  const tb = q.t0 + ((q.t1 - q.t0) * s) / q.length
  const span = shared[1]! - shared[0]!
  const ta = span === 0 ? p.t0 : p.t0 + ((p.t1 - p.t0) * (s - shared[0]!)) / span
  add(a, b, Math.min(Math.max(ta, p.t0), p.t1), tb, grainM, out)
}

function add(a: Span, b: Span, ta: number, tb: number, grainM: number, out: Meeting[]): void {
  evaluate(a.curve, ta, ja)
  evaluate(b.curve, tb, jb)
  if (norm(ja.x - jb.x, ja.y - jb.y) > 2 * grainM) return
  const x = (ja.x + jb.x) / 2
  const y = (ja.y + jb.y) / 2
  // Halving goes along the curves in order: where they run together for long, only the latest meetings can be the same.
  for (let i = out.length - 1; i >= 0 && i >= out.length - MOST_LOOKED_BACK; i--)
    if (norm(out[i]!.x - x, out[i]!.y - y) <= 4 * grainM) return
  out.push({ ta, tb, x, y })
}
