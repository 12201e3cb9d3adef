import type { Axis, Floor, Path, Point, Transform } from '../basin/index.ts'
import type { Feature } from '../features/index.ts'
import { asCurves } from './segment-kinds.ts'
import type { Body } from './types.ts'

/** A stretch along x and y about a point that stays where it is. */
export function stretchAbout(centre: Point, alongX: number, alongY: number): Transform {
  return { a: alongX, b: 0, c: 0, d: alongY, e: centre[0] * (1 - alongX), f: centre[1] * (1 - alongY) }
}

export function shift(dx: number, dy: number): Transform {
  return { a: 1, b: 0, c: 0, d: 1, e: dx, f: dy }
}

/** The point where the transform puts it. */
function movedPoint(p: Point, m: Transform): Point {
  return [m.a * p[0] + m.c * p[1] + m.e, m.b * p[0] + m.d * p[1] + m.f]
}

/** The path, transformed. An arc stays one under an even scale; under an uneven one it becomes curves. */
function movedPath(path: Path, m: Transform): Path {
  const isEven = m.a === m.d && m.b === -m.c
  const source = isEven ? path : asCurves(path)
  return {
    ...source,
    start: movedPoint(source.start, m),
    segments: source.segments.map(({ to, c1, c2, ...rest }) => ({
      ...rest,
      to: movedPoint(to, m),
      ...(c1 && c2 ? { c1: movedPoint(c1, m), c2: movedPoint(c2, m) } : {}),
    })),
  }
}

/** The body, all of its plan transformed; depths stay, distances along axes go with them. */
export function movedBody(body: Body, m: Transform): Body {
  return {
    ...body,
    outline: movedPath(body.outline, m),
    islands: body.islands.map((island) => movedPath(island, m)),
    floor: movedFloor(body.floor, m),
    features: body.features.map((feature) => movedFeature(feature, m)),
  }
}

/** The feature, transformed: its footprint, its axis with the treads along it, its centre with the radii (by mean scale). */
export function movedFeature<F extends Feature>(feature: F, m: Transform): F {
  const moved: { path?: Path; axis?: Axis; centre?: Point; treads?: readonly (readonly [number, number])[] } = {}
  if ('path' in feature) moved.path = movedPath(feature.path, m)
  if ('centre' in feature) moved.centre = movedPoint(feature.centre, m)
  if ('axis' in feature) moved.axis = movedAxis(feature.axis, m)
  if ('treads' in feature) {
    const by = 'axis' in feature ? stretchOf(feature.axis, m) : Math.sqrt(Math.abs(m.a * m.d - m.b * m.c))
    moved.treads = feature.treads.map(([s, depthM]) => [s * by, depthM] as const)
  }
  return { ...feature, ...moved }
}

function movedFloor(floor: Floor, m: Transform): Floor {
  if (floor.kind !== 'profile') return floor
  const by = stretchOf(floor.axis, m)
  return {
    ...floor,
    axis: movedAxis(floor.axis, m),
    stations: floor.stations.map(([s, depthM]) => [s * by, depthM] as const),
  }
}

function movedAxis(axis: Axis, m: Transform): Axis {
  return { ...axis, from: movedPoint(axis.from, m), to: movedPoint(axis.to, m) }
}

/** By how much lengths along the axis grow. */
function stretchOf(axis: Axis, m: Transform): number {
  const dx = axis.to[0] - axis.from[0]
  const dy = axis.to[1] - axis.from[1]
  const by = Math.hypot(m.a * dx + m.c * dy, m.b * dx + m.d * dy) / Math.hypot(dx, dy)
  // A plain shift leaves every digit of the distances as it is.
  return m.a === 1 && m.b === 0 && m.c === 0 && m.d === 1 ? 1 : by
}
