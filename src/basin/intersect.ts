import { orient2d } from 'robust-predicates'
import { type ArcCurve, arcCentre, evaluate, type LineCurve, newJet } from './curve.ts'
import { searchMeetings } from './intersect-search.ts'
import { norm } from './norm.ts'
import { type Foot, footOn, type Span } from './span.ts'
import { ROUND_RAD } from './tolerance.ts'

/** One place where two spans meet. */
export interface Meeting {
  ta: number
  tb: number
  x: number
  y: number
}

const foot: Foot = { t: 0, x: 0, y: 0, distance: 0 }
const jet = newJet()

/**
 * All places where two spans meet, polished on the exact curves: crossings, touches, and the ends of a common stretch
 * (the stretch itself shows as two stretches between the same nodes). Nearer than the grain is one place.
 */
export function meetings(a: Span, b: Span, grainM: number): Meeting[] {
  const found: Meeting[] = []
  endContacts(a, b, grainM, false, found)
  endContacts(b, a, grainM, true, found)
  if (a.curve.kind === 'line' && b.curve.kind === 'line') {
    if (found.length === 0) crossLines(a, b, found)
    return found
  }
  if (found.length >= 2 && runTogether(a, b, found, grainM)) return found
  const inner: Meeting[] = []
  if (a.curve.kind === 'line' && b.curve.kind === 'arc' && isRound(b.curve))
    lineArc(a, b, a.curve, b.curve, false, grainM, inner)
  else if (a.curve.kind === 'arc' && b.curve.kind === 'line' && isRound(a.curve))
    lineArc(b, a, b.curve, a.curve, true, grainM, inner)
  else if (a.curve.kind === 'arc' && b.curve.kind === 'arc' && isRound(a.curve) && isRound(b.curve))
    arcArc(a, b, a.curve, b.curve, grainM, inner)
  else searchMeetings(a, b, grainM, inner)
  for (const meeting of inner) if (!isKnown(a, b, meeting, found, grainM)) found.push(meeting)
  return found
}

/** A centre that is far away compared with the arc is of no use. */
function isRound(arc: ArcCurve): boolean {
  return Math.abs(arc.turn) > ROUND_RAD
}

function endContacts(a: Span, b: Span, grainM: number, swapped: boolean, found: Meeting[]): void {
  for (let end = 0; end < 2; end++) {
    const x = end === 0 ? a.x0 : a.x1
    const y = end === 0 ? a.y0 : a.y1
    if (x < b.minX - grainM || x > b.maxX + grainM || y < b.minY - grainM || y > b.maxY + grainM) continue
    footOn(b.curve, b.t0, b.t1, x, y, foot)
    if (foot.distance > grainM) continue
    const ta = end === 0 ? a.t0 : a.t1
    let tb = foot.t
    // An end on an end is exactly that.
    if (norm(x - b.x0, y - b.y0) <= grainM) tb = b.t0
    else if (norm(x - b.x1, y - b.y1) <= grainM) tb = b.t1
    let isNew = true
    for (const m of found) if (Math.abs(m.x - x) <= 2 * grainM && Math.abs(m.y - y) <= 2 * grainM) isNew = false
    if (isNew) found.push(swapped ? { ta: tb, tb: ta, x, y } : { ta, tb, x, y })
  }
}

function crossLines(a: Span, b: Span, found: Meeting[]): void {
  const d0 = orient2d(a.x0, a.y0, a.x1, a.y1, b.x0, b.y0)
  const d1 = orient2d(a.x0, a.y0, a.x1, a.y1, b.x1, b.y1)
  if (d0 > 0 === d1 > 0) return
  const d2 = orient2d(b.x0, b.y0, b.x1, b.y1, a.x0, a.y0)
  const d3 = orient2d(b.x0, b.y0, b.x1, b.y1, a.x1, a.y1)
  if (d2 > 0 === d3 > 0) return
  const u = d2 / (d2 - d3)
  const v = d0 / (d0 - d1)
  const ta = a.t0 + (a.t1 - a.t0) * u
  evaluate(a.curve, ta, jet)
  found.push({ ta, tb: b.t0 + (b.t1 - b.t0) * v, x: jet.x, y: jet.y })
}

