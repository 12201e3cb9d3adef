import { type Axis, boundsOf, type Floor, type Path, type Point, type Transform } from '../basin/index.ts'
import type { Feature } from '../features/index.ts'
import { sidesAsCurves, withSides } from './bench-sides.ts'
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

/** Whether lengths grow alike in every direction, so that a circle stays one. */
function isEven(m: Transform): boolean {
  return (m.a === m.d && m.b === -m.c) || isMirror(m)
}

function isMirror(m: Transform): boolean {
  return m.a === -m.d && m.b === m.c
}

/** The path, transformed. An arc stays one under an even scale, turned over in a mirror; under an uneven one it becomes curves. */
export function movedPath(path: Path, m: Transform): Path {
  const source = isEven(m) ? path : asCurves(path)
  return {
    ...source,
    start: movedPoint(source.start, m),
    segments: source.segments.map(({ to, c1, c2, bulge, ...rest }) => ({
      ...rest,
      to: movedPoint(to, m),
      ...(bulge === undefined ? {} : { bulge: isMirror(m) ? -bulge : bulge }),
      ...(c1 && c2 ? { c1: movedPoint(c1, m), c2: movedPoint(c2, m) } : {}),
    })),
  }
}

/** How much lengths grow on the whole: the root of what areas grow by. */
function meanStretch(m: Transform): number {
  return isShift(m) ? 1 : Math.sqrt(Math.abs(m.a * m.d - m.b * m.c))
}

// A plain shift leaves every digit of the distances as it is.
function isShift(m: Transform): boolean {
  return m.a === 1 && m.b === 0 && m.c === 0 && m.d === 1
}

/** The body with its plan larger or smaller about the middle of its box; depths stay. */
export function scaledPlan(body: Body, factor: number): Body {
  const box = boundsOf(body.outline)
  return movedBody(body, stretchAbout([(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2], factor, factor))
}

/** The body, all of its plan transformed; depths stay, distances along axes go with them. */
export function movedBody(body: Body, m: Transform): Body {
  return {
    ...body,
    outline: movedPath(body.outline, m),
    islands: body.islands.map((island) => movedPath(island, m)),
    floor: movedFloor(body.floor, m),
    ...(body.otherFloors
      ? { otherFloors: body.otherFloors.map((other) => ({ ...other, floor: movedFloor(other.floor, m) })) }
      : {}),
    features: (isEven(m) ? body.features : withSides(body.features, body.outline, sidesAsCurves(body.outline))).map(
      (feature) => movedFeature(feature, m),
    ),
  }
}

/** The feature, transformed: footprint, axis with the treads along it, centre with the radii and a bench's width (by mean scale). */
export function movedFeature<F extends Feature>(feature: F, m: Transform): F {
  const moved: {
    path?: Path
    axis?: Axis
    centre?: Point
    treads?: readonly (readonly [number, number])[]
    widthM?: number
  } = {}
  if ('path' in feature) moved.path = movedPath(feature.path, m)
  if ('centre' in feature) moved.centre = movedPoint(feature.centre, m)
  if ('widthM' in feature) moved.widthM = feature.widthM * meanStretch(m)
  if ('axis' in feature) moved.axis = movedAxis(feature.axis, m)
  if ('treads' in feature) {
    const by = 'axis' in feature ? stretchOf(feature.axis, m) : meanStretch(m)
    moved.treads = feature.treads.map(([s, depthM]) => [s * by, depthM] as const)
  }
  return { ...feature, ...moved }
}

/**
 * The floor, transformed: axis and stations, rings, soundings, the hollow of a dish. A dish is round: where the plan is
 * stretched more one way than the other, its radius grows by the mean of both, so that its area grows as the pool's does.
 */
export function movedFloor(floor: Floor, m: Transform): Floor {
  switch (floor.kind) {
    case 'flat':
      return floor
    case 'profile': {
      const by = stretchOf(floor.axis, m)
      const stations = floor.stations.map(([s, depthM]) => [s * by, depthM] as const)
      return { ...floor, axis: movedAxis(floor.axis, m), stations }
    }
    case 'contours':
      return { ...floor, rings: floor.rings.map((ring) => ({ ...ring, path: movedPath(ring.path, m) })) }
    case 'soundings':
      return { ...floor, points: floor.points.map(([x, y, depthM]) => [...movedPoint([x, y], m), depthM] as const) }
    case 'dish':
      return { ...floor, centre: movedPoint(floor.centre, m), radiusM: floor.radiusM * meanStretch(m) }
  }
}

function movedAxis(axis: Axis, m: Transform): Axis {
  return { ...axis, from: movedPoint(axis.from, m), to: movedPoint(axis.to, m) }
}

/** By how much lengths along the axis grow. */
function stretchOf(axis: Axis, m: Transform): number {
  const dx = axis.to[0] - axis.from[0]
  const dy = axis.to[1] - axis.from[1]
  return isShift(m) ? 1 : Math.hypot(m.a * dx + m.c * dy, m.b * dx + m.d * dy) / Math.hypot(dx, dy)
}
