import type { Problem } from '../base/index.ts'
import { type Curve, sagittaOf, sizeOf } from './curve.ts'
import { isOutOfRange } from './number-range.ts'
import { curvesOf } from './path.ts'
import { problem } from './problems.ts'
import { pushSpans, type Span } from './span.ts'
import type { BasinShape, Path, Point } from './types.ts'

/** A closed path of the plan in the partition's frame. */
export interface Ring {
  /** Where the path is found, relative to the body. */
  readonly where: string
  readonly curves: readonly Curve[]
  /** Index of the segment that each curve came from. */
  readonly segments: readonly number[]
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** First complaint about the numbers of a path, if any. */
export function checkNumbers(path: Path, where: string): Problem | undefined {
  if (!path.start.every(Number.isFinite)) return problem('not-a-number', `${where}.start`)
  if (path.start.some(isOutOfRange)) return problem('out-of-range', `${where}.start`)
  for (let i = 0; i < path.segments.length; i++) {
    const { to, bulge, c1, c2 } = path.segments[i]!
    const numbers = [...to, bulge ?? 0, ...(c1 ?? []), ...(c2 ?? [])]
    if (!numbers.every(Number.isFinite)) return problem('not-a-number', `${where}.segments[${i}]`)
    if (numbers.some(isOutOfRange)) return problem('out-of-range', `${where}.segments[${i}]`)
  }
  return undefined
}

/** Box of a path, by the ends and control points of its curves and the bulge of its arcs. */
export function roughBox(curves: readonly Curve[]): [number, number, number, number] {
  let minX = Infinity
  let minY = Infinity
  let maxX = -Infinity
  let maxY = -Infinity
  const take = (x: number, y: number, r: number): void => {
    minX = Math.min(minX, x - r)
    minY = Math.min(minY, y - r)
    maxX = Math.max(maxX, x + r)
    maxY = Math.max(maxY, y + r)
  }
  for (const c of curves) {
    take(c.x0, c.y0, 0)
    take(c.x1, c.y1, 0)
    if (c.kind === 'cubic') {
      take(c.ax, c.ay, 0)
      take(c.bx, c.by, 0)
    } else if (c.kind === 'arc') {
      // The arc stays within a sagitta of its chord's middle and half its chord, or its whole circle.
      const half = Math.hypot(c.x1 - c.x0, c.y1 - c.y0) / 2
      take((c.x0 + c.x1) / 2, (c.y0 + c.y1) / 2, Math.max(half, Math.abs(half * Math.tan(c.turn / 4))))
    }
  }
  return [minX, minY, maxX, maxY]
}

/** A path as a ring without the curves that are shorter than the grain; nearly straight arcs become lines. */
export function ringOf(path: Path, where: string, originX: number, originY: number, grainM: number): Ring {
  const curves: Curve[] = []
  const segments: number[] = []
  const all = curvesOf(path, originX, originY)
  for (let i = 0; i < all.length; i++) {
    const c = all[i]!
    if (sizeOf(c) <= grainM) continue
    const isStraight = c.kind === 'arc' && sagittaOf(c) <= grainM / 16
    const curve: Curve = isStraight ? { kind: 'line', x0: c.x0, y0: c.y0, x1: c.x1, y1: c.y1 } : c
    curves.push(curve)
    segments.push(Math.min(i, path.segments.length - 1))
  }
  const [minX, minY, maxX, maxY] = roughBox(curves)
  return { where, curves, segments, minX, minY, maxX, maxY }
}

/** What keeps a ring from bounding a region, before it is compared with itself. */
export function checkRing(ring: Ring): Problem | undefined {
  const straight = ring.curves.every((c) => c.kind === 'line')
  if (ring.curves.length < (straight ? 3 : 1)) return problem('too-few-points', ring.where)
  if (straight && !hasThreePoints(ring.curves)) return problem('too-few-points', ring.where)
  return undefined
}

function hasThreePoints(curves: readonly Curve[]): boolean {
  const [a] = curves
  const b = curves.find((c) => c.x0 !== a!.x0 || c.y0 !== a!.y0)
  if (!b) return false
  return curves.some((c) => (c.x0 !== a!.x0 || c.y0 !== a!.y0) && (c.x0 !== b.x0 || c.y0 !== b.y0))
}

/** Spans of a ring, appended; returns how many. */
export function pushRing(ring: Ring, id: number, grainM: number, out: Span[]): number {
  let index = 0
  for (const curve of ring.curves) index = pushSpans(curve, id, grainM, out, index)
  return index
}

/** The numbers of the rings of each patch: its footprint's, and that of what it leaves out, −1 for nothing. */
export interface PatchRings {
  readonly path: number
  readonly except: number
}

/** All paths of a shape with where they are found, and which of them each patch has: equal footprints are one path. */
export function pathsOf(shape: BasinShape): { paths: { path: Path; where: string }[]; patches: PatchRings[] } {
  const paths = [{ path: shape.outline, where: 'outline' }]
  shape.islands.forEach((path, i) => {
    paths.push({ path, where: `islands[${i}]` })
  })
  const alike = new Map<string, number[]>()
  const ringFor = (path: Path, where: string): number => {
    // Of the thousands of footprints that a wide bench may have, only those of one start can be equal.
    const key = path.start.join()
    const some = alike.get(key)
    for (const i of some ?? []) if (isEqual(paths[i]!.path, path)) return i
    if (some) some.push(paths.length)
    else alike.set(key, [paths.length])
    paths.push({ path, where })
    return paths.length - 1
  }
  const patches = shape.patches.map(({ path, except, feature }) => ({
    path: ringFor(path, `features[${feature}].path`),
    except: except ? ringFor(except, `features[${feature}].path`) : -1,
  }))
  return { paths, patches }
}

/** True for the same path and for one with the very same numbers. */
function isEqual(p: Path, q: Path): boolean {
  if (p === q) return true
  if (!isSamePoint(p.start, q.start) || p.segments.length !== q.segments.length) return false
  return p.segments.every((a, i) => {
    const b = q.segments[i]!
    return isSamePoint(a.to, b.to) && a.bulge === b.bulge && isSamePoint(a.c1, b.c1) && isSamePoint(a.c2, b.c2)
  })
}

function isSamePoint(p: Point | undefined, q: Point | undefined): boolean {
  return p === q || (p !== undefined && q !== undefined && p[0] === q[0] && p[1] === q[1])
}
