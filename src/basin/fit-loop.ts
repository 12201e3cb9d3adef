import { orient2d } from 'robust-predicates'
import { fail, ok, type Result } from '../base/index.ts'
import { fitRun, type Vec } from './fit-run.ts'
import { problem } from './problems.ts'
import type { Path, Point, Segment } from './types.ts'

/** Tails beyond a crossing near both ends of a stroke are the overshoot of a hand that closes its loop: at most this share. */
const OVERSHOOT = 0.15

/**
 * A hand-drawn loop as few cubics, smooth at every joint and within a tolerance of the stroke.
 * Method: least-squares cubics between joints whose directions are shared; the stroke is cut where it strays most.
 * Source: P. J. Schneider, An algorithm for automatically fitting digitized curves, Graphics Gems (1990), 612–626 (from memory).
 */
export function fitLoop(points: readonly Point[], toleranceM: number): Result<Path> {
  if (!(toleranceM > 0)) return fail(problem('tolerance-not-positive', ''))
  if (!points.every((p) => Number.isFinite(p[0]) && Number.isFinite(p[1]))) return fail(problem('not-a-number', ''))
  const spaced = thinned(points, toleranceM / 4)
  const trimmed = withoutOvershoot(spaced)
  const loop = closedOff(trimmed, toleranceM)
  if (loop.length < 3) return fail(problem('loop-too-short', ''))
  const crossings = crossingsOf(loop)
  if (crossings.length > 0) return fail(problem('loop-crosses-itself', '', crossings))
  if (Math.abs(area(loop)) < toleranceM * lengthOf(loop) * 0.25) return fail(problem('no-area', ''))
  return ok(joined(loop, toleranceM))
}

/** Points at least a distance apart, at most about two thousand of them. */
function thinned(points: readonly Point[], least: number): Vec[] {
  const gap = Math.max(least, lengthOf(points) / 2000)
  const kept: Vec[] = []
  for (const [x, y] of points) {
    const last = kept[kept.length - 1]
    if (!last || Math.hypot(x - last[0], y - last[1]) >= gap) kept.push([x, y])
  }
  return kept
}

function lengthOf(points: readonly Point[]): number {
  let sum = 0
  for (let i = 1; i < points.length; i++)
    sum += Math.hypot(points[i]![0] - points[i - 1]![0], points[i]![1] - points[i - 1]![1])
  return sum
}

function area(loop: readonly Point[]): number {
  let sum = 0
  const [ox, oy] = loop[0]!
  for (let i = 0; i < loop.length; i++) {
    const a = loop[i]!
    const b = loop[(i + 1) % loop.length]!
    sum += (a[0] - ox) * (b[1] - oy) - (b[0] - ox) * (a[1] - oy)
  }
  return sum / 2
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
  // Three joints to begin with, evenly along the stroke: fewer could not go round.
  const joints = [0, Math.floor(n / 3), Math.floor((2 * n) / 3)]
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
  const add = (from: number, to: number): void => {
    const run: Vec[] = []
    for (let i = from; i <= to; i++) run.push(loop[i % n]!)
    const best = fitRun(run, heading(from % n), heading(to % n))
    if (best.worst <= toleranceM || to - from < 4) {
      segments.push({ to: loop[to % n]!, c1: best.c1, c2: best.c2 })
      return
    }
    const middle = from + Math.min(Math.max(best.worstAt, 2), to - from - 2)
    add(from, middle)
    add(middle, to)
  }
  for (let i = 0; i < joints.length; i++) add(joints[i]!, i + 1 < joints.length ? joints[i + 1]! : n)
  return { start: loop[0]!, segments }
}