/** True where the two curves are one between their outermost contacts. */
function runTogether(a: Span, b: Span, found: readonly Meeting[], grainM: number): boolean {
  let lo = Infinity
  let hi = -Infinity
  for (const m of found) {
    lo = Math.min(lo, m.ta)
    hi = Math.max(hi, m.ta)
  }
  for (let i = 1; i < 4; i++) {
    evaluate(a.curve, lo + ((hi - lo) * i) / 4, jet)
    if (footOn(b.curve, b.t0, b.t1, jet.x, jet.y, foot).distance > grainM) return false
  }
  return true
}

/** A touch beside a contact, with the curves closer than the grain all between, is that contact. */
function isKnown(a: Span, b: Span, m: Meeting, found: readonly Meeting[], grainM: number): boolean {
  for (const f of found) {
    if (norm(m.x - f.x, m.y - f.y) <= 2 * grainM) return true
    evaluate(a.curve, (m.ta + f.ta) / 2, jet)
    if (footOn(b.curve, b.t0, b.t1, jet.x, jet.y, foot).distance <= grainM) return true
  }
  return false
}

/** The t of a span nearest to a place, if the place lies on the span. */
function paramOn(span: Span, x: number, y: number, grainM: number): number | undefined {
  footOn(span.curve, span.t0, span.t1, x, y, foot)
  return foot.distance <= grainM ? foot.t : undefined
}

function take(a: Span, b: Span, x: number, y: number, grainM: number, out: Meeting[]): void {
  const ta = paramOn(a, x, y, grainM)
  const tb = paramOn(b, x, y, grainM)
  if (ta === undefined || tb === undefined) return
  const meeting = { ta, tb, x, y }
  if (!isKnown(a, b, meeting, out, grainM)) out.push(meeting)
}

function lineArc(
  line: Span,
  arc: Span,
  l: LineCurve,
  c: ArcCurve,
  swapped: boolean,
  grainM: number,
  out: Meeting[],
): void {
  const [cx, cy] = arcCentre(c)
  const r = Math.abs(c.radius)
  const dx = l.x1 - l.x0
  const dy = l.y1 - l.y0
  const len = norm(dx, dy)
  const ux = dx / len
  const uy = dy / len
  // The foot from the nearer end of the line keeps the digits.
  const along = (cx - l.x0) * ux + (cy - l.y0) * uy
  const off = (cx - l.x0) * -uy + (cy - l.y0) * ux
  const fx = cx + off * uy
  const fy = cy - off * ux
  const rise = r - Math.abs(off)
  if (rise < -grainM || along < -r - grainM || along > len + r + grainM) return
  const first = swapped ? arc : line
  const second = swapped ? line : arc
  if (rise <= grainM) {
    take(first, second, fx, fy, 2 * grainM, out)
    return
  }
  const half = Math.sqrt(rise * (r + Math.abs(off)))
  take(first, second, fx - half * ux, fy - half * uy, grainM, out)
  take(first, second, fx + half * ux, fy + half * uy, grainM, out)
}

function arcArc(a: Span, b: Span, p: ArcCurve, q: ArcCurve, grainM: number, out: Meeting[]): void {
  const [ax, ay] = arcCentre(p)
  const [bx, by] = arcCentre(q)
  const ra = Math.abs(p.radius)
  const rb = Math.abs(q.radius)
  const d = norm(bx - ax, by - ay)
  if (d > ra + rb + grainM || d < Math.abs(ra - rb) - grainM || d <= grainM) return
  const ux = (bx - ax) / d
  const uy = (by - ay) / d
  const along = (d * d + (ra - rb) * (ra + rb)) / (2 * d)
  // Where the two circles cut the line of centres, on the side of their common chord: apart by the lens's thickness.
  const sa = along < 0 ? -ra : ra
  const sb = d + (along < d ? -rb : rb)
  const h2 = (ra - Math.abs(along)) * (ra + Math.abs(along))
  if (h2 <= 0 || Math.abs(sa - sb) <= grainM) {
    const s = (sa + sb) / 2
    take(a, b, ax + s * ux, ay + s * uy, 2 * grainM, out)
    return
  }
  const fx = ax + along * ux
  const fy = ay + along * uy
  const half = Math.sqrt(h2)
  take(a, b, fx - half * uy, fy + half * ux, grainM, out)
  take(a, b, fx + half * uy, fy - half * ux, grainM, out)
}
