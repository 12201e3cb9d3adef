import { orient2d } from 'robust-predicates'
import { fail, ok, type Result } from '../base/index.ts'
import { fitRun, type RunFit, type Vec } from './fit-run.ts'
import { lengthAlong } from './polyline.ts'
import { problem } from './problems.ts'
import type { Path, Point, Segment } from './types.ts'

/** Tails beyond a crossing near both ends of a stroke are the overshoot of a hand that closes its loop: at most this share. */
const OVERSHOOT = 0.15

/**
 * A hand-drawn loop as few cubics, smooth at every joint and within a tolerance of the stroke.
 * Method: least-squares cubics between joints whose directions are shared, each as long as the stroke allows.
 * Source: P. J. Schneider, An algorithm for automatically fitting digitized curves, Graphics Gems (1990), 612–626 (from memory).
 */
export function fitLoop(points: readonly Point[], toleranceM: number): Result<Path> {
  if (!(toleranceM > 0)) return fail(problem('tolerance-not-positive', ''))
  if (!points.every((p) => Number.isFinite(p[0]) && Number.isFinite(p[1]))) return fail(problem('not-a-number', ''))
  const spaced = thinned(points, toleranceM / 4)
  if (spaced.length < 3) return fail(problem('loop-too-short', ''))
  if (isThin(spaced, toleranceM)) return fail(problem('no-area', ''))
  let loop = closedOff(withoutOvershoot(spaced), toleranceM)
  let crossings = crossingsOf(loop)
  if (crossings.length > 0) {
    // A hand that runs past its start without meeting it: close the loop where the two ends come nearest.
    loop = closedOff(closedAtNearest(spaced), toleranceM)
    const left = crossingsOf(loop)
    if (left.length === 0) crossings = left
  }
  if (loop.length < 3) return fail(problem('loop-too-short', ''))
  if (crossings.length > 0) return fail(problem('loop-crosses-itself', '', crossings))
  return ok(joined(loop, toleranceM))
}

/** True where all points lie within a tolerance of one line. */
function isThin(points: readonly Vec[], toleranceM: number): boolean {
  const [ox, oy] = points[0]!
  let far = points[0]!
  for (const p of points) if (Math.hypot(p[0] - ox, p[1] - oy) > Math.hypot(far[0] - ox, far[1] - oy)) far = p
  const length = Math.hypot(far[0] - ox, far[1] - oy)
  if (length <= toleranceM) return true
  const off = (p: Vec): number => ((p[0] - ox) * (far[1] - oy) - (p[1] - oy) * (far[0] - ox)) / length
  const offs = points.map(off)
  return Math.max(...offs) - Math.min(...offs) <= toleranceM
}

function closedAtNearest(points: Vec[]): Vec[] {
  const reach = Math.ceil(points.length * OVERSHOOT)
  let best = Infinity
  let from = 0
  let to = points.length - 1
  for (let i = 0; i < reach; i++)
    for (let k = points.length - 1; k >= points.length - reach && k > i + 2; k--) {
      const d = Math.hypot(points[i]![0] - points[k]![0], points[i]![1] - points[k]![1])
      if (d < best) {
        best = d
        from = i
        to = k
      }
    }
  return points.slice(from, to + 1)
}

/** Points at least a distance apart, at most about two thousand of them. */
function thinned(points: readonly Point[], least: number): Vec[] {
  const gap = Math.max(least, lengthAlong(points) / 2000)
  const kept: Vec[] = []
  for (const [x, y] of points) {
    const last = kept[kept.length - 1]
    if (!last || Math.hypot(x - last[0], y - last[1]) >= gap) kept.push([x, y])
  }
  return kept
}

function cross(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const d0 = orient2d(a[0], a[1], b[0], b[1], c[0], c[1])
  const d1 = orient2d(a[0], a[1], b[0], b[1], d[0], d[1])
  if (d0 > 0 === d1 > 0) return undefined
  const d2 = orient2d(c[0], c[1], d[0], d[1], a[0], a[1])
  const d3 = orient2d(c[0], c[1], d[0], d[1], b[0], b[1])
  if (d2 > 0 === d3 > 0) return undefined
  const t = d2 / (d2 - d3)
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
}

function withoutOvershoot(points: Vec[]): Vec[] {
  const reach = Math.ceil(points.length * OVERSHOOT)
  const last = points.length - 2
  for (let i = 0; i < Math.min(reach, last - 2); i++)
    for (let k = last; k > Math.max(last - reach, i + 2); k--) {
      const at = cross(points[i]!, points[i + 1]!, points[k]!, points[k + 1]!)
      if (at) return [[at[0], at[1]], ...points.slice(i + 1, k + 1)]
    }
  return points
}

/** Without a last point that is the first one again. */
function closedOff(points: Vec[], toleranceM: number): Vec[] {
  const first = points[0]
  const out = [...points]
  while (out.length > 3 && first) {
    const last = out[out.length - 1]!
    if (Math.hypot(last[0] - first[0], last[1] - first[1]) > toleranceM / 4) break
    out.pop()
  }
  return out
}

function crossingsOf(loop: readonly Vec[]): Point[] {
  const n = loop.length
  const found: Point[] = []
  for (let i = 0; i < n; i++)
    for (let k = i + 2; k < n; k++) {
      if (i === 0 && k === n - 1) continue
      const at = cross(loop[i]!, loop[(i + 1) % n]!, loop[k]!, loop[(k + 1) % n]!)
      if (at) found.push(at)
    }
  return found
}

function joined(loop: readonly Vec[], toleranceM: number): Path {
  const n = loop.length
  const heading = (i: number): Vec => {
    // The mean direction over a few tolerances evens out a shaking hand.
    let before = i
    let after = i
    for (let k = 1; k < n / 6; k++) {
      before = (i - k + n) % n
      after = (i + k) % n
      const dx = loop[after]![0] - loop[before]![0]
      const dy = loop[after]![1] - loop[before]![1]
      if (Math.hypot(dx, dy) > 4 * toleranceM) break
    }
    const dx = loop[after]![0] - loop[before]![0]
    const dy = loop[after]![1] - loop[before]![1]
    const length = Math.hypot(dx, dy) || 1
    return [dx / length, dy / length]
  }
  const segments: Segment[] = []
  // Each cubic takes the longest run that it can follow; a third of the way round is all that one may.
  for (let from = 0; from < n; ) {
    const fitTo = (to: number): RunFit => {
      const run: Vec[] = []
      for (let i = from; i <= to; i++) run.push(loop[i % n]!)
      return fitRun(run, heading(from % n), heading(to % n))
    }
    let to = Math.min(n, from + Math.ceil(n / 3))
    let best = fitTo(to)
    let good = from + 1
    let bad = to
    if (best.worst > toleranceM) {
      while (bad - good > 1) {
        const middle = (good + bad) >> 1
        if (fitTo(middle).worst <= toleranceM) good = middle
        else bad = middle
      }
      to = good
      best = fitTo(to)
    }
    segments.push({ to: loop[to % n]!, c1: best.c1, c2: best.c2 })
    from = to
  }
  return { start: loop[0]!, segments }
}
